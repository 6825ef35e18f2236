import { useEffect, useRef, useState } from 'preact/hooks';
import type { AnswerTask, Task } from '../../hub/contract/index.ts';
import { exactNow } from '../clock.ts';
import { answerTask } from '../commands.ts';
import { laterTimes } from '../laterTimes.ts';
import { waiting } from '../queue/index.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** Done, later or not doing: one tap, and the hub's word for it. */
export function Answers({ task, zone }: { task: Task; zone: string }) {
  const [sending, setSending] = useState<AnswerTask | null>(null);
  const [failed, setFailed] = useState<{ answer: AnswerTask; sentence: string } | null>(null);
  const [choosing, setChoosing] = useState(false);

  const send = async (answer: AnswerTask) => {
    if (sending) return;
    setSending(answer);
    setFailed(null);
    try {
      await answerTask(task.id, answer);
      setChoosing(false);
      // The card has gone with the answer; a keyboard goes on from the list's head.
      document.getElementById('to-do')?.focus({ preventScroll: true });
    } catch (error) {
      setFailed({ answer, sentence: error instanceof Error ? error.message : String(error) });
    } finally {
      setSending(null);
    }
  };
  const button = (key: string, answer: AnswerTask, label: string) => (
    <button
      type="button"
      key={key} // not the label, which changes with the minute
      class={answer.answer === 'done' ? 'main' : ''}
      aria-label={words.task.answerTo(label, task.title)}
      aria-disabled={sending !== null}
      onClick={() => send(answer)}
    >
      {isSame(sending, answer) ? words.task.sending : label}
    </button>
  );
  const later = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (choosing) later.current?.querySelector('button')?.focus();
  }, [choosing]);
  const now = exactNow();
  const waits = waiting.value.findLast(
    ({ path, refused }) =>
      refused === null && path === `/api/tasks/${encodeURIComponent(task.id)}/answer`,
  );
  if (waits) {
    const { answer } = waits.body as AnswerTask;
    return (
      <p class="waits-here">
        <Mark shape="later" /> {words.queue.answerWaits(words.task[answer])}
      </p>
    );
  }
  return (
    <div class="answers-all">
      {choosing ? (
        <div class="answers answers-later" key="later" ref={later}>
          {laterTimes(now, zone).map(({ when: name, until }) => {
            const label = `${words.task[name]}, ${when(until, zone, now)}`;
            return button(name, { answer: 'later', until: new Date(until).toISOString() }, label);
          })}
          <button type="button" class="plain" onClick={() => setChoosing(false)}>
            {words.task.back}
          </button>
        </div>
      ) : (
        <div class="answers" key="three">
          {button('done', { answer: 'done' }, words.task.done)}
          <button
            type="button"
            aria-label={words.task.answerTo(words.task.later, task.title)}
            aria-expanded={false}
            aria-disabled={sending !== null}
            onClick={() => setChoosing(true)}
          >
            {words.task.later}
          </button>
          {button('no', { answer: 'no' }, words.task.no)}
        </div>
      )}
      <div role="status">
        {failed && (
          <p class="failed">
            {words.task.notSent(failed.sentence)}{' '}
            <button type="button" onClick={() => send(failed.answer)}>
              {words.state.tryAgain}
            </button>
          </p>
        )}
      </div>
    </div>
  );
}

const isSame = (a: AnswerTask | null, b: AnswerTask) =>
  a !== null && a.answer === b.answer && (a.answer !== 'later' || near(a.until, b.until));

// "In 1 hour" is worked out anew at each drawing; the one tapped is still the one meant.
const near = (a?: string, b?: string) =>
  a !== undefined && b !== undefined && Math.abs(Date.parse(a) - Date.parse(b)) < 1_800_000;
