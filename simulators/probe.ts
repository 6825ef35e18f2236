import { createFaults, type Fault } from './faults.ts';
import type { MessageForm } from './messages.ts';
import type { Quantity, Reading } from './reading.ts';
import { createChance } from './seed.ts';
import type { WorldNow } from './world.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export type ProbePlan = {
  readonly id: string;
  /** Minutes between reports. */
  readonly every: number;
  readonly form: MessageForm;
  /** True values at one minute. `rain` is the total so far; the probe makes tips of it. */
  readonly sense: (now: WorldNow) => Partial<Record<Quantity, number>>;
  /** The same chip in every probe but this one; steps finer or coarser than usual. */
  readonly steps?: Partial<Record<Quantity, number>>;
  readonly battery?: {
    readonly unit: 'V' | '%';
    readonly full: number;
    readonly fullAt: number;
    readonly perDay: number;
  };
  /** Seconds its clock is ahead. */
  readonly clockError?: number;
  /** Share of reports lost on the way, 0..1. */
  readonly drops?: number;
  /** Its history is written at least so often, in minutes, over the last days before its end. */
  readonly fine?: { readonly every: number; readonly days: number };
  /** Sends nothing before this. */
  readonly since?: number;
  /** Days with a hole of some hours, as a share, up to `until`. */
  readonly holes?: { readonly share: number; readonly until: number };
};

// Noise (one standard deviation) and smallest step of common small sensors. Ours, in the range of
// their data sheets (0.1 to 0.3 °C, 1 to 3 %RH; 0.2 mm is the usual tip of a rain gauge).
const GRAIN: Record<Quantity, { noise: number; step: number; least?: number; most?: number }> = {
  temperature: { noise: 0.06, step: 0.01 },
  humidity: { noise: 0.5, step: 0.1, least: 1, most: 100 },
  'soil-moisture': { noise: 0.15, step: 0.1, least: 0, most: 100 },
  'soil-temperature': { noise: 0.04, step: 0.0625 },
  light: { noise: 0, step: 10, least: 0 },
  rain: { noise: 0, step: 0.2, least: 0 },
  wind: { noise: 0.25, step: 0.1, least: 0 },
  power: { noise: 0, step: 0.1, least: 0 },
  energy: { noise: 0, step: 0.001, least: 0 },
  door: { noise: 0, step: 1 },
  battery: { noise: 0.003, step: 0.001, least: 0 },
};

const roundTo = (value: number, step: number) =>
  Number((Math.round(value / step) * step).toFixed(4));

/** One probe. Readings depend on the world's minute and the seed; only rain remembers. */
export function createProbe(plan: ProbePlan, seed: number, faults: readonly Fault[] = []) {
  const noise = createChance(seed, `noise of ${plan.id}`);
  const luck = createChance(seed, `luck of ${plan.id}`);
  const phase = Math.floor(luck.uniform(0) * plan.every);
  const quantities = Object.keys(GRAIN) as Quantity[];
  const draw = (t: number, quantity: Quantity) =>
    luck.uniform((t / MINUTE) * 16 + quantities.indexOf(quantity));
  const faulty = createFaults(plan.id, faults, draw);
  let tips = Number.NaN;
  let door = Number.NaN; // NaN: no contact, or not seen yet

  const inHole = (t: number) => {
    if (!plan.holes || t >= plan.holes.until) return false;
    const day = Math.floor(t / DAY);
    if (luck.uniform(-3 * day - 1) >= plan.holes.share) return false;
    const from = day * DAY + luck.uniform(-3 * day - 2) * 18 * HOUR;
    return t >= from && t < from + (0.7 + 4.5 * luck.uniform(-3 * day - 3)) * HOUR;
  };

  const batteryAt = (t: number, temperature: number | undefined) => {
    const { battery } = plan;
    if (!battery) return undefined;
    const worn = battery.full - (battery.perDay * (t - battery.fullAt)) / DAY;
    // Cold cells read low: about 2 % of a cell's voltage per 10 K, ours.
    const cold = 0.002 * battery.full * Math.min(0, (temperature ?? 15) - 15);
    return Math.max(0, battery.unit === 'V' ? worn + cold : Math.round(worn));
  };

  function measure(now: WorldNow, withBattery: boolean): Reading[] {
    const { t } = now;
    const truth = { ...plan.sense(now) };
    if (truth.rain !== undefined) {
      const total = Math.floor(truth.rain / GRAIN.rain.step);
      truth.rain = (total - (Number.isNaN(tips) ? total : tips)) * GRAIN.rain.step;
      tips = total;
    }
    const battery = withBattery ? batteryAt(t, truth.temperature) : undefined;
    if (battery !== undefined) truth.battery = battery;
    const readings: Reading[] = [];
    for (const [name, value] of Object.entries(truth)) {
      const quantity = name as Quantity;
      const grain = GRAIN[quantity];
      const wobble =
        grain.noise === 0 || (quantity === 'battery' && plan.battery?.unit === '%')
          ? 0
          : grain.noise * noise.normal((t / MINUTE) * 16 + quantities.indexOf(quantity));
      const rounded = roundTo(value + wobble, plan.steps?.[quantity] ?? grain.step);
      const kept = Math.min(grain.most ?? 1e9, Math.max(grain.least ?? -1e9, rounded));
      const stamped = t + (plan.clockError ?? 0) * 1000;
      const reading = faulty({ probe: plan.id, quantity, t: stamped, value: kept });
      if (reading) readings.push(reading);
    }
    return readings;
  }

  return {
    plan,
    /** Takes the rain and the door of `now` as already reported. */
    rememberFrom(now: WorldNow): void {
      const { rain } = plan.sense(now);
      if (rain !== undefined) tips = Math.floor(rain / GRAIN.rain.step);
      doorChanged(now);
    },
    /**
     * What it reports at the world's minute: nothing when it is not due or its report is lost.
     * `thin` reports less often than the plan says (for history), in minutes.
     */
    read(now: WorldNow, thin = 0): Reading[] {
      const minute = now.t / MINUTE;
      const every = Math.max(plan.every, thin);
      const changed = doorChanged(now);
      if ((minute - phase) % every !== 0 && !changed) return [];
      if (plan.since !== undefined && now.t < plan.since) return [];
      const withBattery = plan.form === 'mast' && thin === 0 ? true : (minute - phase) % 360 === 0;
      const readings = measure(now, withBattery);
      if (luck.uniform(-minute) < (plan.drops ?? 0) || inHole(now.t)) return [];
      return readings;
    },
  };

  // A door contact speaks at once: an opening of two minutes would fall between two reports.
  function doorChanged(now: WorldNow): boolean {
    if (plan.every > 1) return false; // only a probe with a supply of its own wakes each minute
    const before = door;
    door = plan.sense(now).door ?? Number.NaN;
    return !Number.isNaN(before) && door !== before;
  }
}

export type Probe = ReturnType<typeof createProbe>;
