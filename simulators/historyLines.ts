import { createProbe } from './probe.ts';
import type { Reading } from './reading.ts';
import type { Scenario } from './scenario.ts';
import { createWorld } from './world.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

export type HistoryOptions = {
  /** ms since 1970; `to` itself is left out. */
  readonly from: number;
  readonly to: number;
  readonly seed: number;
  /** Minutes between the readings of one probe, where it does not report less often itself. */
  readonly every?: number;
  /** The last hours are written as often as the probes really report. */
  readonly fineHours?: number;
};

/** What the probes of the made-up farm reported over a stretch of the past, oldest first. */
export function* historyReadings(
  scenario: Scenario,
  { from, to, seed, every = 10, fineHours = 48 }: HistoryOptions,
): Generator<readonly Reading[]> {
  const world = createWorld(scenario.plan, seed);
  const probes = scenario.probes.map((plan) => createProbe(plan, seed, scenario.faults));
  const fineFrom = to - fineHours * HOUR;
  const first = Math.ceil(from / MINUTE) * MINUTE;
  for (let t = first; t < to; t += MINUTE) {
    const now = world.advanceTo(t);
    const thin = t < fineFrom ? every : 0;
    const readings = probes.flatMap((probe) => {
      const { fine } = probe.plan;
      const finer = fine !== undefined && t >= to - fine.days * 24 * HOUR;
      return probe.read(now, finer ? Math.min(thin, fine.every) : thin);
    });
    if (readings.length > 0) yield readings;
  }
}

/**
 * Writes lines of newline JSON: `{"probe","quantity","t","value"}`, t in ISO 8601 UTC, and a `unit`
 * where a quantity has two (a battery's volts would be read as per cent without it).
 */
export function createHistoryLine({ probes }: Scenario) {
  const inVolts = new Set(
    probes.filter(({ battery }) => battery?.unit === 'V').map(({ id }) => id),
  );
  return ({ probe, quantity, t, value }: Reading): string => {
    const time = new Date(t).toISOString();
    const unit = quantity === 'battery' && inVolts.has(probe) ? ',"unit":"V"' : '';
    return `{"probe":"${probe}","quantity":"${quantity}","t":"${time}","value":${value}${unit}}\n`;
  };
}
