import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { type Celsius, celsius } from '../units.ts';

const TOLERANCE = 3; // K between a display and an independent probe; common practice, no source
const ROUNDING = 1.7; // °F: a controller set in whole degrees, from 37 to 39 for 3 °C. Ours
const FAR_APART = 20; // degrees; below it both units can mean the same wish. Ours

/** °C of °F: (F - 32) / 1.8, by definition. */
export const fahrenheit = orUnknown(function fahrenheit(value: number): Celsius {
  expectRange('temperature', value, -460, 2000, '°F');
  return celsius((value - 32) / 1.8);
});

/** °F of °C. */
export const toFahrenheit = orUnknown(function toFahrenheit(value: number): number {
  expectRange('temperature', value, -273.15, 1100, '°C');
  return 1.8 * value + 32;
});

export type DisplayUnit = {
  /** What the number fits, or that it has to be asked: never convert without asking. */
  readonly unit: 'C' | 'F' | 'ask';
  /** Fits °F only, and as a set value drives the room below freezing. */
  readonly danger: boolean;
};

/**
 * Whether a number read off or typed into a controller is in °C or °F, by an independent probe's
 * median of the last hour, °C. 'F' is a question ("Is the display in °F?") and no conversion.
 *
 * Arithmetic by definition; the tolerance of 3 K is common practice, no source.
 * @throws RangeError for a number outside -100..300 or a median outside -60..80 °C
 */
export const displayUnit = orUnknown(function displayUnit(
  shown: number,
  median: number,
): DisplayUnit {
  expectRange('displayed number', shown, -100, 300, '');
  expectRange('probe temperature', median, -60, 80, '°C');
  const fitsC = Math.abs(shown - median) <= TOLERANCE;
  const fitsF = Math.abs(fahrenheit(shown) - median) <= TOLERANCE;
  const unit = fitsC === fitsF ? 'ask' : fitsC ? 'C' : 'F';
  return { unit, danger: unit === 'F' && fahrenheit(shown) < 0 };
});

/**
 * Whether a set value that changed looks like the same wish in the other unit (3 to 37-39, or
 * back): a suspicion even without a probe.
 * @throws RangeError for numbers outside -100..300
 */
export const unitSwapped = orUnknown(function unitSwapped(before: number, after: number): boolean {
  expectRange('set value', before, -100, 300, '');
  expectRange('set value', after, -100, 300, '');
  if (Math.abs(after - before) < FAR_APART) return false;
  const [low, high] = before < after ? [before, after] : [after, before];
  return Math.abs(toFahrenheit(low) - high) <= ROUNDING;
});
