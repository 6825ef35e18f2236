import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import type { Task } from '../../hub/contract/index.ts';
import { type FarmClock, farmNow, spawnHub, spawnVerb, startHub } from './hubProcess.ts';
import { killed } from './processes.ts';
import { type Noted, type Publisher, seeded, startPublisher } from './publishers.ts';

// A hub that is killed again and again while probes send and somebody answers tasks. A process kill
// is not a power cut: what the kernel was given is kept, so this says nothing about the disk itself.

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const ROOMS = 6;
const IN_FLIGHT = 4;
const LATEST = 800; // ms
const IMPORTED = 30_000; // readings

/** An invented farm of six cool rooms: each that warms asks for tasks, and raises an alarm. */
export function roomsFile(folder: string): string {
  const file = join(folder, 'rooms.yaml');
  const each = Array.from({ length: ROOMS }, (_, i) => i);
  writeFileSync(
    file,
    [
      'farm: { name: Six Rooms (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }',
      'places:',
      '  - { id: outside, name: Outside, kind: outdoor }',
      ...each.map(
        (i) =>
          `  - { id: room-${i}, name: Room ${i}, kind: cool-room, setPoint: 3, limit: 5, value: 400 }`,
      ),
      'probes:',
      ...each.map((i) => `  - { id: cold-${i}, place: room-${i}, spot: air, every: 2m }`),
      '  - { id: mast, place: outside, spot: air, every: 5m }',
      '',
    ].join('\n'),
  );
  return file;
}

/** Speaks of now: a room holds and warms by turns, its door shut and open. */
const room = (i: number, clock: FarmClock): Publisher => {
  let last = clock.start;
  let turn = 0;
  return {
    probe: `cold-${i}`,
    next: () => {
      const t = Math.max(last + 1, farmNow(clock));
      last = t;
      turn += 1;
      const warm = Math.floor((t - clock.start) / (50 * MINUTE) + i / ROOMS) % 2 === 1;
      if (turn % 2 === 0) return { quantity: 'door', t, value: warm ? 1 : 0 };
      return { quantity: 'temperature', t, value: warm ? 7.5 : 3.2 };
    },
  };
};
/** Walks a value about in the past, so that jumps, steps over limits and repeats all occur. */
const wander = (
  probe: string,
  quantity: string,
  from: number,
  { start }: FarmClock,
  random: () => number,
): Publisher => {
  let value = from;
  let t = start - 20 * 24 * HOUR;
  return {
    probe,
    next: () => {
      value = Math.round((value + (random() - 0.5) * 4) * 100) / 100;
      if (value < from - 20 || value > from + 20) value = from;
      t += 1000;
      return { quantity, t, value };
    },
  };
};

export type Killing = {
  readonly data: string;
  readonly ports: { readonly http: number; readonly mqtt: number };
  readonly clock: FarmClock;
  readonly acknowledged: Noted[];
  readonly answered: { readonly id: string; readonly answer: string }[];
  readonly publishers: number;
  /** At most so many were kept and not acknowledged any more. */
  cutOff(): number;
  /** `fold`: it is asked to end, and killed while it puts everything in its place. */
  underLoad(how?: 'kill' | 'fold'): Promise<void>;
  duringStart(): Promise<void>;
  duringBackup(to: string): Promise<void>;
  /** Readings of a file, enough for a long roll-up, are taken in by a command that is killed. */
  duringImport(): Promise<void>;
};

export function killing(
  data: string,
  ports: { http: number; mqtt: number },
  clock: FarmClock,
  seed: number,
): Killing {
  const random = seeded(seed);
  const farm = roomsFile(data);
  const acknowledged: Noted[] = [];
  const answered: { id: string; answer: string }[] = [];
  const publishers = [
    ...Array.from({ length: ROOMS }, (_, i) => room(i, clock)),
    wander('mast', 'humidity', 60, clock, random),
    wander('stranger', 'soil-moisture', 40, clock, random),
  ];
  let cuts = 0;
  // Some hubs gather for as long as they do by themselves, others write at once.
  const options = () => {
    const more = random() < 0.5 ? ['--gather', '0'] : [];
    return { data, farm, open: true, ...ports, clock, more };
  };
  const begun = async () => {
    const hub = await startHub(options());
    cuts++;
    const sending = await Promise.all(
      publishers.map((one) => startPublisher(ports.mqtt, one, acknowledged, IN_FLIGHT)),
    );
    const answering = (async () => {
      for (const { id } of await hub.get<Task[]>('/api/tasks')) {
        if (random() < 0.5) continue;
        const answer = random() < 0.5 ? 'done' : 'no';
        await hub.post(`/api/tasks/${encodeURIComponent(id)}/answer`, { answer });
        answered.push({ id, answer });
      }
    })().catch(() => {}); // killed under it: not answered
    const end = async () => {
      await hub.kill();
      for (const publisher of sending) await publisher.stop();
      await answering;
    };
    return { hub, end };
  };

  return {
    data,
    ports,
    clock,
    acknowledged,
    answered,
    publishers: publishers.length,
    cutOff: () => cuts * publishers.length * IN_FLIGHT,
    async underLoad(how = 'kill') {
      const { hub, end } = await begun();
      await pause(150 + random() * LATEST);
      if (how === 'fold') {
        process.kill(hub.pid, 'SIGTERM');
        await pause(random() * 80);
      }
      await end();
    },
    async duringStart() {
      const hub = await spawnHub(options());
      await pause(random() * 900);
      await killed(hub.child);
    },
    async duringImport() {
      const file = join(data, 'old.ndjson');
      const lines = Array.from({ length: IMPORTED }, (_, i) =>
        JSON.stringify({
          probe: 'imported',
          quantity: ['temperature', 'humidity'][i % 2],
          t: new Date(clock.start - 90 * 24 * HOUR + Math.floor(i / 2) * 5 * MINUTE).toISOString(),
          value: 15 + (i % 40) / 10,
        }),
      );
      writeFileSync(file, lines.join('\n'));
      const { end } = await begun();
      const taking = await spawnVerb('import', file, '--data', data);
      await pause(250 + random() * 1000);
      await killed(taking.child);
      await end();
    },
    async duringBackup(to) {
      const { end } = await begun();
      const copying = await spawnVerb('backup', to, '--data', data);
      await pause(100 + random() * 500);
      if (random() < 0.5) await killed(copying.child);
      await end();
      await copying.ended;
      if (!existsSync(to)) return;
      const db = new Database(to, { readonly: true });
      const found = db.pragma('integrity_check', { simple: true });
      db.close();
      if (found !== 'ok') throw new Error(`Expected a whole backup in ${to}, got ${found}`);
    },
  };
}
