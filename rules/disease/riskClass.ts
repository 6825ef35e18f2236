import { expectRange } from '../expectRange.ts';

/** How well the weather suited infection. */
export type RiskClass = 'quiet' | 'watch' | 'event';

/** At the least and at the most, given what is not known; or not known at all. */
export type RiskRange = { readonly least: RiskClass; readonly most: RiskClass } | 'unknown';

/** One word for a range, as a term for hub/words. */
export type RiskWord =
  | RiskClass
  | 'quiet-to-watch'
  | 'quiet-to-event'
  | 'watch-to-event'
  | 'unknown';

// Both levels field-tested for anthracnose (MacKenzie & Peres 2012, Plant Disease 96:522); 0.50 for
// grey mould from memory.
export const WATCH_INCIDENCE = 0.15;
export const EVENT_INCIDENCE = 0.5;
// Ours: a whole infection, and half of one.
const WATCH_PROGRESS = 0.5;
const EVENT_PROGRESS = 1;
const HAIR = 1e-9; // room for the last bits of a sum over many readings

const order: readonly RiskClass[] = ['quiet', 'watch', 'event'];

/** Class of an incidence index, 0..1. */
export function classOfIncidence(incidence: number): RiskClass {
  expectRange('incidence', incidence, 0, 1, '');
  return incidence >= EVENT_INCIDENCE ? 'event' : incidence >= WATCH_INCIDENCE ? 'watch' : 'quiet';
}

/** Class of the progress of an infection, 0 upwards; 1 is enough for one. */
export function classOfProgress(progress: number): RiskClass {
  expectRange('progress of infection', progress, 0, Number.MAX_VALUE, '');
  const reached = progress + HAIR;
  return reached >= EVENT_PROGRESS ? 'event' : reached >= WATCH_PROGRESS ? 'watch' : 'quiet';
}

export const riskRange = (least: RiskClass, most: RiskClass): RiskRange => ({ least, most });

/** The same at both bounds: one word. Different: "quiet-to-watch" and the like. */
export function riskWord(range: RiskRange): RiskWord {
  if (range === 'unknown') return 'unknown';
  if (range.least === range.most) return range.least;
  return `${range.least}-to-${range.most}` as RiskWord;
}

/** The worse of two ranges, at each bound; unknown where either is, unless the other is an event. */
export function worseRange(a: RiskRange, b: RiskRange): RiskRange {
  if (a === 'unknown' || b === 'unknown') {
    const known = a === 'unknown' ? b : a;
    return known !== 'unknown' && known.least === 'event' ? known : 'unknown';
  }
  return { least: worse(a.least, b.least), most: worse(a.most, b.most) };
}

export const worse = (a: RiskClass, b: RiskClass): RiskClass =>
  order.indexOf(a) >= order.indexOf(b) ? a : b;

/** One step up; an event stays an event. */
export const stepUp = (risk: RiskClass): RiskClass =>
  order[Math.min(order.indexOf(risk) + 1, order.length - 1)] ?? 'event';

/**
 * The class a task goes by. Looking costs little, so it goes by the upper bound; what is costly or
 * can not be undone (throw out, strip, cut) by the lower one, and the grower's eye.
 */
export function classFor(work: 'looking' | 'costly', range: RiskRange): RiskClass | null {
  if (range === 'unknown') return null;
  return work === 'looking' ? range.most : range.least;
}
