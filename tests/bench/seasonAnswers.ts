import { destination } from '../../hub/placesCompared/index.ts';
import type { Task } from '../../hub/tasks/index.ts';
import { TONIGHT } from '../../rules/decide/index.ts';
import { createLocalTime } from '../../simulators/localTime.ts';
import type { SeasonPlan } from '../../simulators/seasonPlan.ts';
import type { SeasonNow } from '../../simulators/seasonWorld.ts';
import { createChance } from '../../simulators/seed.ts';
import { type Books, countTask, isFollowed } from './seasonBooks.ts';
import { MINUTES } from './seasonFarm.ts';
import type { Hands } from './seasonHands.ts';
import type { SeasonHub } from './seasonHub.ts';

// How somebody takes tasks: sees them after a while, by day only unless an alarm wakes them, and
// leaves some undone. Every figure is ours, from no source.

const MINUTE = 60_000;
const WAKES = 6.5; // o'clock
const SLEEPS = 22;
const SOONEST = 5; // min
const USUALLY = 45; // min more on average, now short and now long
const LONGEST = 240;
const NOT_DONE = 0.12; // share of tasks; half of them are answered "no", half not at all
const WOKEN = [10, 25] as const; // min: at least, and more on average
const SLEPT_ON = 0.15; // share of alarms at night that nobody gets up for

type Seen = { readonly at: number; readonly does: boolean; readonly says: boolean };

/** Leaving open tonight is counted apart from opening up. */
const countedAs = ({ kind, subject }: Task) => (subject === TONIGHT ? 'leave-open' : kind);

export function makeAnswers(
  plan: SeasonPlan,
  now: SeasonNow,
  hands: Hands,
  hub: SeasonHub,
  books: Books,
  undone: readonly string[],
) {
  const local = createLocalTime(plan.zone);
  const chance = createChance(plan.seed, 'answers');
  const seen = new Map<string, Seen>();
  const alarmed = new Set<string>();
  let draws = 0;
  const wait = (mean: number) => -mean * Math.log(1 - chance.uniform(draws++));

  const byDay = (t: number) => {
    const hour = local.hour(t);
    const wakes = (at: number) => at + wait(20) * MINUTE;
    if (hour < WAKES) return wakes(t + (WAKES - hour) * 60 * MINUTE);
    return hour < SLEEPS ? t : wakes(t + (24 - hour + WAKES) * 60 * MINUTE);
  };
  const plans = (task: Task): Seen => {
    const awake = task.alarm !== null;
    const delay = awake ? WOKEN[0] + wait(WOKEN[1]) : Math.min(LONGEST, SOONEST + wait(USUALLY));
    const at = now.t + delay * MINUTE;
    const does = chance.uniform(draws++) >= (awake ? SLEPT_ON : NOT_DONE);
    return { at: awake ? at : byDay(at), does, says: chance.uniform(draws++) < 0.5 };
  };
  const answer = (task: Task, said: 'done' | 'no') => {
    books.minutes.answers += MINUTES.answer;
    hub.core.answer(task.id, { answer: said, until: null, note: null }, 'grower');
  };

  /** @returns minutes it took, 0 where it stood so already, null where it cannot be done. */
  function does(task: Task): number | null {
    if (task.subject === TONIGHT) return hands.leaveOpen(task.place);
    if (task.kind === 'open-up') return hands.vents(task.place, true);
    if (task.kind === 'close-up') return hands.vents(task.place, false);
    if (task.kind === 'cover') return hands.covers(task.place, true);
    if (task.kind === 'uncover') return hands.covers(task.place, false);
    const to = destination(task);
    const stand = now.stands.get(task.subject ?? '');
    return to === null || stand === undefined ? null : hands.carry(stand, to, true);
  }

  /** Looks at what is open, and does what its time has come for. */
  return (open: readonly Task[]): void => {
    for (const task of open) {
      if (task.verdict === 'unknown' && !seen.has(task.id)) continue;
      if (!seen.has(task.id)) {
        seen.set(task.id, plans(task));
        const count = countTask(books, countedAs(task));
        count.asked += 1;
        count.minutesAsked += task.minutes;
      }
      if (task.alarm !== null && !alarmed.has(task.id)) {
        alarmed.add(task.id);
        books.alarms += 1;
        seen.set(task.id, plans(task));
      }
      const mine = seen.get(task.id);
      if (!mine || now.t < Math.max(mine.at, task.from ?? 0)) continue;
      if (!isFollowed(task.kind) || !mine.does || undone.includes(countedAs(task))) {
        if (mine.says || !isFollowed(task.kind)) answer(task, 'no');
        seen.set(task.id, { ...mine, at: Number.POSITIVE_INFINITY });
        continue;
      }
      const minutes = does(task);
      if (minutes === null) {
        answer(task, 'no');
        continue;
      }
      const count = countTask(books, countedAs(task));
      count.done += 1;
      count.minutesDone += minutes;
      if (minutes === 0 && task.subject !== TONIGHT) count.already += 1;
      answer(task, 'done');
    }
  };
}
