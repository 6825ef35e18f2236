import type { Strip } from '../../hub/contract/index.ts';
import { hours } from './hours.ts';

export type StripRow = {
  readonly t: number;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly wet: boolean;
  /** 10 %, 50 % and 90 % of the chances, ahead of now. */
  readonly fan: { readonly low: number; readonly middle: number; readonly high: number } | null;
};

const NEAR = 45 * 60_000; // ms: a reading further from the hour than this does not stand for it

/** The strip as rows of a table, every three hours of the farm's clock. */
export function stripTable(
  strip: Strip,
  window: { readonly from: number; readonly to: number; readonly now: number },
  zone: string,
): StripRow[] {
  return hours(window.from, window.to, 3, zone).map(({ t }) => {
    const i = nearest(strip.t, t);
    const fan =
      strip.fan[
        nearest(
          strip.fan.map((point) => point.t),
          t,
        )
      ] ?? null;
    return {
      t,
      temperature: strip.temperature[i] ?? null,
      humidity: strip.humidity[i] ?? null,
      wet: strip.wetSpells.some(({ from, to }) => from <= t && t <= to),
      fan: t > window.now ? fan : null,
    };
  });
}

function nearest(times: readonly number[], t: number): number {
  let best = -1;
  let distance = NEAR;
  for (const [i, at] of times.entries()) {
    const away = Math.abs(at - t);
    if (away <= distance) {
      best = i;
      distance = away;
    }
  }
  return best;
}
