import type { Probe } from '../contract/index.ts';
import { suggestionWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';

const HOUR = 3_600_000; // ms
const LOOK_BACK = 24 * HOUR;
/** Fewer common hours say nothing. Ours. */
const FEWEST_HOURS = 2;
/** Means further apart than this are not the same place. K, ours. */
const FURTHEST = 3;

type Suggestion = NonNullable<Probe['suggestion']>;

const hourly = (
  { t, value }: { readonly t: readonly number[]; readonly value: readonly number[] },
  from: number,
) => {
  const sums = new Map<number, { sum: number; n: number }>();
  for (let i = t.length - 1; i >= 0 && (t[i] ?? 0) >= from; i--) {
    const hour = Math.floor((t[i] ?? 0) / HOUR);
    const bin = sums.get(hour) ?? { sum: 0, n: 0 };
    sums.set(hour, { sum: bin.sum + (value[i] ?? 0), n: bin.n + 1 });
  }
  return new Map([...sums].map(([hour, { sum, n }]) => [hour, sum / n]));
};

/** Where an unplaced probe seems to hang: whose hourly temperatures over the last day are nearest. */
export function suggestPlace(parts: ApiParts, probe: string): Suggestion | null {
  const { window, spots } = parts.snapshots;
  const from = parts.clock.now() - LOOK_BACK;
  const own = hourly(window.column(probe, 'temperature'), from);
  if (own.size < FEWEST_HOURS) return null;
  let best: { place: string; spot: string; apart: number } | null = null;
  for (const { place, spot, probe: other } of spots.current()) {
    const theirs = hourly(window.column(other, 'temperature'), from);
    const common = [...own].filter(([hour]) => theirs.has(hour));
    if (common.length < FEWEST_HOURS) continue;
    const squares = common.map(([hour, value]) => (value - (theirs.get(hour) ?? 0)) ** 2);
    const apart = Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
    if (!best || apart < best.apart) best = { place, spot, apart };
  }
  if (!best || best.apart > FURTHEST) return null;
  const name = parts.farm().place(best.place)?.name ?? best.place;
  return {
    place: best.place,
    spot: best.spot as Suggestion['spot'],
    words: suggestionWords(name, best.apart),
  };
}
