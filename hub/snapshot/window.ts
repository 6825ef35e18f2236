import { type Instant, instant } from '../../rules/units.ts';
import type { Amendment, Store, StoredReading } from '../store/index.ts';

/** How far back decisions look, and a little more so that trimming is rare. */
export const WINDOW = 48 * 3_600_000; // ms
const SLACK = 6 * 3_600_000; // ms
/** A probe's clock may run a little ahead. */
const AHEAD = 600_000; // ms

type Held = {
  t: Instant[];
  value: number[];
  stuckSince: Instant | null;
  /** Of the newest reading of any kind, doubted ones too. */
  latest: number;
  /** Counts changes, so that what was made from these columns knows when to be made again. */
  version: number;
};

export type Column = { readonly t: readonly Instant[]; readonly value: readonly number[] };

/**
 * The newest two days of every series, in memory: a look at all places then costs the same with a
 * month of history as with ten years. A cache of the store, filled from it; ahead of it only while
 * the store cannot keep anything.
 */
export function makeWindow(store: Store, now: () => number) {
  const series = new Map<string, Held>();
  const name = (probe: string, quantity: string) => `${probe}\n${quantity}`;

  const load = (probe: string, quantity: string): Held => {
    const from = now() - WINDOW - SLACK;
    // What lies further ahead was stored under a clock that ran ahead: it is no reading of now.
    const until = now() + AHEAD;
    const held: Held = {
      ...{ t: [], value: [], stuckSince: null, version: 1 },
      latest: Number.NEGATIVE_INFINITY,
    };
    for (const point of store.readings.allBetween(probe, quantity, from, until)) {
      held.latest = point.t;
      if (point.flag === null) {
        held.t.push(instant(point.t));
        held.value.push(point.value);
      }
      if (point.flag === 'stuck') held.stuckSince ??= instant(point.t);
      else if (point.flag === null) held.stuckSince = null;
    }
    return held;
  };
  const get = (probe: string, quantity: string): Held => {
    const key = name(probe, quantity);
    let held = series.get(key);
    if (!held) {
      held = load(probe, quantity);
      series.set(key, held);
    }
    return held;
  };
  const reload = (probe: string, quantity: string) => {
    const key = name(probe, quantity);
    const old = series.get(key);
    if (!old) return; // nobody has asked for it yet
    series.set(key, { ...load(probe, quantity), version: old.version + 1 });
  };

  return {
    column: (probe: string, quantity: string): Column & { readonly version: number } =>
      get(probe, quantity),
    stuckSince: (probe: string, quantity: string) => get(probe, quantity).stuckSince,
    /** The newest good value. */
    newest(probe: string, quantity: string): { t: Instant; value: number } | null {
      const { t, value } = get(probe, quantity);
      const at = t.at(-1);
      const last = value.at(-1);
      return at === undefined || last === undefined ? null : { t: at, value: last };
    },
    /**
     * After a commit.
     *
     * @param kept false while the store keeps nothing: what is new is then held here only, so that
     *   rules go on; it is not acknowledged and comes again.
     */
    add(readings: readonly StoredReading[], amendments: readonly Amendment[], kept = true) {
      const behind = new Set<string>();
      for (const { probe, quantity, t, value, flag } of readings) {
        const key = name(probe, quantity);
        const held = series.get(key);
        if (!held || behind.has(key)) continue;
        if (t <= held.latest) {
          // A late one, or one that came twice and may be doubted by now: the store knows which.
          if (t >= now() - WINDOW - SLACK) behind.add(key);
          continue;
        }
        held.latest = t;
        if (flag !== null) {
          if (flag === 'stuck') held.stuckSince ??= instant(t);
          continue;
        }
        held.stuckSince = null;
        held.t.push(instant(t));
        held.value.push(value);
        held.version++;
        const first = held.t[0];
        if (first !== undefined && first < t - WINDOW - SLACK) {
          const keep = held.t.findIndex((at) => at >= t - WINDOW);
          held.t.splice(0, keep);
          held.value.splice(0, keep);
        }
      }
      if (!kept) return;
      for (const { probe, quantity } of amendments) behind.add(name(probe, quantity));
      for (const key of behind) {
        const [probe = '', quantity = ''] = key.split('\n');
        reload(probe, quantity);
      }
    },
    /** After an import: what is in memory may lie far behind. */
    forget: () => series.clear(),
  };
}
export type Window = ReturnType<typeof makeWindow>;
