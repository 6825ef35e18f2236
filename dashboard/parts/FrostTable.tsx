import type { FrostTonight } from '../../hub/contract/index.ts';
import { hours } from '../charts/hours.ts';
import { timeOfDay, weekday } from '../times.ts';
import { words } from '../words.ts';
import { FigureTable } from './FigureTable.tsx';

type Curve = FrostTonight['curves'][number];
const NEAR = 31 * 60_000; // ms: half the step of the hours, and a little

/** Tonight in figures: the low, its range, and each limit that grows there. */
export function FrostTable({ tonight, zone }: { tonight: FrostTonight; zone: string }) {
  const { columns } = words.frost;
  return (
    <details>
      <summary>{words.frost.table}</summary>
      <FigureTable
        label={words.frost.table}
        columns={Object.values(columns)}
        rows={tonight.curves.flatMap((curve, i) =>
          curve.limits.map(({ what, at, p, crossesAt }, line) => [
            `${i + 1} ${curve.name}, ${words.spots[curve.spot]}`,
            line === 0 ? words.degrees(curve.low.mean) : '',
            line === 0
              ? `${words.degrees(curve.between[0])} … ${words.degrees(curve.between[1])}`
              : '',
            words.frost.limit(what, at),
            words.chance(p),
            crossesAt === null ? words.frost.notCrossed : timeOfDay(crossesAt, zone),
          ]),
        )}
      />
      <h3>{words.frost.hours}</h3>
      <FigureTable
        label={words.frost.hours}
        columns={[
          words.strips.columns.time,
          ...tonight.curves.map((curve, i) => (
            <abbr key={i} title={`${curve.name}, ${words.spots[curve.spot]}`}>
              {i + 1}
            </abbr>
          )),
        ]}
        rows={hours(tonight.from, tonight.to, 1, zone).map(({ t }) => [
          `${weekday(t, zone)} ${timeOfDay(t, zone)}`,
          ...tonight.curves.map((curve) => valueAt(curve, t, tonight.now)),
        ])}
      />
    </details>
  );
}

/** Measured where that is past, expected where it is to come. */
function valueAt(curve: Curve, t: number, now: number): string {
  const past = t <= now;
  const times = past ? curve.t : curve.fan.map((point) => point.t);
  const values = past ? curve.temperature : curve.fan.map(({ middle }) => middle);
  let best: { apart: number; value: number } | null = null;
  for (const [i, at] of times.entries()) {
    const value = values[i] ?? null;
    const apart = Math.abs(at - t);
    if (value !== null && apart <= NEAR && (best === null || apart < best.apart))
      best = { apart, value };
  }
  return best === null ? words.places.dash : words.degrees(best.value);
}
