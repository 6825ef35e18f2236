import type { Logger } from 'pino';
import { decide, type NightForecast } from '../../rules/decide/index.ts';
import { type Alarm, planAlarms } from '../alarms/index.ts';
import type { Looked } from '../api/index.ts';
import type { Calendar, Clock } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { PlacesCompared } from '../placesCompared/index.ts';
import type { Planning } from '../planning/index.ts';
import type { Season } from '../season/index.ts';
import type { Snapshots } from '../snapshot/index.ts';
import { type Store, troubleOf } from '../store/index.ts';
import { type Answer, type Plan, planTasks, type Task, type Tasks } from '../tasks/index.ts';
import { taskWords } from '../words/index.ts';
import type { Feed } from './keeping/feed.ts';
import { makeUnkept } from './keeping/unkept.ts';

export type LookParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly feed: Feed;
  readonly snapshots: Snapshots;
  readonly season: Season;
  readonly planning: Planning;
  readonly placesCompared: PlacesCompared;
  readonly tasks: Tasks;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  readonly heardAt: (probe: string) => number | null;
};

/** Past nights are forgotten when there are this many; ours, some weeks of a large garden. */
const MOST_ISSUED = 2000;

/** Roll-ups, snapshot, rules, tasks, alarms: one look at the whole farm, in that order. */
export function makeLook(parts: LookParts) {
  const { store, clock, log, feed, snapshots, tasks, farm, heardAt } = parts;
  let last: Looked | null = null;
  /** Forecasts issued once per night, spot and method; through the night, and of covers from noon, once an hour. */
  const issued = new Set<string>();
  const today = parts.calendar().dayOf(clock.now());
  const keyOf = (forecast: NightForecast) => issueKey(forecast, covering(forecast));
  /** From noon on covers may be asked for: a trial of their limits needs what was said at that hour. */
  const covering = ({ place, issuedAt }: NightForecast) => {
    if (farm().place(place)?.cover === undefined) return false;
    const calendar = parts.calendar();
    return issuedAt >= calendar.bounds(calendar.dayOf(issuedAt)).begins + 12 * HOUR;
  };
  for (const body of store.forecasts.between(today, parts.calendar().add(today, 1)))
    issued.add(keyOf(JSON.parse(body)));

  const unkept = makeUnkept(store, tasks);

  const keepForecasts = (forecasts: readonly NightForecast[]) => {
    for (const forecast of forecasts) {
      if (issued.has(keyOf(forecast))) continue;
      const { fan: _, ...asIssued } = forecast;
      store.forecasts.put(forecast, JSON.stringify(asIssued));
    }
  };
  /** After the commit. */
  const forecastsKept = (forecasts: readonly NightForecast[]) => {
    for (const forecast of forecasts) issued.add(keyOf(forecast));
    if (issued.size > MOST_ISSUED) {
      const kept = new Set(forecasts.map(({ night }) => night));
      for (const key of issued) if (!kept.has(key.split('\n')[2] ?? '')) issued.delete(key);
    }
  };

  const wordsFor = (open: readonly Task[]) => (id: string) => {
    const task = open.find((one) => one.id === id);
    if (!task) return '';
    const { title, why } = taskWords(task, farm().place(task.place)?.name ?? task.place);
    return `${title}. ${why}`;
  };

  const plannedAlarms = (open: readonly Task[], now: number): Alarm[] => {
    const { raise, clear } = planAlarms(unkept.raised(), open, wordsFor(open), now);
    return [...raise, ...clear];
  };
  const settleAlarms = (open: readonly Task[], now: number): Alarm[] => {
    const alarms = plannedAlarms(open, now);
    for (const alarm of alarms) store.alarms.put(alarm);
    return alarms;
  };
  /** Writes what a look came to. Where nothing can be kept it waits in memory: alarms still go out. */
  const settle = (
    plan: Plan,
    frost: readonly NightForecast[],
    open: readonly Task[],
    now: number,
  ) => {
    const alarms = plannedAlarms(open, now);
    try {
      store.transaction(() => {
        unkept.write();
        tasks.apply(plan, now);
        keepForecasts(frost);
        for (const alarm of alarms) store.alarms.put(alarm);
      });
      unkept.written();
      forecastsKept(frost);
    } catch (error) {
      if (troubleOf(error) === null) throw error;
      unkept.add({ plan, now, alarms });
    }
    return alarms;
  };

  const look = () => {
    const now = clock.now();
    try {
      snapshots.fold();
      const standing = unkept.open();
      const taken = snapshots.take(
        now,
        standing.map(({ key }) => key),
        heardAt,
      );
      const snapshot = parts.planning.with(parts.placesCompared.with(parts.season.with(taken)));
      const outlook = decide(snapshot);
      for (const { rule, error } of outlook.failures) log.error({ rule, error }, 'a rule failed');
      const plan = planTasks(standing, outlook.decisions, unkept.memory(), now);
      const open = [
        ...plan.fresh,
        ...plan.steps.map(({ task }) => task).filter(({ state }) => state === 'open'),
      ];
      const alarms = settle(plan, outlook.frost, open, now);
      last = { at: now, snapshot, outlook, open, failure: null };
      for (const { task } of plan.steps) feed.tell('task', task);
      for (const alarm of alarms) feed.tell('alarm', alarm);
      feed.tell('looked', { at: now });
    } catch (error) {
      log.error(error, 'the look failed');
      store.note(error);
      if (last) last = { ...last, failure: error instanceof Error ? error.message : String(error) };
    }
  };

  return {
    look,
    last: () => last,
    /**
     * @param at when it was said, ms: a page without a link sends it later.
     * @returns the task as it stands after the answer; undefined when it was not open at that time.
     */
    answer(id: string, answer: Answer, who: string, at: number = clock.now()): Task | undefined {
      const kept = tasks.get(id);
      const task = last?.open.find((one) => one.id === id) ?? kept;
      if (!task || !kept || (kept.state !== 'open' && !wasOpen(kept, answer, at))) return undefined;
      const now = clock.now();
      const next = tasks.answer(task, answer, who, Math.max(at, task.openedAt));
      if (last) {
        const others = last.open.filter((one) => one.id !== id);
        last = { ...last, open: next.state === 'open' ? [...others, next] : others };
        const alarms = store.transaction(() => settleAlarms(last?.open ?? [], now));
        for (const alarm of alarms) feed.tell('alarm', alarm);
      }
      feed.tell('task', next);
      return next;
    },
  };
}

/**
 * Done while it was open, and told after its reason had gone. Not for moves: where the trays stand now
 * may be told by later entries.
 */
const wasOpen = ({ endedAt, answer: had, kind }: Task, { answer }: Answer, at: number) =>
  had === null && answer !== 'later' && kind !== 'move-trays' && at < (endedAt ?? 0);

const HOUR = 3_600_000; // ms
const issueKey = ({ place, spot, night, method, issuedAt }: NightForecast, hourly: boolean) => {
  const hour = hourly || method === 'through-the-night' ? `\n${Math.floor(issuedAt / HOUR)}` : '';
  return `${place}\n${spot}\n${night}\n${method}${hour}`;
};
