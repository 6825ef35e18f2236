import type { CoolRoom } from '../../hub/contract/index.ts';
import { Freshness } from '../parts/Freshness.tsx';
import { Mark } from '../parts/Mark.tsx';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { HoldTimes } from './HoldOver.tsx';

/** Is it cold, since when, and how long if it stops: the first screen of a phone. */
export function RoomState({
  room,
  zone,
  now,
  stale,
}: {
  room: CoolRoom;
  zone: string;
  now: number;
  stale: boolean;
}) {
  const text = words.room;
  const time = (at: string) => when(Date.parse(at), zone, now);
  const { pullDown, since, cause, aboveLimit } = room;
  const over = text.above(aboveLimit.hours, room.limit);
  return (
    <div class="room-state">
      <p class={`sentence room-now cool-room-${room.state}`}>
        <Mark shape={room.state} /> <strong>{words.coolRoomStates[room.state]}.</strong>{' '}
        {text.now(room.temperature, room.setPoint, room.limit)}
      </p>
      {pullDown && (
        <p>
          <Mark shape="later" />{' '}
          {text.pullDown(
            time(pullDown.since),
            pullDown.peak,
            pullDown.backAt === null ? null : time(pullDown.backAt),
          )}
        </p>
      )}
      {room.defrosting && (
        <p>
          <Mark shape="later" /> {text.defrosting}
        </p>
      )}
      {cause !== null && (
        <p>
          <Mark shape="care" />{' '}
          {since !== null && text.wrongSince(time(since), now - Date.parse(since))}{' '}
          {text.cause(room.among, room.sure)}
        </p>
      )}
      {cause === null && room.state === 'holding' && <p>{text.wellSince}</p>}
      <HoldTimes room={room} zone={zone} now={now} />
      {over !== '' && <p>{over}</p>}
      <p>
        <Freshness readAt={room.asOf} stale={stale} />
      </p>
    </div>
  );
}
