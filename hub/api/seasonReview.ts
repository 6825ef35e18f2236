import type { SeasonReview } from '../contract/index.ts';
import { addDays } from '../losses/index.ts';
import {
  alarmsSeen,
  askedAndAnswered,
  minutesWritten,
  seasonsBack,
  sparedBy,
} from '../review/index.ts';
import {
  alarmKindName,
  reviewKindName,
  reviewLooked,
  reviewNotes,
  reviewSentence,
  reviewSpanName,
} from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso, nameOf, rounded, roundedOrNull } from './present.ts';
import { scorecardOf } from './scorecard.ts';
import { shownLosses } from './shownLoss.ts';

const LONGEST = 3 * 365; // days, ours
const DAY_HOURS = 24;
const HOUR = 3_600_000; // ms

type Span = { readonly from: string; readonly to: string };

/** What was asked, answered, spared and lost from one day of the farm to another, both with it. */
export function seasonReview(
  parts: ApiParts,
  asked: { readonly from?: string | undefined; readonly to?: string | undefined },
): SeasonReview {
  const now = parts.clock.now();
  const calendar = parts.calendar();
  const { name, lat, money } = parts.farm().file.farm;
  const today = calendar.dayOf(now);
  const seasons = seasonsBack(today, lat);
  const to = asked.to ?? today;
  const from = asked.from ?? (asked.to === undefined ? (seasons[0]?.from ?? to) : addDays(to, -90));
  if (from > to) throw new Refused(400, `Expected from at or before to (${to}), got ${from}`);
  if (addDays(from, LONGEST) < to)
    throw new Refused(400, `Expected at most three years from from to to, got ${from} to ${to}`);
  const span = { from: calendar.bounds(from).begins, to: calendar.bounds(to).ends };

  const tasks = parts.tasks.openedBetween(span.from, span.to);
  const kinds = askedAndAnswered(tasks, calendar.dayOf);
  const sum = (of: (kind: (typeof kinds)[number]) => number) =>
    kinds.reduce((total, kind) => total + of(kind), 0);
  const done = tasks.filter(({ answer, state }) => state === 'ended' && answer === 'done');
  const all = {
    asked: tasks.length,
    done: sum((kind) => kind.done),
    late: sum((kind) => kind.late),
    no: sum((kind) => kind.no),
    lapsed: sum((kind) => kind.lapsed),
    open: sum((kind) => kind.open),
    minutesAsked: rounded(sum((kind) => kind.minutesAsked)),
    minutesDone: rounded(sum((kind) => kind.minutesDone)),
    spared: sparedShown(sparedBy(done, calendar.dayOf)),
    unvalued: sum((kind) => kind.unvalued),
    putOff: putOff(parts, span),
  };
  const lost = lostIn(parts, { from, to });
  return {
    asOf: iso(now),
    ...{ farm: name, from, to, money },
    spans: seasons.map((one) => ({ name: reviewSpanName(one), from: one.from, to: one.to })),
    sentence: reviewSentence({ from, to, all, lost, money }),
    all,
    kinds: kinds.map((one) => ({
      ...one,
      name: reviewKindName(one.kind),
      minutesAsked: rounded(one.minutesAsked),
      minutesDone: rounded(one.minutesDone),
      spared: sparedShown(one.spared),
    })),
    lost,
    forecasts: forecastsIn(parts, { from, to }),
    written: minutesWritten(parts.batches.all(), parts.picks.all(), span),
    alarms: alarmsSeen(parts.alarms.between(span.from, span.to).events).map((one) => ({
      ...one,
      name: alarmKindName(one.kind),
      minutesToSeen: roundedOrNull(one.minutesToSeen, 1),
      slowest: roundedOrNull(one.slowest, 1),
    })),
    unread: unreadIn(parts, { from, to }),
    notes: reviewNotes({ unvalued: all.unvalued, withoutMoney: lost.withoutMoney }),
  };
}

const sparedShown = (range: { low: number; high: number } | null) =>
  range && { low: rounded(range.low), high: rounded(range.high) };

const putOff = ({ store }: ApiParts, { from, to }: { from: number; to: number }) =>
  store.journal
    .between('task', from, to)
    .filter(({ body }) => (body as { event?: string }).event === 'later').length;

/** Losses that hold, and lots thrown out, by place, crop and what they looked like; the dearest first. */
function lostIn(parts: ApiParts, span: Span): SeasonReview['lost'] {
  const losses = shownLosses(parts, span).filter(({ state }) => state === 'holds');
  const groups = new Map<string, typeof losses>();
  for (const loss of losses) {
    const key = `${loss.place}\n${loss.crop}\n${loss.look}`;
    groups.set(key, [...(groups.get(key) ?? []), loss]);
  }
  const known = (of: 'kg' | 'money', all: typeof losses) =>
    all.flatMap((loss) => (loss[of] === null ? [] : [loss[of]]));
  const total = (values: readonly number[]) =>
    rounded(values.reduce((sum, value) => sum + value, 0));
  // A sum with an unknown in it is unknown.
  const whole = (of: 'kg' | 'money', all: typeof losses) =>
    known(of, all).length < all.length ? null : total(known(of, all));
  return {
    entries: losses.length,
    money: total(known('money', losses)),
    withoutMoney: losses.length - known('money', losses).length,
    kg: total(known('kg', losses)),
    withoutKg: losses.length - known('kg', losses).length,
    rows: [...groups.values()]
      .flatMap((own) => {
        const [first] = own;
        if (first === undefined) return [];
        const { place, placeName, crop, name, look } = first;
        return {
          ...{ place, placeName, crop, name, looked: reviewLooked(look), entries: own.length },
          ...{ kg: whole('kg', own), money: whole('money', own) },
        };
      })
      .sort((a, b) => (b.money ?? 0) - (a.money ?? 0) || b.entries - a.entries),
  };
}

const forecastsIn = (parts: ApiParts, span: Span): SeasonReview['forecasts'] =>
  parts.lastLook() === null
    ? []
    : scorecardOf(parts, span).spots.flatMap(({ place, name, spot, methods }) =>
        methods.map((one) => ({
          ...{ place, name, spot, method: one.method, nights: one.n, below: one.happened },
          ...{ misses: one.misses, falseAlarms: one.falseAlarms, error: one.error },
          words: one.words[0] ?? '',
        })),
      );

function unreadIn(parts: ApiParts, { from, to }: Span): SeasonReview['unread'] {
  const now = parts.clock.now();
  const calendar = parts.calendar();
  return parts.farm().places.map(({ id }) => {
    const days = parts.snapshots.days.between(id, from, to, now);
    const hours = days.reduce((sum, { unknownHours }) => sum + unknownHours, 0);
    // Today is not over, and a day of a clock change is not 24 h long.
    const of = days.reduce((sum, { day }) => {
      const { begins, ends } = calendar.bounds(day);
      return sum + Math.max(0, Math.min(ends, now) - begins) / HOUR;
    }, 0);
    const none = days.length === 0 || of < 1 / DAY_HOURS;
    return {
      ...{ place: id, name: nameOf(parts, id), days: days.length },
      hours: none ? null : rounded(hours, 1),
      share: none ? null : rounded(Math.min(1, hours / of), 4),
    };
  });
}
