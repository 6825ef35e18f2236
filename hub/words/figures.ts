import { shownIn, shownUnit, units } from './units.ts';

// Figures as a language says them, in the units of the farm. U+2212 for minus and a hard space before
// a unit, so that a figure never breaks across two lines.

/** What figures need to know of a language. */
export type Manner = {
  /** For Intl: names of days and months, money. */
  readonly locale: string;
  /** Between whole and tenths. */
  readonly decimal: '.' | ',';
  /** Said for a null, never a zero. */
  readonly notKnown: string;
};

export const HARD = '\u00a0';

export function figuresIn({ locale, decimal, notKnown }: Manner) {
  const digitsOf = (text: string) => (decimal === '.' ? text : text.replace('.', decimal));

  /** `-1.25` -> `−1.3`; null is said in words, never as a zero. */
  function number(value: number | null, digits = 1): string {
    if (value === null || !Number.isFinite(value)) return notKnown;
    const text = digitsOf(Math.abs(value).toFixed(digits));
    return value < 0 && Number(Math.abs(value).toFixed(digits)) !== 0 ? `−${text}` : text;
  }
  const plain = (value: number | null, unit: string, digits: number) =>
    value === null || unit === ''
      ? number(value, digits)
      : `${number(value, digits)}${HARD}${unit.replaceAll(' ', HARD)}`;

  /** A kept figure in the unit shown, without its name. */
  const bare = (unit: string) => (value: number | null, digits?: number) =>
    number(value === null ? null : shownIn(value, unit), digits);

  /** A kept figure, with the name of the unit shown: 3 of `°C` as `3.0 °C` or `37.4 °F`. */
  const withUnit = (value: number | null, unit: string, digits?: number): string =>
    plain(value === null ? null : shownIn(value, unit), shownUnit(unit), digits ?? 1);

  /** With its sign, as a correction is said: `+0.2`, `−2`. */
  const signed = (value: number) =>
    `${value > 0 ? '+' : ''}${number(value, Number.isInteger(value) ? 0 : 1)}`;

  /** What a difference of temperatures is called: as the temperatures themselves. */
  const degree = () => (units().temperature === 'F' ? '°F' : '°C');
  const apart = bare('K');

  /** At most one decimal, none where it would be zero, and a true minus sign. */
  function figure(value: number | string | null): string {
    if (typeof value !== 'number') return value ?? notKnown;
    const rounded = Math.abs(value) >= 100 ? Math.round(value) : Math.round(value * 10) / 10;
    return digitsOf(String(rounded === 0 ? 0 : rounded)).replace('-', '−');
  }
  const figureIn = (unit: string, name: () => string) => (value: number | string | null) =>
    `${figure(typeof value === 'number' ? shownIn(value, unit) : value)}${HARD}${name()}`;

  /** Weights on the scales of a garden: `4 kg`, `1.25 kg`. */
  const weight = (kg: number) => {
    const shown = Math.round(shownIn(kg, 'kg') * 100) / 100;
    return `${digitsOf(String(shown))}${HARD}${shownUnit('kg')}`;
  };

  return {
    locale,
    notKnown,
    number,
    withUnit,
    signed,
    /** `3.0 °C`; `degrees` is the same without the unit. */
    temperature: (value: number | null) => withUnit(value, '°C'),
    degrees: bare('°C'),
    wholeDegrees: (value: number | null) => withUnit(value, '°C', 0),
    degree,
    /** How much warmer or colder, or how far off: `0.5 °C`, `0.9 °F`. */
    difference: (value: number | null, digits?: number) =>
      value === null ? notKnown : `${apart(value, digits)}${HARD}${degree()}`,
    signedDifference: (value: number) => `${signed(shownIn(value, 'K'))}${HARD}${degree()}`,
    apart,
    /** Something for each degree that it is warmer. */
    perDegree: (value: number) => shownIn(value, '/K'),
    /** Heat units (°C d), without their unit. */
    heat: bare('°C d'),
    humidity: (value: number | null) => withUnit(value, '%', 0),
    figure,
    /** The same of a fact: a temperature, a difference, heat (°C h), a weight. */
    figureDegrees: figureIn('°C', degree),
    figureApart: figureIn('K', degree),
    figureHeat: figureIn('°C h', () => `${degree()}${HARD}h`),
    figureWeight: figureIn('kg', () => shownUnit('kg')),
    weight,
    /** `3 kg`, `3.4 kg`: a weight to a tenth. */
    kilograms: (kg: number) => {
      const shown = shownIn(kg, 'kg');
      return plain(shown, shownUnit('kg'), Number.isInteger(Number(shown.toFixed(6))) ? 0 : 1);
    },
    bareWeight: bare('kg'),
    /** Grams, or ounces; and what they are called. */
    bareGrams: bare('gram'),
    gramUnit: () => shownUnit('gram'),
    /** Money or minutes for a kilogram, for a pound where that is the unit. */
    perWeight: (value: number) => shownIn(value, '/kg'),
    weightUnit: () => shownUnit('kg'),
    inPounds: () => units().weight === 'lb',
  };
}
