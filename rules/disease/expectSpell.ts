import { expectRange } from '../expectRange.ts';

const COLDEST = -40; // °C; what a garden probe can read at all
const HOTTEST = 60; // °C
const LONGEST = 8784; // h; leap year

/** Refuses a wet spell no garden can have. Outside a disease's own range is not refused: it is 0. */
export function expectSpell(temperature: number, wetHours: number) {
  expectRange('mean temperature of the wet spell', temperature, COLDEST, HOTTEST, '°C');
  expectRange('wet hours', wetHours, 0, LONGEST, 'h');
}

/** The logistic function, which turns the sums of these models into shares. */
export const logistic = (y: number) => 1 / (1 + Math.exp(-y));
