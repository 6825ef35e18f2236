import type { Evidence } from '../answer.ts';
import type { Instant } from '../units.ts';
import type { AirRead, WetPiece, Window } from '../wetness/index.ts';
import type { RiskRange } from './riskClass.ts';

/** Whether something held: no is only said when it is certain. */
export type Verdict = 'yes' | 'no' | 'unknown';

/** What is known of one place over one disease day (noon to noon, local standard time). */
export type Circumstances = {
  readonly day: Window;
  /** Wet, dry and unknown time up to the day's end, from the start of any spell that reaches in. */
  readonly wetness: readonly WetPiece[];
  /** Canopy air, from before the day too. */
  readonly air: readonly AirRead[];
  /** A longer time between two readings is a gap. */
  readonly maxGapMinutes?: number;
  /** Outdoor probe; some criteria were made for weather and not for houses. null: not told. */
  readonly outdoors: boolean | null;
  /** Sunset to sunrise; null when not known. */
  readonly dark: Window | null;
  readonly sunrise: Instant | null;
  /** The last two calendar days, local standard time. */
  readonly calendarDays: readonly [Window, Window] | null;
  /** The last seven disease days, as far as they were measured. */
  readonly week: readonly DayOfWeek[];
  /** Flowers are open; null when nobody said. */
  readonly flowering: boolean | null;
  /** Diseases that were confirmed on this farm. */
  readonly confirmed: readonly string[];
};

/** What the weekly warning needs of one day, [least, most] hours. */
export type DayOfWeek = {
  readonly wetHours: readonly [number, number];
  /** Of the 14 h from 18:00 to 08:00, those from 9 to 21 °C. */
  readonly nightHours: readonly [number, number];
  readonly unknownHours: number;
};

/** What the weather says of one disease. It never says that the disease is there, or is not. */
export type Judgement = {
  readonly verdict: Verdict;
  /** null where the method has no classes. */
  readonly risk: RiskRange | null;
  readonly because: readonly Evidence[];
  /** What would have to be known, as terms; empty unless something is unknown. */
  readonly missing: readonly string[];
};

/** A disease, or one way of judging it. */
export type Disease = {
  /** Id of this way of judging. */
  readonly id: string;
  /** Id of the disease in the farm file; several ways may judge one disease. */
  readonly of: string;
  /** The trade's name. */
  readonly name: string;
  readonly source: string;
  /** Only to be asked about where the disease was confirmed. */
  readonly onlyIfConfirmed: boolean;
  /** Days from infection to the first that can be seen: soonest and latest; null where not known. */
  readonly latentDays: readonly [number, number | null] | null;
  readonly judge: (known: Circumstances) => Judgement;
};

/** yes from a lower bound, no from an upper one. */
export const verdictOf = (surely: boolean, perhaps: boolean): Verdict =>
  surely ? 'yes' : perhaps ? 'unknown' : 'no';

export const fact = (
  what: string,
  value: Evidence['value'],
  unit: string,
  limit: Evidence['limit'],
  source: string,
): Evidence => ({ what, value, unit, limit, source });

/** What risk a range leaves open, as a verdict on whether there was an event. */
export function verdictOfRisk(risk: RiskRange): Verdict {
  if (risk === 'unknown') return 'unknown';
  return verdictOf(risk.least === 'event', risk.most === 'event');
}

export const notKnown = (...missing: readonly string[]): Judgement => ({
  verdict: 'unknown',
  risk: 'unknown',
  because: [],
  missing,
});
