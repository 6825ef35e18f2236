import { expect, test } from 'vitest';
import {
  caution,
  evidenceLabels,
  inputLabels,
  missingLabel,
  title,
  why,
} from '../../../hub/words/en.ts';
import { decide, type PlaceNow, type Snapshot } from '../../../rules/decide/index.ts';
import { HOUR, instant, minutes } from '../../../rules/units.ts';
import { at, type Course, outside, patch, snapshot, spot, tunnel } from './makeSnapshot.ts';

// At 45° N on 21 June the sun rises about 4:14 and sets 19:50: it is highest about 12:02, so the morning
// ends about 10:02 and the evening begins about 17:50. The limit told is 20 %.
const SEVEN = at('2025-06-21T07:00');

/** Soil that dries evenly, by so many percentage points a day, and is at `value` now. */
const drying =
  (value: number, perDay: number): Course =>
  (ago) =>
    value + (perDay * ago) / 1440;

type Wish = {
  readonly now?: number;
  readonly soil?: Course;
  readonly silent?: number;
  readonly place?: Partial<PlaceNow>;
  readonly more?: Partial<Snapshot>;
};
function watering({ now = SEVEN, soil = drying(18, 4), silent = 0, ...wish }: Wish = {}) {
  const house = tunnel({
    ...{ crop: 'basil', trays: 30, water: { below: 20, minutes: null } },
    spots: [spot(now, { 'soil-moisture': soil, every: 30, silent })],
    ...wish.place,
  });
  const { decisions } = decide(snapshot(now, { places: [house, outside()], ...wish.more }));
  const found = decisions.find(({ kind }) => kind === 'water');
  if (found === undefined) throw new Error('Expected a decision on watering, got none');
  return found;
}
const says = ({ because }: ReturnType<typeof watering>) =>
  why('water', because).replaceAll('\u00a0', ' ');
const byOf = (decision: ReturnType<typeof watering>) => {
  if (decision.verdict !== 'act' || decision.doBy === null)
    throw new Error(`Expected a deadline, got ${decision.verdict}`);
  return (decision.doBy - at('2025-06-21T00:00')) / HOUR;
};

test('soil below its limit in the morning is watered before the heat', () => {
  const asked = watering();
  expect(asked).toMatchObject({ verdict: 'act', place: 'long-house', minutes: 15, from: null });
  expect(byOf(asked)).toBeCloseTo(10.03, 1);
  expect(says(asked)).toBe(
    'Its soil probe says 18 %; your limit is 20 %. Do it before the heat of the day.',
  );
  expect(title({ kind: 'water', place: 'Long House', subject: null, because: [] })).toBe(
    'Water Long House',
  );
  expect(caution('water')).toContain('feel the soil');
  for (const { what, inputs = [] } of asked.because) {
    expect(evidenceLabels).toHaveProperty(what);
    for (const input of inputs) expect(inputLabels).toHaveProperty(input.what);
  }
});

test.for([
  // By hand: 21 % drying by 6 a day is at 20 % after four hours, at 11:00; the morning ends before.
  ['07:00', drying(21, 6), 'act', 10.03, null],
  // 20.5 % by 6 a day: two hours, 9:00.
  ['07:00', drying(20.5, 6), 'act', 9, null],
  // 24 % by 6 a day is there after sixteen hours: tomorrow morning is time enough.
  ['07:00', drying(24, 6), 'leave', null, null],
  ['07:00', drying(30, 0), 'leave', null, null],
  // Past the morning what is not dry yet waits; what is dry is watered before the evening.
  ['13:00', drying(20.5, 6), 'leave', null, null],
  ['13:00', drying(19, 6), 'act', 17.83, null],
  // In the evening and at night leaves would stay wet: the next morning, from sunrise on.
  ['20:30', drying(19, 6), 'act', 34.03, 28.2],
  ['02:00', drying(19, 6), 'act', 10.03, 4.2],
] as const)('at %s the answer to %o is %s', ([time, soil, verdict, doBy, from]) => {
  const asked = watering({ now: at(`2025-06-21T${time}`), soil });
  expect(asked.verdict).toBe(verdict);
  if (doBy !== null) expect(byOf(asked)).toBeCloseTo(doBy, 1);
  if (asked.verdict !== 'act' || from === null) return;
  expect(((asked.from ?? 0) - at('2025-06-21T00:00')) / HOUR).toBeCloseTo(from, 1);
});

test('once asked it stays asked until the soil is clearly wetter', () => {
  const more = { standing: ['water:long-house'] };
  expect(watering({ soil: drying(21.5, 0), more }).verdict).toBe('act');
  expect(watering({ soil: drying(22.5, 0), more }).verdict).toBe('leave');
  const noon = { now: at('2025-06-21T12:00'), soil: drying(20.5, 6) };
  expect(watering(noon).verdict).toBe('leave');
  expect(watering({ ...noon, more }).verdict).toBe('act');
});

test('after a watering the pace is not known, and what was dry is not asked again', () => {
  const watered: Course = (ago) => (ago > 120 ? 17 : 31);
  const said = watering({ soil: watered });
  expect(said.verdict).toBe('leave');
  expect(said.because.map(({ what }) => what)).toEqual(['soil-moisture-now']);
});

test('without a soil reading of the last three hours nobody can say', () => {
  expect(watering({ silent: 170 }).verdict).toBe('act');
  for (const silent of [200, 3000]) {
    const asked = watering({ silent });
    expect(asked).toMatchObject({ verdict: 'unknown', missing: ['soil-moisture-here'] });
  }
  const none = watering({ place: { spots: [spot(SEVEN, { temperature: 20 })] } });
  expect(none).toMatchObject({ verdict: 'unknown', missing: ['soil-moisture-here'] });
  expect(missingLabel('soil-moisture-here')).toContain('soil moisture');
});

test('of two probes the drier speaks, and a place without a limit is never asked for', () => {
  const two = [30, 15].map((value, i) =>
    spot(SEVEN, { probe: `p${i}`, 'soil-moisture': drying(value, 1) }),
  );
  expect(watering({ place: { spots: two } }).because[0]?.value).toBe(15);
  const bare = decide(snapshot(SEVEN, { places: [tunnel({ spots: two })] })).decisions;
  expect(bare.some(({ kind }) => kind === 'water')).toBe(false);
});

test('in the open it waits for rain that is foretold; under film no rain falls', () => {
  const rain = (mm: number) => ({
    pushed: [
      {
        ...{ source: 'met', issuedAt: instant(SEVEN - HOUR), nights: [] },
        temperature: { t: [], value: [] },
        rain: { t: [3, 6].map((h) => instant(SEVEN + h * HOUR)), value: [0, mm] },
      },
    ],
  });
  const bed = (mm: number) => {
    const place = patch({
      ...{ cover: null, water: { below: 20, minutes: minutes(30) } },
      spots: [spot(SEVEN, { spot: 'air', 'soil-moisture': drying(18, 4) })],
    });
    const { decisions } = decide(snapshot(SEVEN, { places: [place], ...rain(mm) }));
    return decisions.find(({ kind }) => kind === 'water');
  };
  expect(bed(1)).toMatchObject({ verdict: 'act', minutes: 30 });
  expect(bed(9)?.verdict).toBe('leave');
  expect(why('water', bed(9)?.because ?? [])).toContain('foretold');
  expect(watering({ more: rain(9) }).verdict).toBe('act');
});

test('drier soil is never less asked for', () => {
  const order = { leave: 0, unknown: 1, act: 2 };
  for (const hour of [2, 7, 9, 13, 16, 19, 22]) {
    const now = at(`2025-06-21T${String(hour).padStart(2, '0')}:00`);
    let before = 2;
    for (let value = 15; value < 32; value += 0.5) {
      const { verdict } = watering({ now, soil: drying(value, 5) });
      expect(order[verdict]).toBeLessThanOrEqual(before);
      before = order[verdict];
    }
  }
});
