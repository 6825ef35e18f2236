import type { Task } from '../../hub/contract/index.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Answers } from './Answers.tsx';

/** Tasks that wait until the time somebody chose; they can still be answered. */
export function PutOffTasks({
  tasks,
  now,
  zone,
}: {
  tasks: readonly Task[];
  now: number;
  zone: string;
}) {
  if (tasks.length === 0) return null;
  return (
    <section class="put-off">
      <h2>{words.today.putOff}</h2>
      <ul class="plain-list">
        {tasks.map((task) => (
          <li key={task.id} id={task.id} tabIndex={-1}>
            <details>
              <summary>
                {task.title}{' '}
                <span class="quiet">
                  {task.until !== null && words.task.until(when(Date.parse(task.until), zone, now))}
                </span>
              </summary>
              <p>{task.why}</p>
              <Answers task={task} zone={zone} />
            </details>
          </li>
        ))}
      </ul>
    </section>
  );
}
