import type { Evidence } from '../answer.ts';
import type { MovingSpares, PlaceDifference } from '../days/index.ts';
import { by, put, told } from './how.ts';
import { fact } from './say.ts';
import type { CropPlaces, TrayPlace, TraysStanding } from './snapshot.ts';
import { ENTERED, OURS, TOLD } from './sources.ts';

// What a move of trays rests on, fact by fact.

export const COMPARED =
  'paired day by day, Student 1908, on what days in a row are worth; the score is ours';
const HARM_GUESS = 'ours, from no source: 0.2 % of the crop for each harmful hour';
const HARM_OWN = 'share lost over harmful hours of own finished batches; an association';

/** What stands there and where it is to go. The place's id stands among the inputs. */
export const whatAndWhere = (stand: TraysStanding, to: TrayPlace): readonly Evidence[] => [
  fact('trays-of', stand.cropName, '', null, ENTERED, told),
  fact('trays-standing', stand.trays, '', null, ENTERED, told),
  fact(
    'move-to',
    to.name,
    '',
    null,
    COMPARED,
    by('moveTrays', put('place', to.id), put('from', stand.place)),
  ),
  ...(stand.batch === null ? [fact('trays-by-farm-file', 'yes', '', null, ENTERED, told)] : []),
];

/** How much better it was there, with its interval. */
export function betterThere(
  difference: PlaceDifference,
  from: string,
  to: string,
  clearly: number,
): readonly Evidence[] {
  const { score } = difference;
  if (score === null) return [];
  const how = by(
    'comparePlaces',
    put('from', from),
    put('place', to),
    put('days-compared', difference.days, ''),
    put('days-worth', score.worth, ''),
    put('days-left-out', difference.leftOut.length, ''),
  );
  const more = (what: string, value: number | undefined) =>
    value === undefined || Math.abs(value) < 0.5
      ? []
      : [fact(what, value, 'h', null, COMPARED, how)];
  return [
    fact('better-hours-a-day', score.mean, 'h', clearly, COMPARED, how, OURS),
    fact('better-at-least', score.low, 'h', 0, COMPARED, how, OURS),
    fact('better-at-most', score.high, 'h', null, COMPARED, how),
    ...more('band-hours-more', difference.inBand?.mean),
    ...more('hot-hours-fewer', negative(difference.hot?.mean)),
    ...more('cold-hours-fewer', negative(difference.cold?.mean)),
    ...more('wet-hours-fewer', negative(difference.wet?.mean)),
  ];
}

const negative = (value: number | undefined) => (value === undefined ? undefined : -value);

export const roomThere = (free: number, trays: number): Evidence =>
  fact(
    'room-there',
    free,
    '',
    trays,
    TOLD,
    by('trayRoom', put('free', free), put('trays', trays)),
    ENTERED,
  );

export const daysToGo = (stand: TraysStanding, days: number, least: number): Evidence =>
  fact(
    'days-to-ready',
    days,
    'd',
    least,
    stand.daysFrom === 'heat' ? HEAT : stand.daysFrom === 'told' ? TOLD : OURS,
    by('moveTrays', put('days', days, 'd'), put('days-from', stand.daysFrom)),
    OURS,
  );
const HEAT = 'heat units still to go, as this batch’s page tells';

/** The saving against the carrying, and how it was estimated. */
export const sparesAgainstCarrying = (
  spares: MovingSpares,
  stand: TraysStanding,
  { share }: CropPlaces,
  minutes: number,
): readonly Evidence[] => {
  const how = by(
    'movingSpares',
    put('trays', stand.trays),
    put('days', stand.daysLeft, 'd'),
    put('harmful-hours-fewer', spares.fewerHours, 'h'),
    put('lost-per-hour', 100 * share.mean, '%'),
    put('lost-per-hour-least', 100 * share.low, '%'),
    put('lost-per-hour-most', 100 * share.high, '%'),
    put('batches', share.batches),
    put('minutes', minutes, 'min'),
  );
  const from = stand.minutes === null ? 'guess' : 'told';
  const carrying = fact(
    'carrying-minutes',
    minutes,
    'min',
    null,
    from === 'told' ? TOLD : OURS,
    by('moveTrays', put('minutes', minutes, 'min'), put('minutes-from', from)),
  );
  const source = share.from === 'own' ? HARM_OWN : HARM_GUESS;
  return [
    carrying,
    fact('harmful-hours-fewer', spares.fewerHours, 'h', null, COMPARED, how),
    fact('moving-spares', spares.money, 'money', spares.cost, source, how, TOLD),
    fact('share-spared', 100 * spares.share, '%', null, source, how),
  ];
};
