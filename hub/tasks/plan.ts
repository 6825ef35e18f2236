import { type Act, type Decision, taskKey } from '../../rules/decide/index.ts';
import { patienceOf } from './patience.ts';
import { type Memory, NO_MEMORY, type Plan, type Step, type Task } from './task.ts';

/** A deadline that moves by less than this, or by less than this share of the time left, is not
 *  worth telling: a forecast of a crossing six hours away moves at every look. Ours. */
const MOVED = 15 * 60_000; // ms
const MOVED_SHARE = 1 / 3;

/** `~` is in no name of a place or probe, so two keys never make one id; it needs no escaping in an address. */
const idOf = (key: string, now: number) => `${key.replaceAll(':', '~')}~${now.toString(36)}`;

function opened(decision: Decision & Act, key: string, now: number): Task {
  const { kind, place, subject, because, from, doBy, minutes, saves, alarm } = decision;
  return {
    id: idOf(key, now),
    key,
    kind,
    place,
    subject,
    state: 'open',
    verdict: 'act',
    because,
    missing: [],
    from,
    doBy,
    minutes,
    saves,
    alarm,
    openedAt: now,
    endedAt: null,
    answer: null,
    until: null,
  };
}

/** An open task as its decision sees it now. An alarm once raised stays until the task ends. */
function renewed(task: Task, decision: Decision): Task {
  if (decision.verdict === 'unknown')
    return { ...task, verdict: 'unknown', missing: decision.missing };
  if (decision.verdict === 'leave') return { ...task, verdict: 'leave', missing: [] };
  const { because, from, doBy, minutes, saves, alarm } = decision;
  const kept = { because, from, doBy, minutes, saves, missing: [], alarm: alarm ?? task.alarm };
  return { ...task, verdict: 'act', ...kept };
}

const differs = (a: Task, b: Task, now: number) =>
  a.alarm !== b.alarm ||
  (a.doBy === null) !== (b.doBy === null) ||
  (a.doBy !== null &&
    b.doBy !== null &&
    Math.abs(a.doBy - b.doBy) >= Math.max(MOVED, (b.doBy - now) * MOVED_SHARE));

/** Whether an answer given still keeps the task from being asked again. */
const quiet = (kind: Task['kind'], { answered }: Memory, now: number) =>
  answered !== null && now - answered.at < patienceOf(kind)[answered.answer];

/**
 * What to open, change and let lapse, so that open tasks agree with the decisions. Planning again
 * after carrying it out gives no steps. A decision that cannot tell neither opens nor closes.
 */
export function planTasks(
  standing: readonly Task[],
  decisions: readonly Decision[],
  memory: ReadonlyMap<string, Memory>,
  now: number,
): Plan {
  const open = new Map(standing.map((task) => [task.key, task]));
  const steps: Step[] = [];
  const fresh: Task[] = [];
  const remembered = new Map<string, Memory | null>();
  const remember = (key: string, next: Memory) => {
    const before = memory.get(key) ?? NO_MEMORY;
    if (before.clearSince === next.clearSince && before.answered === next.answered) return;
    remembered.set(key, next.clearSince === null && next.answered === null ? null : next);
  };
  const lapse = (task: Task) =>
    steps.push({
      event: 'lapsed',
      task: { ...task, state: 'ended', endedAt: now, answer: null, until: null },
    });

  /** An open task stays open: told when it comes back from being put off, or differs. */
  const keep = (task: Task, next: Task) => {
    const back = task.until !== null && now >= task.until;
    if (back) steps.push({ event: 'changed', task: { ...next, until: null, answer: null } });
    else if (differs(task, next, now)) steps.push({ event: 'changed', task: next });
    else fresh.push(next);
  };

  for (const decision of decisions) {
    const key = taskKey(decision);
    const task = open.get(key);
    const before = memory.get(key) ?? NO_MEMORY;
    open.delete(key);
    if (decision.verdict === 'unknown') {
      if (task) keep(task, renewed(task, decision));
      continue;
    }
    if (decision.verdict === 'leave') {
      const clearSince = before.clearSince ?? now;
      const gone = now - clearSince >= patienceOf(decision.kind).lapse;
      if (task && gone) lapse(task);
      else if (task) keep(task, renewed(task, decision));
      const waiting = (task !== undefined || before.answered !== null) && !gone;
      remember(key, waiting ? { ...before, clearSince } : NO_MEMORY);
      continue;
    }
    remember(key, { ...before, clearSince: null });
    if (!task) {
      if (quiet(decision.kind, before, now)) continue;
      steps.push({ event: 'opened', task: opened(decision, key, now) });
      remember(key, NO_MEMORY);
      continue;
    }
    keep(task, renewed(task, decision));
  }
  // Nobody decides about it any more: its place or probe is gone.
  for (const task of open.values()) lapse(task);
  return { steps, fresh, memory: remembered };
}
