import type { Task } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Answers } from './Answers.tsx';
import { EvidenceTable } from './EvidenceTable.tsx';
import { Mark } from './Mark.tsx';

/** One thing to do: what, by when, why, what it saves, and the three answers. */
export function TaskCard({ task, now, zone }: { task: Task; now: number; zone: string }) {
  return (
    <article class={task.alarm ? 'task task-alarm' : 'task'} id={task.id} tabIndex={-1}>
      {task.alarm && (
        <p class="alarm-word">
          <Mark shape="alarm" /> {words.task.alarm}
        </p>
      )}
      <h3>{task.title}</h3>
      <p class="task-when">
        <Deadline task={task} now={now} zone={zone} />
        <span>{words.task.minutes(task.minutes)}</span>
        <Saves task={task} />
      </p>
      {task.verdict === 'unknown' && (
        <p class="unknown-words">
          <Mark shape="unknown" /> {words.task.unknown}
        </p>
      )}
      <p class="task-why">{task.why}</p>
      {task.caution !== null && (
        <p class="caution">
          <Mark shape="care" /> <strong>{words.task.care}.</strong> {task.caution}
        </p>
      )}
      {task.because.length > 0 && (
        <details>
          <summary>{words.task.why}</summary>
          <EvidenceTable task={task.id} because={task.because} zone={zone} now={now} />
        </details>
      )}
      {task.kind === 'sow' && (
        <p>
          <a class="how-link" href="/sowing">
            {words.task.enterBatches}
          </a>
        </p>
      )}
      <Answers task={task} zone={zone} />
    </article>
  );
}

function Deadline({ task: { doBy, from }, now, zone }: { task: Task; now: number; zone: string }) {
  const start = from !== null && Date.parse(from) > now ? Date.parse(from) : null;
  if (doBy === null && start === null) return <span>{words.task.noDeadline}</span>;
  const end = doBy === null ? null : Date.parse(doBy);
  return (
    <>
      {start !== null && <span>{words.task.from(when(start, zone, now))}</span>}
      {end !== null && (
        <>
          <strong>{words.task.by(when(end, zone, now))}</strong>
          <strong class={end < now ? 'late' : ''}>{words.countdown(end - now)}</strong>
        </>
      )}
    </>
  );
}

function Saves({ task: { saves } }: { task: Task }) {
  const currency = farm.value?.money;
  const amounts = [
    saves.money !== null && currency ? words.money(saves.money, currency) : '',
    saves.amount !== null ? words.withUnit(saves.amount, 'kg') : '',
  ].filter((text) => text !== '');
  if (amounts.length === 0) return null;
  return <span>{words.task.saves(amounts.join(', '))}</span>;
}
