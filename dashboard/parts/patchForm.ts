import type { PatchTerms } from '../../hub/contract/index.ts';
import { type Kept, keptOf, typedOf } from '../typed.ts';

// The figures of a patch as a form has them: text, percents and dates.

export type FigureField = {
  readonly key: Exclude<
    keyof PatchTerms,
    'bearing' | 'lastPicking' | 'leavesFlatAndRed' | 'insists'
  >;
  readonly unit: 'money' | 'minutes' | 'percent' | 'units';
  /** What it is turned from where people read other units. */
  readonly kept?: Kept;
  readonly max: number;
};

export const figureFields: readonly FigureField[] = [
  { key: 'price', unit: 'money', kept: '/kg', max: 10_000 },
  { key: 'minutesPerKg', unit: 'minutes', kept: '/kg', max: 600 },
  { key: 'minutesPerPicking', unit: 'minutes', max: 6000 },
  { key: 'perDay', unit: 'money', max: 10_000 },
  { key: 'rotWet', unit: 'percent', max: 100 },
  { key: 'rotDry', unit: 'percent', max: 100 },
  { key: 'cleanRotWet', unit: 'percent', max: 100 },
  { key: 'cleanRotDry', unit: 'percent', max: 100 },
  { key: 'cleanMinutes', unit: 'minutes', max: 6000 },
  { key: 'cutMinutes', unit: 'minutes', max: 6000 },
  { key: 'hygiene', unit: 'money', max: 1_000_000 },
  { key: 'nextYear', unit: 'money', max: 10_000_000 },
  { key: 'lostShare', unit: 'percent', max: 100 },
  { key: 'flowerUnits', unit: 'units', kept: '°C d', max: 2000 },
];

export type Texts = Readonly<Record<FigureField['key'], string>>;

const digits = (value: number) => String(Number(value.toPrecision(12)));

/** Figures told so far, as the form shows them: percents for shares. */
export const textsOf = (terms: PatchTerms): Texts =>
  Object.fromEntries(
    figureFields.map(({ key, unit, kept }) => {
      const value = terms[key];
      if (kept !== undefined) return [key, typedOf(value, kept)];
      return [key, value === undefined ? '' : digits(unit === 'percent' ? 100 * value : value)];
    }),
  ) as Texts;

/** The figures of the form; an empty field is left out, so that the farm file or a usual figure speaks. */
export const figuresIn = (texts: Texts): PatchTerms =>
  Object.fromEntries(
    figureFields.flatMap(({ key, unit, kept }) => {
      const text = texts[key].trim();
      if (text === '') return [];
      if (kept !== undefined) return [[key, keptOf(text, kept) ?? Number.NaN]];
      const value = Number(text);
      return [[key, unit === 'percent' ? value / 100 : value]];
    }),
  );
