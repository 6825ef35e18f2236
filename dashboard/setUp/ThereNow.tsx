import type { SunToday } from '../../hub/contract/index.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import type { Point } from './Globe.tsx';
import { kilometresBetween, zoneTowns } from './zoneTowns.ts';

/** Further than the towns of any zone lie apart, km: the point and the zone do not agree. Ours. */
const FAR = 3500;

/** Clock and sun at the point as told: what a person can hold against a watch and the window. */
export function ThereNow({
  zone,
  now,
  point,
  sun,
}: {
  zone: string;
  now: number | null;
  point: Point | null;
  sun: SunToday | null;
}) {
  const text = words.setUpSteps;
  const town = zoneTowns.find((one) => one.zone === zone);
  const away = point && town ? kilometresBetween(point, town) : null;
  const at = (time: string) => timeOfDay(Date.parse(time), zone);
  return (
    <div>
      {now !== null && (
        <p class="quiet">{text.clockThere(timeOfDay(now, zone), offsetOf(zone, now))}</p>
      )}
      <p role="status">
        {sun !== null &&
          (sun.rise === null || sun.set === null
            ? text.noSun
            : text.sun(at(sun.rise), at(sun.set)))}
      </p>
      {away !== null && (
        <p class={away > FAR ? 'failed-line' : 'quiet'}>
          {text.away(Math.round(away), text.zoneTown(zone), away > FAR)}
        </p>
      )}
    </div>
  );
}

/** `GMT+1`, as the browser names it. */
const offsetOf = (zone: string, at: number) =>
  new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'shortOffset' })
    .formatToParts(at)
    .find(({ type }) => type === 'timeZoneName')?.value ?? '';
