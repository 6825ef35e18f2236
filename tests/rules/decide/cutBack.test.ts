import { expect, test } from 'vitest';
import { readMethods } from '../../../hub/methods/readMethods.ts';
import {
  evidenceLabels,
  inputLabels,
  missingLabels,
  title,
  why,
} from '../../../hub/words/index.ts';
import { decide, type PatchNow, type PlaceNow } from '../../../rules/decide/index.ts';
import { celsius } from '../../../rules/units.ts';
import { at, pastNights, patch, snapshot, spot } from './makeSnapshot.ts';

const noon = at('2025-10-15T12:00');
const fruit = {
  cohorts: [{ mass: 6, units: 18 }],
  units: Array(22).fill(6),
  killed: Array(22).fill(0.02),
  ...{ rotWet: 0.1, rotDry: 0.02, wetChance: 0.3, margin: 6, perPicking: 12, perDay: 1 },
};
const known: PatchNow = {
  ...{ missing: [], fruit, damage: celsius(-2.2), cohortDamage: [-2.2], autumn: true, through: 1 },
  clean: { rotWet: 0.1, rotDry: 0.02, cost: 16 },
  cut: { hygiene: 25, cost: 18, nextYear: 400, lostShare: 0.05 },
  ...{ cleanMinutes: 60, cutMinutes: 120, may: null },
  mayInputs: [{ what: 'day-length', value: 11, unit: 'h' }],
};
const decided = (patchNow: PatchNow | null, wish: Partial<PlaceNow> = {}) =>
  decide(snapshot(noon, { places: [patch({ cover: null, patch: patchNow, ...wish })] })).decisions;
const one = (patchNow: PatchNow, wish: Partial<PlaceNow> = {}) => {
  const [found] = decided(patchNow, wish).filter(({ kind }) => kind === 'cut-back');
  if (found === undefined) throw new Error('Expected a decision, got none');
  return found;
};
const emptied = { ...fruit, cohorts: [] };

test('a place nobody told anything of is not asked about', () => {
  expect(decided(null).some(({ kind }) => kind === 'cut-back')).toBe(false);
});

test('without a count, a price or past years nobody can say', () => {
  const found = one({ ...known, fruit: null, missing: ['fruit-count', 'frost-years'] });
  expect(found).toMatchObject({ verdict: 'unknown', missing: ['fruit-count', 'frost-years'] });
});

test('while picking on is worth it nothing is cleared', () => {
  expect(one(known)).toMatchObject({ verdict: 'leave', subject: 'clear-out' });
});

test('when no picking is worth its cost, the patch is cleared out and its green leaves are kept', () => {
  const found = one({ ...known, fruit: emptied });
  expect(found).toMatchObject({ verdict: 'act', subject: 'clear-out', minutes: 60 });
  expect(title({ ...found, place: 'South Patch' })).toBe('Clear out South Patch');
  expect(why('cut-back', found.because)).toBe(
    'No further picking is worth its cost. Take out runners, dead and spotted leaves and rotten fruit; keep the green leaves.',
  );
});

test('from midwinter to midsummer an empty patch is left to grow', () => {
  expect(one({ ...known, fruit: emptied, autumn: false }).verdict).toBe('leave');
});

test('clearing out that makes less fruit rot is asked for when it brings more than it costs', () => {
  const clean = { rotWet: 0.01, rotDry: 0.01, cost: 1 };
  expect(one({ ...known, clean })).toMatchObject({ verdict: 'act', subject: 'clear-out' });
});

test('cutting back is asked for only where it may be, and only where it is worth it', () => {
  // Method sheet 8.3: once dormant and picked out 25 - 18 = +7.
  const cut = { ...known.cut, lostShare: 0 };
  const dormant = one({ ...known, fruit: emptied, cut, may: 'dormant' });
  expect(dormant).toMatchObject({ verdict: 'act', subject: null, minutes: 120 });
  if (dormant.verdict === 'act') expect(dormant.saves.money).toBeCloseTo(7, 9);
  expect(why('cut-back', dormant.because)).toBe(
    'The plants are dormant. Cutting back brings about 7.',
  );
  expect(one({ ...known, fruit: emptied, cut }).subject).toBe('clear-out'); // green: never asked for
  const poor = { ...cut, hygiene: 10 };
  expect(one({ ...known, fruit: emptied, cut: poor, may: 'dormant' }).subject).toBe('clear-out');
});

test('what the grower insists on is asked for, whatever it is worth, and not argued with', () => {
  const found = one({ ...known, may: 'grower' });
  expect(found).toMatchObject({ verdict: 'act', subject: null });
  expect(why('cut-back', found.because)).toContain('You want it cut; that is on record.');
});

test('tonight’s forecast for the patch speaks for the first night', () => {
  const cold = spot(noon, { temperature: -3, nights: pastNights(20, { drop: 30, fall: 30 }) });
  const warm = one({ ...known, fruit: { ...fruit, perDay: 0 } }, { spots: [] });
  const tonight = one({ ...known, fruit: { ...fruit, perDay: 0 } }, { spots: [cold] });
  const gain = (found: typeof warm) =>
    Number(found.because.find(({ what }) => what === 'still-to-gain')?.value);
  expect(gain(tonight)).toBeLessThan(gain(warm));
});

test('every term has its words, every number put in a label, every formula its source', () => {
  const methods = new Map(
    readMethods(new URL('../../..', import.meta.url).pathname).map((method) => [
      method.name,
      method,
    ]),
  );
  for (const may of [null, 'dormant', 'renovation', 'grower'] as const) {
    const { because } = one({ ...known, may });
    for (const { what, method, inputs = [], limit, limitFrom, source } of because) {
      expect(evidenceLabels, what).toHaveProperty(what);
      if (method === null) expect(source).toBe('entered by the grower');
      else expect(methods.get(method ?? '')?.sources.length, method ?? '').toBeGreaterThan(0);
      for (const input of inputs) expect(inputLabels, input.what).toHaveProperty(input.what);
      expect(limitFrom === null).toBe(limit === null);
    }
  }
  const terms = [
    'fruit-count',
    'fresh-fruit-count',
    'price',
    'climate-of-the-place',
    'frost-years',
  ];
  for (const term of [...terms, 'wet-days', 'station-record', 'more-years'])
    expect(missingLabels).toHaveProperty(term);
});
