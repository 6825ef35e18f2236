import './coolRoom.css';
import type { SolarSheet } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { query } from '../router.ts';
import { farm, faults, today } from '../state.ts';
import { calendarDay, shortDay } from '../times.ts';
import { words } from '../words.ts';
import { RoomEnergyLine } from './RoomEnergyLine.tsx';
import { SolarLines } from './Solar.tsx';
import { SolarForm } from './SolarForm.tsx';
import { useFacts } from './useFacts.ts';

/** The worked sheet for panels and battery, for a talk with a licensed person, on paper. */
export function SolarPage() {
  const text = words.room;
  const wanted = new URLSearchParams(query.value).get('room');
  const facts = today.value;
  const zone = farm.value?.zone;
  const rooms = facts?.coolRooms ?? [];
  const room = wanted === null ? rooms[0] : rooms.find(({ id }) => id === wanted);
  const asked = new URLSearchParams(query.value);
  asked.delete('room');
  const path = room && `/api/cool-rooms/${encodeURIComponent(room.id)}/solar?${asked}`;
  const { facts: worked, fault, again } = useFacts<SolarSheet>(path ?? null);
  const back = (
    <p>
      <a
        class="back"
        href={room ? `/cool-room?${new URLSearchParams({ room: room.id })}` : '/cool-room'}
      >
        {text.title}
      </a>
    </p>
  );
  if (facts === null || zone === undefined || room === undefined)
    return (
      <>
        {back}
        <Heading title={text.solar} />
        {facts === null || zone === undefined ? (
          <Fault sentence={faults.value.today} />
        ) : (
          <p>{rooms.length === 0 ? text.none : text.unknown}</p>
        )}
      </>
    );
  const name = facts.places.find(({ id }) => id === room.id)?.name ?? room.id;
  const days = room.energyDays.filter(({ kilowattHours }) => kilowattHours !== null);
  const dayOf = (one: { from: string } | undefined) =>
    one === undefined ? '' : shortDay(calendarDay(Date.parse(one.from), zone));
  return (
    <div class="record-sheet">
      {back}
      <Heading title={text.solarSheet(name)} />
      <p>
        {farm.value?.name}.{' '}
        {days.length > 0 && text.solarMeasured(days.length, dayOf(days[0]), dayOf(days.at(-1)))}
      </p>
      {worked === null ? (
        <Fault sentence={fault} again={again} />
      ) : worked.sheet === null ? (
        <p>{text.solarNone}</p>
      ) : (
        <>
          <p class="sentence">
            {text.solarShort(worked.sheet.kilowattHours, worked.sheet.panels, worked.sheet.battery)}
          </p>
          <div class="record-range">
            <button type="button" class="main" onClick={() => print()}>
              {words.record.printNow}
            </button>
          </div>
          <SolarForm key={query.value} room={room.id} used={worked.used} own={worked.own} />
          <SolarLines solar={worked.sheet} own={worked.own} />
          <RoomEnergyLine room={room} />
        </>
      )}
      {text.solarCautions.map((line) => (
        <p key={line} class="caution">
          {line}
        </p>
      ))}
      <p class="caution">{text.wiring}</p>
    </div>
  );
}
