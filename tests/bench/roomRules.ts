// Rules that look at one number, against one another and on the same invented rooms as `faults`:
// why the hub goes by a room's own habits instead. Their figures are those of a bare rule on
// readings each minute, without hub, learning or patience. They are judged each five minutes.

import { cycleBottom, smoothTrace } from '../../rules/cooler/index.ts';
import { celsius, instant } from '../../rules/units.ts';
import { createTrial, type TrialFault } from '../../simulators/coolRoomTrial.ts';
import { DAY, HOUR, LOOK, MINUTE, onsetOf } from './faultBase.ts';
import { figure, quantile, remark } from './report.ts';

const SEEDS = Number(process.env.DEWPOST_SEEDS ?? 30);
const FIRST = Number(process.env.DEWPOST_FIRST_SEED ?? 16);
const QUIET_DAYS = 30;
const WATCHED = 72; // hours
const SET_POINT = 3; // °C
const MARGIN = 0.7; // K
const HIGH = 5.5; // °C

type Minute = { readonly t: number; readonly air: number; readonly runs: boolean };

const bottomOver = (minutes: number) => (row: readonly Minute[]) => {
  const now = row.at(-1)?.t ?? 0;
  const readings = row
    .slice(-minutes)
    .map(({ t, air }) => ({ t: instant(t), value: celsius(air) }));
  const bottom = cycleBottom(readings, instant(now), { windowMinutes: minutes, everyMinutes: 1 });
  return bottom !== null && bottom > SET_POINT + MARGIN;
};
const highFor = (minutes: number) => (row: readonly Minute[]) =>
  row.length >= minutes && row.slice(-minutes).every(({ air }) => air > HIGH);

/** Rules A to F of the trade, as the hub's own are measured against them; common practice, no source. */
const rules: Readonly<Record<string, (row: readonly Minute[]) => boolean>> = {
  'A bottom of 120 min above set point + 0.7': bottomOver(120),
  'B the same over 180 min': bottomOver(180),
  'C above 5.5 for 60 min': highFor(60),
  'D above 5.5 for 30 min': highFor(30),
  'E running over 90 % of 180 min': (row) =>
    row.length >= 180 && row.slice(-180).filter(({ runs }) => runs).length > 0.9 * 180,
  'F rising for 60 min': (row) => {
    const last = row.slice(-65);
    const from = last[0]?.t ?? 0;
    const { value } = smoothTrace(
      { t: last.map(({ t }) => instant(t)), value: last.map(({ air }) => air) },
      from,
      from + 65 * MINUTE,
    );
    const each = value.filter((_, i) => i % 5 === 2);
    return last.length === 65 && each.every((now, i) => i === 0 || now >= (each[i - 1] ?? now));
  },
};

/** Times at which each rule began to hold, ms after `from`, from where on it is asked. */
function heldAt(seed: number, fault: TrialFault, openings: number, hours: number) {
  const from = onsetOf(seed);
  const trial = createTrial({ seed, fault, from, openings });
  trial.beginAt(from - DAY);
  const row: Minute[] = [];
  const held = new Map(Object.keys(rules).map((name) => [name, { on: false, at: [] as number[] }]));
  for (let t = from - DAY; t < from + hours * HOUR; t += MINUTE) {
    const now = trial.step();
    row.push({ t: now.t, air: now.air, runs: now.room.compressor });
    if (row.length > 200) row.shift();
    if (now.t % LOOK !== 0) continue;
    for (const [name, rule] of Object.entries(rules)) {
      const state = held.get(name);
      if (state === undefined) continue;
      const on = rule(row);
      if (on && !state.on && now.t > from) state.at.push(now.t - from);
      state.on = on;
    }
  }
  return held;
}

export async function roomRules() {
  const seeds = Array.from({ length: SEEDS }, (_, i) => FIRST + i);
  const all = (fault: TrialFault, openings: number, hours: number) =>
    seeds.map((seed) => heldAt(seed, fault, openings, hours));
  const quiet = all('none', 8, 24 * QUIET_DAYS);
  const busy = all('none', 20, 24 * QUIET_DAYS);
  const faults = (['set-warmer', 'unit-stopped', 'door-open', 'refrigerant'] as const).map(
    (fault) => ({ fault, held: all(fault, 8, WATCHED) }),
  );
  for (const name of Object.keys(rules)) {
    const times = (runs: typeof quiet) => runs.map((held) => held.get(name)?.at ?? []);
    const monthly = (runs: typeof quiet) => times(runs).flat().length / seeds.length;
    const told = faults.map(({ fault, held }) => {
      const first = times(held).flatMap(([at]) => at ?? []);
      const half = first.length === 0 ? '-' : (quantile(first, 0.5) / HOUR).toFixed(1);
      return `${fault} ${half} h, missed ${seeds.length - first.length}`;
    });
    const months = `false in 30 days ${monthly(quiet).toFixed(2)} quiet, ${monthly(busy).toFixed(2)} busy`;
    remark(`${name.padEnd(44)} ${months}; ${told.join('; ')}`);
    figure(`room-rules-${name[0]}-quiet`, monthly(quiet), 'in 30 days');
    figure(`room-rules-${name[0]}-busy`, monthly(busy), 'in 30 days');
  }
}
