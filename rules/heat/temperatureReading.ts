import type { Instant } from '../units.ts';

/** One temperature of a series, °C; series are in order of time. */
export type TemperatureReading = { readonly t: Instant; readonly value: number };

/** The same, where a null says that the probe did not know. */
export type MaybeTemperature = { readonly t: Instant; readonly value: number | null };

export const USUAL_MAX_GAP = 90; // min; common practice, no source: over more a line is a guess
