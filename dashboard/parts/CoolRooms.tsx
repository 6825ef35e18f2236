import type { CoolRoom, PlaceNow } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { Freshness } from './Freshness.tsx';
import { Mark } from './Mark.tsx';

/** Each cool room in a sentence or two: its state as a word and a shape, and the time in hand. */
export function CoolRooms({
  rooms,
  places,
}: {
  rooms: readonly CoolRoom[];
  places: readonly PlaceNow[];
}) {
  if (rooms.length === 0) return null;
  return (
    <section>
      <h2>{words.today.coolRooms}</h2>
      {rooms.map((room) => {
        const place = places.find(({ id }) => id === room.id);
        return (
          <p key={room.id} class={`cool-room cool-room-${room.state}`}>
            <Mark shape={room.state} />{' '}
            <a href={`/cool-room?${new URLSearchParams({ room: room.id })}`}>
              {place?.name ?? room.id}
            </a>
            : <strong>{words.coolRoomStates[room.state]}.</strong> {words.coolRoom(room)}{' '}
            <Freshness readAt={room.asOf} stale={place?.stale ?? room.state === 'unknown'} />
          </p>
        );
      })}
    </section>
  );
}
