import { expect, test } from 'vitest';
import type { PlaceDay, PlaceHour } from '../../../rules/days/index.ts';
import { decide, type PlaceNow, TONIGHT, type TraysNow } from '../../../rules/decide/index.ts';
import { at, basil, outside, pastNights, snapshot, spot, tunnel } from './makeSnapshot.ts';

// 45° N, 0° E on 21 June: sunset 19:50 UTC; usually shut an hour before it.
const evening = at('2025-06-21T17:00');

const hour = (temperature: number): PlaceHour => ({
  ...{ known: 1, inBand: 0, hot: 0, cold: 0, wet: 0, wetInBand: 0, hurt: 0 },
  ...{ temperature, humidity: 90, open: false },
});
const days = (damp: number): PlaceDay[] =>
  Array.from({ length: 7 }, (_, i) => ({
    day: `2025-06-${14 + i}`,
    hours: Array.from({ length: 24 }, () => hour(18)),
    ...{ lowest: 18, highest: 18 },
    disease: { hours: [damp, damp], risk: { least: 'watch', most: 'watch' }, of: ['grey-mould'] },
  }));

function ask({ damp = 9, low = 18, wish = {} as Partial<PlaceNow>, trays = 40 } = {}) {
  const place = tunnel({ spots: [spot(evening, { temperature: 20, humidity: 80 })], ...wish });
  const air = outside(
    spot(evening, { spot: 'air', temperature: low, humidity: 60, nights: pastNights(12) }),
  );
  const share = {
    ...{ mean: 0.002, low: 0.0005, high: 0.006 },
    from: 'guess',
    batches: 0,
  } as const;
  const tray: TraysNow = {
    standing: [
      {
        ...{ batch: 'b1', crop: 'basil', cropName: 'Basil', place: place.id, trays, daysLeft: 9 },
        ...{ daysFrom: 'told', mouldy: false, movedAt: null, left: [], minutes: 40, askedTo: null },
      },
    ],
    places: [],
    crops: [
      {
        ...{ crop: 'basil', places: [], outside: [], share },
        ...{ past: [{ place: place.id, days: days(damp) }], pastOutside: days(1) },
      },
    ],
  };
  const { decisions, failures } = decide(
    snapshot(evening, {
      ...{ places: [place, air], crops: [{ ...basil, chill: null }] },
      ...(trays > 0 ? { trays: tray } : {}),
    }),
  );
  expect(failures).toEqual([]);
  const said = decisions.find(({ kind, subject }) => kind === 'open-up' && subject === TONIGHT);
  if (said === undefined) throw new Error('Expected a decision on the night, got none');
  return said;
}

test('damp nights behind shut vents ask to leave it open, and it says what that spares', () => {
  const said = ask();
  expect(said.verdict).toBe('act');
  // 40 x 0.35 kg x 30 = 420; 9 - 1 hours fewer at 0.2 % each: 6.72; no frost at 18 °C and more
  expect(said.verdict === 'act' && said.saves.money).toBeCloseTo(6.72, 1);
});

test('it is no work where the vents are open, and spares two walks where somebody usually shuts', () => {
  const airing = { opens: at('2025-06-21T08:30'), shuts: at('2025-06-21T18:50') };
  const said = ask({ wish: { opened: true, asUsual: true, airing } });
  if (said.verdict !== 'act') throw new Error('Expected act');
  expect(said.minutes).toBe(0);
  expect(said.doBy).toBe(airing.shuts);
  expect(said.saves.money).toBeCloseTo(6.72 + (10 / 60) * 16, 1);
});

test.for([
  ['nights that are as dry shut', { damp: 1 }],
  ['a night that may freeze', { low: 4 }],
  ['a house in which nothing is known to stand', { trays: 0 }],
  ['somebody having said that it stays open', { wish: { opened: true, staysOpen: true } }],
] as const)('with %s nobody is asked to leave it open', ([, wish]) => {
  expect(ask(wish).verdict).toBe('leave');
});
