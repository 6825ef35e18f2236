import type { CoolRoom } from '../../hub/contract/index.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { HoldClock } from './HoldClock.tsx';

const MINUTE = 60_000; // ms
const DAY = 24 * 60; // minutes; what lies further off is told as "or longer"

type Shown = { readonly room: CoolRoom; readonly zone: string; readonly now: number };

/** When the air and the middle of a crate are at the limit, as times on the clock. */
export function HoldTimes({ room, zone }: Shown) {
  const text = words.room;
  const { minutesToLimit, shortest, longest, produceShortest, produceLongest } = room.holdOver;
  const from = Date.parse(room.asOf ?? '');
  const at = (minutes: number) => timeOfDay(from + minutes * MINUTE, zone);
  const end = (minutes: number | null) => (minutes === null || minutes > DAY ? null : at(minutes));
  if (room.temperature === null || shortest === null || minutesToLimit === null)
    return <p>{text.hold(null, room.limit)}</p>;
  if (minutesToLimit <= 0) return <p>{text.hold(0, room.limit)}</p>;
  const air = text.holdAir(room.limit, at(shortest), end(longest));
  const crates =
    produceShortest === null
      ? ''
      : produceShortest <= 0
        ? text.cratesThere(room.limit)
        : text.holdCrates(at(produceShortest), end(produceLongest));
  return (
    <p class="hold-times">
      {crates === '' || (produceShortest ?? 0) <= 0 ? `${air}. ${crates}` : `${air}; ${crates}.`}
    </p>
  );
}

/** How long the room stays below its limit with the cooling off: a picture, and what that rests on. */
export function HoldOver({ room, zone, now }: Shown) {
  const text = words.room;
  const { minutesToLimit, shortest, longest } = room.holdOver;
  const known = minutesToLimit !== null && minutesToLimit > 0 && shortest !== null;
  return (
    <section>
      <h2>{text.holdOver}</h2>
      <HoldTimes room={room} zone={zone} now={now} />
      {known && <HoldClock room={room} zone={zone} />}
      {known && <p>{text.holdSpan(shortest, longest)}</p>}
      <p class="quiet">{text.holdLearned(room.holdOver)}</p>
    </section>
  );
}
