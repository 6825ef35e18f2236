import { pino } from 'pino';
import type { NightForecast as Forecast } from '../../../rules/decide/index.ts';
import { steppedClock } from '../../clock.ts';
import type { AlarmEvent, Day, NightForecast, TaskEvent } from '../../contract/index.ts';
import type { RawReading } from '../../intake/index.ts';
import type { Settings } from '../../settings.ts';
import { type Entry, openStore } from '../../store/index.ts';
import { joinCore } from '../core.ts';
import { Faults, importFarm } from '../farm/farmKept.ts';
import { readLines } from '../imports/importReadings.ts';
import { readText } from './readText.ts';

const MINUTE = 60_000;
const STEP = 5 * MINUTE;
/** Without a new reading there is little new to say: a look this often is enough. Ours. */
const QUIET_STEP = 30 * MINUTE;

export type Replayed = {
  readonly days: Record<string, Day[]>;
  readonly tasks: TaskEvent[];
  readonly alarms: AlarmEvent[];
  readonly frost: NightForecast[];
  readonly rejected: Record<string, number>;
};

const iso = (t: number) => new Date(t).toISOString();
const crossing = ({ crossesAt }: Pick<Forecast, 'crossesAt'>) => ({
  crossesAt: crossesAt === null ? null : iso(crossesAt),
});

async function readSorted(file: string, rejected: Map<string, number>) {
  const readings: (RawReading & { t: number })[] = [];
  for await (const { reading } of readLines(file)) {
    if (reading && reading.t !== null) readings.push({ ...reading, t: reading.t });
    else rejected.set('unreadable', (rejected.get('unreadable') ?? 0) + 1);
  }
  // Stable: readings of one instant stay in the order of the file.
  return readings.sort((a, b) => a.t - b.t);
}

/**
 * `dewpost replay`: readings of a file through the real intake, store and rules, under a clock that
 * follows them.
 * @param file where its store is kept, for those who look at it afterwards
 */
export async function replay(settings: Settings<'replay'>, file = ':memory:'): Promise<Replayed> {
  const log = pino({ level: 'warn' }, pino.destination(2));
  const rejected = new Map<string, number>();
  const readings = await readSorted(settings.readings, rejected);
  const first = readings[0];
  const last = readings.at(-1);
  if (!first || !last)
    throw new Faults([
      `Expected at least one reading in ${settings.readings}, got none that can be read`,
    ]);
  const store = openStore(file);
  const clock = steppedClock(settings.from ?? first.t);
  importFarm(store, readText(settings.farm), clock.now());
  if (settings.limits !== undefined) importFarm(store, readText(settings.limits), clock.now());

  let crossed = false;
  const core = joinCore({
    store,
    clock,
    log,
    onCrossing: () => {
      crossed = true;
    },
  });
  const from = settings.from ?? first.t;
  const to = settings.to ?? last.t;
  let next = 0;
  while (next < readings.length && (readings[next]?.t ?? 0) < from) next++;

  /** Everything read at one instant, as one delivery. */
  const deliver = (): number => {
    const t = readings[next]?.t ?? 0;
    const batch: RawReading[] = [];
    for (; readings[next]?.t === t; next++) batch.push(readings[next] as RawReading);
    clock.set(t);
    core.intake.receiveReadings(batch, t, (error) => {
      if (error) throw error;
    });
    core.intake.flush();
    return t;
  };

  let looked = Number.NEGATIVE_INFINITY;
  for (let tick = Math.ceil(from / STEP) * STEP; tick <= to; tick += STEP) {
    let fresh = false;
    while (next < readings.length && (readings[next]?.t ?? 0) <= tick) {
      deliver();
      fresh = true;
      if (!crossed) continue;
      crossed = false;
      core.look();
    }
    clock.set(tick);
    if (!fresh && tick - looked < QUIET_STEP) continue;
    core.look();
    looked = tick;
  }
  core.snapshots.fold();

  const now = clock.now();
  const firstDay = core.calendar().dayOf(from);
  const lastDay = core.calendar().dayOf(Math.min(to, last.t));
  // Whole days: what the file does not hold of the last one is not known.
  const dayOver = core.calendar().bounds(lastDay).ends;
  const days = Object.fromEntries(
    core
      .farm()
      .places.map(({ id }) => [id, core.snapshots.days.between(id, firstDay, lastDay, dayOver)]),
  );
  for (const { reason, count } of store.refusals.since(0))
    rejected.set(reason, (rejected.get(reason) ?? 0) + count);
  const result: Replayed = {
    days,
    tasks: store.journal.between('task', 0, now + 1).map(taskEvent),
    alarms: alarmEvents(store.alarms.between(0, now + 1)),
    frost: store.forecasts.between('0000-00-00', '9999-99-99').map((body) => {
      const night: Omit<Forecast, 'fan'> = JSON.parse(body);
      return {
        ...night,
        ...crossing(night),
        issuedAt: iso(night.issuedAt),
        limits: night.limits.map((limit) => ({ ...limit, ...crossing(limit) })),
        sources: night.sources.map((one) => ({ ...one, issuedAt: iso(one.issuedAt) })),
      };
    }),
    rejected: Object.fromEntries(rejected),
  };
  core.close();
  return result;
}

function taskEvent({ t, place, body }: Entry): TaskEvent {
  const { id, kind, event } = body as Pick<TaskEvent, 'id' | 'kind' | 'event'>;
  return { t: iso(t), id, kind, place: place ?? '', event };
}

function alarmEvents(
  rows: readonly { since: number; clearedAt: number | null; place: string; kind: string }[],
): AlarmEvent[] {
  return rows
    .flatMap(({ since, clearedAt, place, kind }) => [
      { t: since, place, kind, event: 'raised' as const },
      ...(clearedAt === null ? [] : [{ t: clearedAt, place, kind, event: 'cleared' as const }]),
    ])
    .sort((a, b) => a.t - b.t)
    .map((event) => ({ ...event, t: iso(event.t) }) as AlarmEvent);
}
