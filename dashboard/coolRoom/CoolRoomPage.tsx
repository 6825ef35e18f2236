import './coolRoom.css';
import type { CoolRoom, CoolRoomDay } from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { query } from '../router.ts';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';
import { FoodClocks } from './FoodClocks.tsx';
import { Generator } from './Generator.tsx';
import { HoldOver } from './HoldOver.tsx';
import { Lots } from './Lots.tsx';
import { Record } from './Record.tsx';
import { RoomCycle, usualDefrosts } from './RoomCycle.tsx';
import { RoomDay, RoomDayTable } from './RoomDay.tsx';
import { RoomEnergy } from './RoomEnergy.tsx';
import { RoomState } from './RoomState.tsx';
import { RoomWhy } from './RoomWhy.tsx';
import { Solar } from './Solar.tsx';
import { useFacts } from './useFacts.ts';

/** The cool room: how it is, what lies in it and what to sell first, and its record. */
export function CoolRoomPage() {
  const text = words.room;
  const facts = today.value;
  const zone = farm.value?.zone;
  if (facts === null || zone === undefined)
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={faults.value.today} />
      </>
    );
  const wanted = new URLSearchParams(query.value).get('room');
  const room =
    wanted === null ? facts.coolRooms[0] : facts.coolRooms.find((one) => one.id === wanted);
  const nameOf = (id: string) => facts.places.find((place) => place.id === id)?.name ?? id;
  return (
    <div class="cool-room-page">
      <Heading title={room ? nameOf(room.id) : text.title} />
      {facts.coolRooms.length > 1 && (
        <nav class="room-switch" aria-label={text.rooms}>
          {facts.coolRooms.map(({ id }) => (
            <a
              key={id}
              href={`/cool-room?${new URLSearchParams({ room: id })}`}
              aria-current={id === room?.id ? 'true' : undefined}
            >
              {nameOf(id)}
            </a>
          ))}
        </nav>
      )}
      {room === undefined ? (
        <p>{facts.coolRooms.length === 0 ? text.none : text.unknown}</p>
      ) : (
        <Room key={room.id} room={room} name={nameOf(room.id)} zone={zone} />
      )}
    </div>
  );
}

function Room({ room, name, zone }: { room: CoolRoom; name: string; zone: string }) {
  const text = words.room;
  const now = clock.value ?? Date.parse(today.value?.asOf ?? '');
  const place = today.value?.places.find(({ id }) => id === room.id);
  const day = useFacts<CoolRoomDay>(`/api/cool-rooms/${encodeURIComponent(room.id)}/day`);
  return (
    <>
      <RoomState
        room={room}
        zone={zone}
        now={now}
        stale={place?.stale ?? room.state === 'unknown'}
      />
      <RoomWhy room={room} zone={zone} now={now} />
      <div class="room-columns">
        <div>
          <Lots room={room.id} roomName={name} zone={zone} now={now} />
        </div>
        <div>
          <section>
            <h2>{text.day}</h2>
            {day.facts ? (
              <>
                <p>{day.facts.words}</p>
                <RoomDay
                  day={day.facts}
                  defrosts={usualDefrosts(room, day.facts.from, day.facts.to)}
                  zone={zone}
                />
                <RoomDayTable day={day.facts} zone={zone} />
              </>
            ) : (
              <Fault sentence={day.fault} again={day.again} />
            )}
            <RoomCycle room={room} zone={zone} now={now} />
          </section>
          <HoldOver room={room} zone={zone} now={now} />
          <Generator room={room} zone={zone} now={now} />
          <RoomEnergy room={room} zone={zone} />
          <Solar room={room} />
          <Record room={room.id} zone={zone} now={now} />
          <FoodClocks zone={zone} now={now} onStored={day.again} />
        </div>
      </div>
    </>
  );
}
