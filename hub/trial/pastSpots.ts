import type { AirReading, Column, SpotName } from '../../rules/decide/index.ts';
import { celsius, type Instant, instant, percent } from '../../rules/units.ts';
import type { Past, Placement } from '../store/index.ts';

export const HOUR = 3_600_000; // ms
/** The mean of an hour is taken for a reading in its middle. Ours. */
export const MIDDLE = HOUR / 2;

/** What hung at one spot of a place, hour by hour, in order of time. */
export type PastSpot = {
  readonly spot: SpotName;
  readonly probe: string;
  readonly temperature: Column;
  readonly air: readonly AirReading[];
};

const IN_ORDER: readonly SpotName[] = ['canopy', 'air', 'grass'];

/** The spots of a place that speak for its air and its crop, from the hours' means. */
export function pastSpots(
  past: Past,
  placements: readonly Placement[],
  place: string,
  span: { readonly from: number; readonly to: number },
): PastSpot[] {
  return IN_ORDER.flatMap((spot) => {
    const t: Instant[] = [];
    const value: number[] = [];
    const air: AirReading[] = [];
    const here = placements
      .filter((one) => one.place === place && one.spot === spot)
      .sort((a, b) => a.from - b.from);
    for (const { probe, from, to } of here) {
      const begins = Math.max(span.from, from);
      const ends = Math.min(span.to, to ?? Number.MAX_SAFE_INTEGER);
      if (begins >= ends) continue;
      const damp = past.hours(probe, 'humidity', begins, ends);
      let next = 0;
      for (const [hour, mean] of past.hours(probe, 'temperature', begins, ends)) {
        const at = instant(hour + MIDDLE);
        // Two probes at one spot: the one that came first speaks.
        if (t.length > 0 && at <= (t[t.length - 1] ?? 0)) continue;
        const temperature = celsius(mean);
        // Halfway between two hours their middle: a reading speaks for half an hour, as in the rules.
        const last = value.at(-1);
        if (last !== undefined && t.at(-1) === at - HOUR) {
          t.push(instant(hour));
          value.push((last + temperature) / 2);
        }
        t.push(at);
        value.push(temperature);
        while (next < damp.length && (damp[next]?.[0] ?? 0) < hour) next++;
        const humid = damp[next];
        if (humid?.[0] === hour) air.push({ t: at, temperature, humidity: percent(humid[1]) });
      }
    }
    return t.length === 0
      ? []
      : [{ spot, probe: here[0]?.probe ?? '', temperature: { t, value }, air }];
  });
}
