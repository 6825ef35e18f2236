import { answered } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

/** What the hub stored for the last tap, said where the next one will be made. */
export function Answered({ zone, now }: { zone: string; now: number }) {
  const task = answered.value;
  return (
    <p role="status" class="answered quiet">
      {task?.answer != null &&
        words.task.stored(
          task.answer === 'later' && task.until !== null
            ? words.task.until(when(Date.parse(task.until), zone, now))
            : words.task.endings[task.answer],
          task.title,
        )}
      {task?.kind === 'sow' && task.answer === 'done' && (
        <>
          {' '}
          <a class="how-link" href="/sowing">
            {words.task.enterSown}
          </a>
        </>
      )}
    </p>
  );
}
