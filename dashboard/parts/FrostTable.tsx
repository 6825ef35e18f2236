import type { FrostTonight } from '../../hub/contract/index.ts';
import { hours } from '../charts/hours.ts';
import { timeOfDay, weekday } from '../times.ts';
import { words } from '../words.ts';
import { Scrolled } from './Scrolled.tsx';

type Curve = FrostTonight['curves'][number];
const NEAR = 31 * 60_000; // ms: half the step of the hours, and a little

/** Tonight in figures: the low, its range, and each limit that grows there. */
export function FrostTable({ tonight, zone }: { tonight: FrostTonight; zone: string }) {
  const { columns } = words.frost;
  return (
    <details>
      <summary>{words.frost.table}</summary>
      <Scrolled label={words.frost.table}>
        <table class="figures">
          <thead>
            <tr>
              {Object.values(columns).map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {tonight.curves.flatMap((curve, i) =>
              curve.limits.map(({ what, at, p, crossesAt }, line) => (
                <tr key={`${curve.place} ${curve.spot} ${what} ${at}`}>
                  <th scope="row">
                    {i + 1} {curve.name}, {words.spots[curve.spot]}
                  </th>
                  <td>{line === 0 ? words.number(curve.low.mean) : ''}</td>
                  <td>
                    {line === 0
                      ? `${words.number(curve.between[0])} … ${words.number(curve.between[1])}`
                      : ''}
                  </td>
                  <td>{words.frost.limit(what, at)}</td>
                  <td>{words.chance(p)}</td>
                  <td>
                    {crossesAt === null ? words.frost.notCrossed : timeOfDay(crossesAt, zone)}
                  </td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </Scrolled>
      <h3>{words.frost.hours}</h3>
      <Scrolled label={words.frost.hours}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">{words.strips.columns.time}</th>
              {tonight.curves.map((curve, i) => (
                <th key={`${curve.place} ${curve.spot}`} scope="col">
                  <abbr title={`${curve.name}, ${words.spots[curve.spot]}`}>{i + 1}</abbr>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {hours(tonight.from, tonight.to, 1, zone).map(({ t }) => (
              <tr key={t}>
                <th scope="row">
                  {weekday(t, zone)} {timeOfDay(t, zone)}
                </th>
                {tonight.curves.map((curve) => (
                  <td key={`${curve.place} ${curve.spot}`}>{valueAt(curve, t, tonight.now)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
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
  return best === null ? words.places.dash : words.number(best.value);
}
