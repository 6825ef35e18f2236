import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { steppedClock } from '../../../../hub/clock.ts';
import { joinCore } from '../../../../hub/main/core.ts';
import { importFarm } from '../../../../hub/main/farm/farmKept.ts';
import { openStore, type StoredReading } from '../../../../hub/store/index.ts';
import { createChance } from '../../../../simulators/seed.ts';
import { hiddenCrops } from './hiddenCrop.ts';
import { type TrialHour, trialHours } from './trialWeather.ts';

const DAY = 86_400_000;
const LUX = 54 / 3600 / 1e-6; // lx for an hour's mol m⁻², daylight: Thimijan & Heins 1983 (from memory)

export type TrialPlan = {
  readonly seed: number;
  /** Years before the first sowing that a station nearby knows; 0 for none. */
  readonly stationYears: number;
  readonly light: boolean;
  /** Days between two looks at the trays. */
  readonly looks: number;
};
export type TrialFarm = ReturnType<typeof trialFarm>;

const farmText = () => `
farm: { name: Trial Garden (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel }
  - { id: sun-house, name: Sun House, kind: tunnel }
  - { id: outside, name: Outside, kind: outdoor }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 1h }
  - { id: p2, place: sun-house, spot: canopy, every: 1h }
  - { id: mast, place: outside, spot: air, every: 1h }
crops:
${hiddenCrops.map(({ id, told }) => `  - { id: ${id}, days: [${told.join(', ')}] }`).join('\n')}
`;

/** A farm's store with all readings of some years in it, and a clock at the first day. */
export function trialFarm(plan: TrialPlan, from: number, to: number) {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-seasons-'));
  const store = openStore(join(folder, 'trial.db'));
  const clock = steppedClock(from);
  importFarm(store, farmText(), from);
  const noise = createChance(plan.seed, 'probe noise');
  const hours: TrialHour[] = [];
  const readings: StoredReading[] = [];
  const lows = new Map<string, [number, number]>();
  const begin = from - Math.max(plan.stationYears * 366, 2) * DAY;
  for (const hour of trialHours(plan.seed, begin, to)) {
    const day = new Date(hour.t - 1).toISOString().slice(0, 10);
    const [low, high] = lows.get(day) ?? [99, -99];
    lows.set(day, [Math.min(low, hour.outside), Math.max(high, hour.outside)]);
    if (hour.t < from) continue;
    hours.push(hour);
    const wobble = () => 0.15 * noise.normal(readings.length);
    const add = (probe: string, value: number, quantity = 'temperature') =>
      readings.push({ probe, quantity, t: hour.t, value, raw: null, flag: null });
    add('p1', hour['long-house'] + wobble());
    add('p2', hour['sun-house'] + wobble());
    add('mast', hour.outside + wobble());
    if (plan.light) add('p1', hour.light * LUX, 'light');
    if (plan.light) add('p2', hour.light * LUX, 'light');
  }
  store.transaction(() => {
    store.readings.add(readings);
    if (plan.stationYears === 0) return;
    const id = 'headland';
    const where = { lat: 51.8, lon: -8.2, altitude: 20, form: 'csv', observedAt: null };
    store.stations.put({ id, name: 'Headland (invented)', ...where, importedAt: from });
    // As far from the farm as the next headland: its days are alike, not the same.
    const rows = [...lows].map(([day, [min, max]], i) => ({
      ...{ day, min: min + 0.8 + 0.5 * noise.normal(-2 * i - 1) },
      ...{ max: Math.max(min + 1, max - 0.6 + 0.5 * noise.normal(-2 * i - 2)), mean: null },
      ...{ rain: null, trace: false, calm: null },
    }));
    store.stations.putDays(id, rows);
  });
  const core = joinCore({ store, clock, log: pino({ level: 'silent' }), waitMs: 1 });
  core.snapshots.fold(true);
  return {
    core,
    clock,
    hours,
    close() {
      core.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
