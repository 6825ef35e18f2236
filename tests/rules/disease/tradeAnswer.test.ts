import { expect, test } from 'vitest';
import {
  pickingBlocked,
  type Situation,
  SPRAY_CAUTIONS,
  tradeAnswer,
  wetMornings,
} from '../../../rules/disease/index.ts';
import { instant } from '../../../rules/units.ts';
import { at } from '../wetness/series.ts';

const DAY = 24; // h

test('picking waits for the interval that was entered, and for one to be entered', () => {
  const now = instant(at(7 * DAY));
  const treated = (harvestInterval: number | null) => [{ at: at(0), harvestInterval }];
  expect(pickingBlocked(treated(7), now)).toBe('no');
  expect(pickingBlocked(treated(7.01), now)).toBe('yes');
  expect(pickingBlocked(treated(null), now)).toBe('unknown');
  expect(pickingBlocked([...treated(null), ...treated(8)], now)).toBe('yes');
  expect(pickingBlocked([], now)).toBe('no');
  expect(() => pickingBlocked(treated(366), now)).toThrow(
    'Expected harvest interval from 0 to 365 days',
  );
  expect(pickingBlocked(treated(365), now)).toBe('yes');
});

test('three wet mornings of five ask for thinning; mornings not known leave it open', () => {
  expect(wetMornings([true, true, false, true, false])).toBe(true);
  expect(wetMornings([true, true, false, false, false])).toBe(false);
  expect(wetMornings([true, true, null, false, false])).toBeNull();
  expect(wetMornings([true, true, true, false, false, false, false])).toBe(false);
  expect(wetMornings([false, false, false])).toBe(false);
  expect(wetMornings([])).toBeNull();
});

// Common practice, no source: the windows of each answer, in hours from now.
const windows: Readonly<Record<Situation, readonly (readonly [string, number, number | null])[]>> =
  {
    'wet-and-outside-drier': [
      ['vent-now', 0, 0.5],
      ['check-again', 0.5, 1],
    ],
    'wet-and-outside-not-drier': [
      ['move-air', 0, 24],
      ['thin', 0, 24],
      ['stop-watering-from-above', 0, 24],
      ['do-not-open', 0, 24],
    ],
    'sporulation-night-infected-basil': [
      ['bag-infected-where-they-stand', 0, 12],
      ['fan-at-night', 0, 24],
    ],
    'basil-infection': [
      ['look-under-leaves', 120, 240],
      ['cut-and-sell-sound-leaf-first', 0, 120],
      ['clean-trays-to-airiest-place', 0, 24],
    ],
    'strawberry-flower-infection': [
      ['strip-old-flowers-and-rotten-fruit', 0, 48],
      ['open-the-canopy', 0, 48],
      ['watch-berries-set-this-week', 672, 840],
    ],
    'ripe-fruit-and-wet-ahead': [
      ['pick-now', 0, 12],
      ['cool-at-once', 0, 12],
      ['sell-first-grade-hard', 0, 48],
    ],
    'salad-downy-mildew': [
      ['cut-oldest-bed-first', 0, 72],
      ['no-watering-at-night', 0, 168],
      ['no-replanting-next-to-it', 0, null],
      ['look-under-leaves', 120, 336],
    ],
    'grey-mould-week': [
      ['clear-dead-petals-and-leaves', 0, 48],
      ['widen-spacing', 0, 72],
      ['leave-vents-cracked-if-night-allows', 0, 168],
    ],
    'tray-damp': [
      ['uncover-trays', 0, 2],
      ['thin-the-stack', 0, 12],
      ['water-from-below', 0, 24],
      ['fan-across-trays', 0, 24],
      ['mouldy-tray-out-whole', 0, 2],
    ],
    'canopy-wet-mornings': [['cut-back-on-a-drying-morning', 0, 72]],
    'chill-ahead': [
      ['cover-or-move-before-dusk', 0, 12],
      ['uncover-when-above-the-floor', 12, 24],
    ],
    'class-unknown': [['look-by-eye', 0, 24]],
  };

test.for(Object.entries(windows))('%s: what the trade does, and by when', ([situation, wanted]) => {
  const { steps, cautions } = tradeAnswer(situation as Situation);
  expect(steps.map(({ does, from, until }) => [does, from, until])).toEqual(wanted);
  // Whatever takes plants away says how to do so cleanly; food with mould is never trimmed.
  if (steps.some(({ kind }) => kind === 'clear-out'))
    expect(cautions).toContain('bag-at-the-plant');
  if (steps.some(({ kind }) => kind === 'pick'))
    expect(cautions).toContain('mould-is-never-trimmed-for-sale');
  expect(situation === 'chill-ahead' || cautions.includes('weather-suited-infection-only')).toBe(
    true,
  );
});

test('where a treatment could be meant, label and licence are named, and no product is', () => {
  for (const situation of [
    'basil-infection',
    'strawberry-flower-infection',
    'salad-downy-mildew',
    'grey-mould-week',
  ] as const) {
    expect(tradeAnswer(situation).cautions).toEqual(expect.arrayContaining([...SPRAY_CAUTIONS]));
  }
  expect(SPRAY_CAUTIONS).toContain('label-is-the-law');
  expect(() => tradeAnswer('hail' as Situation)).toThrow('Expected one of wet-and-outside-drier');
});
