import './coolRoom.css';
import { useState } from 'preact/hooks';
import type { CoolRoomLog } from '../../hub/contract/index.ts';
import { now as clock } from '../clock.ts';
import { DateFields } from '../parts/DateFields.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { go, query } from '../router.ts';
import { farm, today } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { ActionList } from './ActionList.tsx';
import { LogGaps, LogTable } from './LogTable.tsx';
import { CheckLines } from './ProbeChecks.tsx';
import { useFacts } from './useFacts.ts';

/** The record of any days on a sheet of paper: figures, gaps, what was done, checks, and its cautions. */
export function RecordPage() {
  const text = words.record;
  const asked = new URLSearchParams(query.value);
  const room = asked.get('room') ?? today.value?.coolRooms[0]?.id ?? null;
  const range = new URLSearchParams();
  for (const end of ['from', 'to'] as const) {
    const day = asked.get(end);
    if (day !== null) range.set(end, day);
  }
  const path = room && `/api/cool-rooms/${encodeURIComponent(room)}/log`;
  const { facts: log, fault, again } = useFacts<CoolRoomLog>(path && `${path}?${range}`);
  const zone = farm.value?.zone;
  const back = (
    <p>
      <a class="back" href={room ? `/cool-room?${new URLSearchParams({ room })}` : '/cool-room'}>
        {words.room.title}
      </a>
    </p>
  );
  if (room === null || !log || zone === undefined)
    return (
      <>
        {back}
        <Heading title={text.title} />
        {today.value && room === null ? (
          <p>{words.room.none}</p>
        ) : (
          <Fault sentence={fault} again={again} />
        )}
      </>
    );
  const now = clock.value ?? Date.parse(`${log.to}T00:00:00Z`);
  return (
    <div class="record-sheet">
      {back}
      <Heading title={text.heading(log.name)} />
      <p>
        {log.farm}. {text.range(shortDay(log.from), `${shortDay(log.to)} ${log.to.slice(0, 4)}`)}
      </p>
      <Range key={`${log.from} ${log.to}`} room={room} log={log} csv={`${path}.csv?${range}`} />
      <LogTable log={log} />
      {log.words.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <LogGaps log={log} zone={zone} />
      <ActionList actions={log.actions} zone={zone} now={now} />
      <h2>{text.checks}</h2>
      {log.probes.map(({ probe, words: said }) => (
        <p key={probe}>{said}</p>
      ))}
      <CheckLines log={log} zone={zone} now={now} />
    </div>
  );
}

/** Other days, the file, and the printer; none of it goes onto paper. */
function Range({ room, log, csv }: { room: string; log: CoolRoomLog; csv: string }) {
  const text = words.record;
  const [from, setFrom] = useState(log.from);
  const [to, setTo] = useState(log.to);
  const show = (event: SubmitEvent) => {
    event.preventDefault();
    go(`/cool-room/record?${new URLSearchParams({ room, from, to })}`);
  };
  return (
    <form class="record-range" onSubmit={show}>
      <DateFields text={text} from={from} to={to} onFrom={setFrom} onTo={setTo} />
      <button type="submit">{text.show}</button>
      <button type="button" class="main" onClick={() => print()}>
        {text.printNow}
      </button>
      <a href={csv} download>
        {text.csv}
      </a>
    </form>
  );
}
