import type { Instant } from '../units.ts';

/** One temperature of a series, °C; series are in order of time. */
export type TemperatureReading = { readonly t: Instant; readonly value: number };

export const USUAL_MAX_GAP = 90; // min; ours: a straight line over more than this would be a guess
