import type { SeasonReview } from '../contract/index.ts';
import { csv } from '../record/index.ts';

type Row = readonly [
  part: string,
  what: string,
  measure: string,
  value: number | null,
  unit: string,
];

/** A review as a table (RFC 4180): one figure a row; what is not known is empty. */
export function reviewCsv(review: SeasonReview): string {
  const { all, kinds, lost, written, money } = review;
  const asked = (what: string, one: Omit<typeof all, 'putOff'>): Row[] => [
    ...(['asked', 'done', 'late', 'no', 'lapsed', 'open'] as const).map(
      (measure): Row => ['tasks', what, measure, one[measure], ''],
    ),
    ['tasks', what, 'minutes_asked', one.minutesAsked, 'min'],
    ['tasks', what, 'minutes_done', one.minutesDone, 'min'],
    ['tasks', what, 'spared_at_least', one.spared?.low ?? null, money],
    ['tasks', what, 'spared_at_most', one.spared?.high ?? null, money],
    ['tasks', what, 'done_without_money', one.unvalued, ''],
  ];
  const rows: Row[] = [
    ...asked('all', all),
    ['tasks', 'all', 'put_off', all.putOff, ''],
    ...kinds.flatMap((one) => asked(one.kind, one)),
    ...lost.rows.flatMap(({ placeName, name, looked, ...one }): Row[] => {
      const what = `${placeName}: ${name}, ${looked}`;
      return [
        ['losses', what, 'entries', one.entries, ''],
        ['losses', what, 'weight', one.kg, 'kg'],
        ['losses', what, 'worth', one.money, money],
      ];
    }),
    ...review.forecasts.flatMap(({ name, spot, method, ...one }): Row[] => {
      const what = `${name}, ${spot}: ${method}`;
      return [
        ['forecasts', what, 'nights', one.nights, ''],
        ['forecasts', what, 'nights_below', one.below, ''],
        ['forecasts', what, 'without_warning', one.misses, ''],
        ['forecasts', what, 'warned_in_vain', one.falseAlarms, ''],
        ['forecasts', what, 'off_by', one.error, 'K'],
      ];
    }),
    ...Object.entries(written).flatMap(([what, one]): Row[] => [
      ['minutes_written', what, 'minutes', one.minutes, 'min'],
      ['minutes_written', what, 'without_minutes', one.without, ''],
    ]),
    ...review.alarms.flatMap(({ kind, ...one }): Row[] => [
      ['alarms', kind, 'raised', one.raised, ''],
      ['alarms', kind, 'seen', one.seen, ''],
      ['alarms', kind, 'never_seen', one.neverSeen, ''],
      ['alarms', kind, 'median_to_seen', one.minutesToSeen, 'min'],
      ['alarms', kind, 'slowest_to_seen', one.slowest, 'min'],
      ['alarms', kind, 'false', one.falseOnes, ''],
    ]),
    ...review.unread.flatMap(({ name, days, hours }): Row[] => [
      ['without_readings', name, 'days_looked_at', days, 'd'],
      ['without_readings', name, 'hours', hours, 'h'],
    ]),
  ];
  return csv(
    ['from', 'to', 'part', 'what', 'measure', 'value', 'unit'],
    [...rows.map((row) => [review.from, review.to, ...row])],
  );
}
