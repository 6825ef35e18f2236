import type { Task } from '../../hub/contract/index.ts';
import { UndoMove } from '../placesCompared/UndoMove.tsx';
import { calendarDay, timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** What was done, declined or no longer needed since midnight on the farm. */
export function EndedTasks({
  tasks,
  now,
  zone,
}: {
  tasks: readonly Task[];
  now: number;
  zone: string;
}) {
  const today = calendarDay(now, zone);
  const ended = tasks
    .flatMap((task) => (task.endedAt === null ? [] : [{ task, at: Date.parse(task.endedAt) }]))
    .filter(({ at }) => calendarDay(at, zone) === today)
    .sort((a, b) => b.at - a.at);
  return (
    <section class="ended">
      <h2>{words.today.ended}</h2>
      {ended.length === 0 && <p class="quiet">{words.today.endedNone}</p>}
      <ul class="plain-list">
        {ended.map(({ task, at }) => {
          const ending = task.answer ?? 'lapsed';
          return (
            <li key={task.id}>
              <Mark shape={ending} />
              <span>
                {task.title}{' '}
                <span class="quiet">
                  {words.task.endings[ending]}, {timeOfDay(at, zone)}
                </span>
                {task.kind === 'sow' && task.answer === 'done' && (
                  <>
                    {' '}
                    <a class="how-link" href="/sowing">
                      {words.task.enterSown}
                    </a>
                  </>
                )}
                {task.kind === 'move-trays' && task.answer === 'done' && <UndoMove task={task} />}
              </span>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
