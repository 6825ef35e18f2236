import { expectRange } from '../expectRange.ts';
import type { Instant } from '../units.ts';
import type { Disease, Judgement } from './judgement.ts';
import { type RiskRange, type RiskWord, riskWord, stepUp } from './riskClass.ts';

const DAY = 86_400_000; // ms
// Ours, where no latent period is known: long enough for two looks at weekly intervals.
const LATENT_UNKNOWN = [0, 14] as const; // days
const SEEN_FOR = 14; // days an event stands after the soonest symptoms, where no latest is known; ours
const ESCALATE = { days: 3, of: 5 } as const; // ours

/** Weather that suited infection on one disease day, as it is kept and shown. */
export type InfectionEvent = {
  /** Id of the way of judging. */
  readonly disease: string;
  /** End of the disease day. */
  readonly at: Instant;
  readonly risk: RiskWord;
  /** Sure when both bounds say the same. */
  readonly certainty: 'sure' | 'possible';
  /** Days after `at` between which symptoms may show. */
  readonly looksFrom: number;
  readonly looksUntil: number;
};

/**
 * The event a judgement stands for; null when it is quiet at both bounds or has no classes. A day
 * that is not known is an event of class "unknown": somebody has to look by eye.
 */
export function infectionEvent(
  disease: Pick<Disease, 'id' | 'latentDays'>,
  { risk }: Pick<Judgement, 'risk'>,
  at: Instant,
): InfectionEvent | null {
  if (risk === null) return null;
  const word = riskWord(risk);
  if (word === 'quiet') return null;
  const [from, until] = disease.latentDays ?? LATENT_UNKNOWN;
  return {
    disease: disease.id,
    at,
    risk: word,
    certainty: risk !== 'unknown' && risk.least === risk.most ? 'sure' : 'possible',
    looksFrom: from,
    looksUntil: until ?? from + SEEN_FOR,
  };
}

/** Where an event stands: before symptoms can show, while they can, or past. Nothing is dropped. */
export function stageOf(event: InfectionEvent, now: Instant): 'waiting' | 'look' | 'aged-out' {
  const days = (now - event.at) / DAY;
  if (days < event.looksFrom) return 'waiting';
  return days <= event.looksUntil ? 'look' : 'aged-out';
}

/**
 * One step up when at least 3 of the last 5 days were watch or worse; each bound by the days at
 * that bound, so that unknown days raise only the upper one.
 * @param days the last days, newest last; only the last five count
 */
export function escalated(today: RiskRange, days: readonly RiskRange[]): RiskRange {
  if (today === 'unknown') return today;
  const last = days.slice(-ESCALATE.of);
  const least = last.filter((day) => day !== 'unknown' && day.least !== 'quiet').length;
  const most = last.filter((day) => day === 'unknown' || day.most !== 'quiet').length;
  return {
    least: least >= ESCALATE.days ? stepUp(today.least) : today.least,
    most: most >= ESCALATE.days ? stepUp(today.most) : today.most,
  };
}

/** Whole days since an instant; null when it never was. */
export function daysSince(then: Instant | null, now: Instant): number | null {
  if (then === null) return null;
  expectRange('an instant before now', then, Number.NEGATIVE_INFINITY, now, 'ms');
  return Math.floor((now - then) / DAY);
}
