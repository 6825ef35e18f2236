import type { CoolRoomLog } from '../../hub/contract/index.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { ActionForm } from './ActionForm.tsx';
import { ActionList } from './ActionList.tsx';
import { LogTable } from './LogTable.tsx';
import { ProbeChecks } from './ProbeChecks.tsx';
import { useFacts } from './useFacts.ts';

/** The record of this week, the way to paper and to a file, what was done, and the probes' checks. */
export function Record({ room, zone, now }: { room: string; zone: string; now: number }) {
  const text = words.record;
  const path = `/api/cool-rooms/${encodeURIComponent(room)}/log`;
  const { facts: log, fault, again } = useFacts<CoolRoomLog>(path);
  if (!log)
    return (
      <section>
        <h2>{text.week}</h2>
        <Fault sentence={fault} again={again} />
      </section>
    );
  const range = new URLSearchParams({ from: log.from, to: log.to });
  return (
    <>
      <section>
        <h2>{text.week}</h2>
        <LogTable log={log} />
        {log.words.map((line) => (
          <p key={line} class="quiet">
            {line}
          </p>
        ))}
        <p class="record-links">
          <a
            href={`/cool-room/record?${new URLSearchParams({ room, from: log.from, to: log.to })}`}
          >
            {text.print}
          </a>
          <a href={`${path}.csv?${range}`} download>
            {text.csv}
          </a>
        </p>
        <ActionList actions={log.actions} zone={zone} now={now} />
        <ActionForm room={room} onStored={again} />
      </section>
      <ProbeChecks log={log} zone={zone} now={now} onStored={again} />
    </>
  );
}
