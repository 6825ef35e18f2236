// Two hundred lots in three rooms: what the page asks for, and what a look costs with them beside one
// without. Both hubs take turns; before each look every room's probe gets one fresh reading.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { type ApiParts, buildServer } from '../../hub/api/index.ts';
import { steppedClock } from '../../hub/clock.ts';
import { joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import { figure, middle, quantile, timed } from './report.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const ROOMS = 3;
const LOTS = 200;
const DAYS = 14;
const STEP = 5 * MINUTE;
const ROUNDS = 30;
const WARM = 5;
const START = Date.UTC(2026, 4, 10, 9);

const rooms = Array.from({ length: ROOMS }, (_, i) => `room-${i}`);
const farm = [
  'farm: { name: Bench (invented), zone: Europe/Dublin, lat: 52, lon: -7, money: EUR, wage: 15 }',
  'places:',
  '  - { id: outside, name: Outside, kind: outdoor }',
  '  - { id: house, name: House, kind: tunnel, crop: leaves }',
  ...rooms.map((id) => `  - { id: ${id}, name: ${id}, kind: cool-room, setPoint: 3, limit: 5 }`),
  'probes:',
  '  - { id: mast, place: outside, spot: air, every: 5m }',
  '  - { id: leaf, place: house, spot: canopy, every: 5m }',
  ...rooms.map((id) => `  - { id: ${id}-air, place: ${id}, spot: air, every: 5m }`),
  'crops:',
  '  - { id: leaves, name: Leaves, price: 16, keeps: { days: [8, 12], at: 0 } }',
  'deliveries: [ { day: thursday } ]',
  '',
].join('\n');

const probes = ['mast', 'leaf', ...rooms.map((id) => `${id}-air`)];
const valueAt = (probe: string, t: number) =>
  probe.endsWith('-air')
    ? 3 + Math.sin((2 * Math.PI * t) / (40 * MINUTE))
    : 12 + 5 * Math.sin((2 * Math.PI * t) / DAY);

function hubWith(lots: number) {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-lots-'));
  const store = openStore(join(folder, 'lots.db'));
  const clock = { ...steppedClock(START), isSet: () => true };
  importFarm(store, farm, START);
  const core = joinCore({ store, clock, log: pino({ level: 'silent' }), waitMs: 1 });
  store.transaction(() => {
    for (let t = START - DAYS * DAY; t <= START; t += STEP)
      store.readings.add(probes.map((probe) => reading(probe, t)));
  });
  const parts: ApiParts = {
    ...core,
    look: () => core.look(),
    brokerConnected: () => true,
    open: true,
  };
  const book = core.snapshots.lots;
  for (let i = 0; i < lots; i++) {
    const place = rooms[i % ROOMS] ?? 'room-0';
    const storedAt = START - (1 + ((i * 7) % (12 * 24))) * HOUR;
    const facts = {
      ...{ crop: 'leaves', kg: 2 + (i % 9), place, from: 'house', cooled: null, class: null },
      ...{ harvestedAt: storedAt - 3 * HOUR, storedAt, price: null },
    };
    const id = book.nextId('leaves', new Date(storedAt).toISOString().slice(0, 10));
    book.add(id, place, { event: 'put-away', facts, override: null }, 'bench', storedAt);
  }
  return { core, clock, parts, store, folder, looks: [] as number[] };
}
const reading = (probe: string, t: number) => ({
  ...{ probe, quantity: 'temperature', t, value: Number(valueAt(probe, t).toFixed(2)) },
  ...{ raw: null, flag: null },
});

export async function lotsAndLooks() {
  const full = hubWith(LOTS);
  const none = hubWith(0);
  for (const { core } of [full, none]) core.look();
  for (let round = 0; round < ROUNDS + WARM; round++) {
    const t = START + (round + 1) * STEP;
    for (const hub of round % 2 === 0 ? [full, none] : [none, full]) {
      hub.clock.set(t);
      hub.store.transaction(() => {
        hub.store.readings.add(probes.map((probe) => reading(probe, t)));
      });
      const took = timed(() => hub.core.look());
      if (hub.core.lastLook()?.failure) throw new Error(`${hub.core.lastLook()?.failure}`);
      if (round >= WARM) hub.looks.push(took);
    }
  }
  figure('lots-200-look-p50', middle(full.looks), 'ms');
  figure('lots-200-look-p95', quantile(full.looks, 0.95), 'ms');
  figure('lots-200-to-none', middle(full.looks) / middle(none.looks), 'x');
  const app = await buildServer(full.parts, {
    cookieSecret: 'only-for-measuring-only-for-measuring',
    ...{ pages: null, version: '0.0.0', onFault: () => {} },
  });
  for (const [name, url] of [
    ['list', '/api/lots?place=room-0'],
    ['all', '/api/lots'],
    ['offers', '/api/lots/offers?place=room-0'],
    ['room', '/api/cool-rooms/room-0'],
  ] as const) {
    const times: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const begin = performance.now();
      const reply = await app.inject({ url });
      if (reply.statusCode !== 200) throw new Error(`${url} answered ${reply.statusCode}`);
      if (round >= WARM) times.push(performance.now() - begin);
    }
    figure(`lots-200-${name}-p50`, middle(times), 'ms');
    figure(`lots-200-${name}-p95`, quantile(times, 0.95), 'ms');
  }
  await app.close();
  for (const { store, folder } of [full, none]) {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
