import type { LocalTime } from './localTime.ts';
import { createChance } from './seed.ts';

// What people and the generator do to the cool room. Habits are ours, from no source.

const MINUTE = 60_000;

/** Things the scenario or a test makes happen to the cool room between two instants. */
export type CoolRoomEvent = { readonly from: number; readonly to: number } & (
  | { readonly kind: 'outage' }
  /** The generator and its refuelling give no trouble. */
  | { readonly kind: 'supply' }
  /** Nobody goes in. */
  | { readonly kind: 'door-shut' }
  | { readonly kind: 'door-ajar'; readonly share: number }
  | { readonly kind: 'set-point'; readonly setPoint: number }
  | { readonly kind: 'strength'; readonly share: number }
);

const OPENINGS = 11; // a working day
const FIRST_HOUR = 6.5;
const LAST_HOUR = 18.5;
const REFUEL_DAYS = [0, 3]; // Monday and Thursday
const REFUEL_HOUR = 7.5;
const REFUEL_MINUTES = 12;
const OUTAGE_DAYS = 1 / 14; // share of days on which the generator fails by itself

type Span = { readonly from: number; readonly to: number };
type Plan = {
  readonly openings: readonly Span[];
  readonly off: readonly Span[];
  readonly loadAt: number;
};

/** Supply, door and loads minute by minute. */
export function createCoolRoomDay(
  seed: number,
  local: LocalTime,
  events: readonly CoolRoomEvent[] = [],
) {
  const chance = createChance(seed, 'cool room day');
  const plans = new Map<number, Plan>();

  // Spans in minutes of the farm's day.
  function planOf(day: number, weekday: number): Plan {
    let plan = plans.get(day);
    if (plan) return plan;
    const draw = (index: number) => chance.uniform(day * 64 + index);
    const openings = Array.from({ length: weekday === 6 ? 3 : OPENINGS }, (_, index) => {
      const from = Math.floor(60 * (FIRST_HOUR + (LAST_HOUR - FIRST_HOUR) * draw(index)));
      // Most take a minute or two; now and then somebody loads a van.
      const long = draw(index + 16) < 0.04 ? 10 : 0;
      return { from, to: from + 1 + Math.floor(2.4 * draw(index + 32) + long) };
    });
    const off: Span[] = [];
    if (REFUEL_DAYS.includes(weekday)) {
      off.push({ from: REFUEL_HOUR * 60, to: REFUEL_HOUR * 60 + REFUEL_MINUTES });
    }
    if (draw(50) < OUTAGE_DAYS) {
      const from = Math.floor(60 * (6 + 14 * draw(51)));
      off.push({ from, to: from + 25 + Math.floor(70 * draw(52)) });
    }
    plan = { openings, off, loadAt: Math.floor(60 * (9 + 3 * draw(53))) };
    plans.set(day, plan);
    return plan;
  }

  const within = (at: number) => (span: Span) => at >= span.from && at < span.to;
  return (t: number, outside: number) => {
    const minute = Math.floor(local.hour(t) * 60 + 0.5);
    const weekday = local.weekday(t);
    const plan = planOf(local.day(t), weekday);
    const happening = events.filter((event) => t >= event.from && t < event.to);
    const first = <Kind extends CoolRoomEvent['kind']>(kind: Kind) =>
      happening.find(
        (event): event is Extract<CoolRoomEvent, { kind: Kind }> => event.kind === kind,
      );
    const told = first('supply') !== undefined;
    const supply = first('outage') === undefined && (told || !plan.off.some(within(minute)));
    const shut = first('door-shut') !== undefined;
    const opened = !shut && plan.openings.some(within(minute)) ? 1 : 0;
    const picked = weekday !== 6 && !shut && minute === plan.loadAt;
    return {
      t: Math.floor(t / MINUTE) * MINUTE,
      supply,
      door: Math.max(opened, first('door-ajar')?.share ?? 0),
      load: picked ? { heat: 70, temperature: Math.max(6, outside + 2) } : undefined,
      setPoint: first('set-point')?.setPoint,
      strength: first('strength')?.share,
    };
  };
}
