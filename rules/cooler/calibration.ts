import { expectRange } from '../expectRange.ts';
import { orUnknown } from '../orUnknown.ts';
import { orUnknownField } from '../orUnknownField.ts';

/** A value measured is `intercept + slope raw`. Raw values stay as they are; this makes a new series. */
export type Calibration = { readonly slope: number; readonly intercept: number };

// Common practice, no source.
const LEAST_APART = 15; // K between two points that are worth a slope
const SLOPE = { least: 0.97, most: 1.03 } as const; // beyond it, doubt the reference

/** Ice bath: crushed clean ice, water just filling the gaps, stirred, probe in the middle, 5 min. */
export const ICE_POINT = 0; // °C, ±0.1 with care

/**
 * Correction from one point: T = raw - (raw at the reference - reference). Near 3 °C an ice point
 * is enough.
 * @throws RangeError for values outside -100..200
 */
export const offsetCalibration = orUnknown(function offsetCalibration(
  raw: number,
  reference: number = ICE_POINT,
): Calibration {
  expectRange('raw value', raw, -100, 200, '');
  expectRange('reference', reference, -100, 200, '');
  return { slope: 1, intercept: reference - raw };
});

/**
 * Correction from two points: slope (ref2 - ref1) / (raw2 - raw1) through the first. `doubts`
 * names what speaks against using it: points nearer than 15 (K), a slope outside 0.97 to 1.03, where
 * the reference is the likelier fault.
 * @throws RangeError for values outside -100..200, or equal raw values
 */
export const twoPointCalibration = orUnknownField(function twoPointCalibration(points: {
  readonly raw1: number;
  readonly reference1: number;
  readonly raw2: number;
  readonly reference2: number;
}): Calibration & { readonly doubts: readonly ('too-near' | 'slope')[] } {
  const { raw1, reference1, raw2, reference2 } = points;
  for (const raw of [raw1, raw2]) expectRange('raw value', raw, -100, 200, '');
  for (const reference of [reference1, reference2]) {
    expectRange('reference', reference, -100, 200, '');
  }
  if (raw1 === raw2) throw new RangeError(`Expected raw values that differ, got ${raw1} twice`);
  const slope = (reference2 - reference1) / (raw2 - raw1);
  const doubts: ('too-near' | 'slope')[] = [];
  if (Math.abs(reference2 - reference1) < LEAST_APART) doubts.push('too-near');
  if (!(slope >= SLOPE.least && slope <= SLOPE.most)) doubts.push('slope');
  return { slope, intercept: reference1 - slope * raw1, doubts };
});

/** A raw value corrected. */
export const calibrated = orUnknown(function calibrated(
  raw: number,
  { slope, intercept }: Calibration,
): number {
  expectRange('raw value', raw, -300, 300, '');
  return intercept + slope * raw;
});
