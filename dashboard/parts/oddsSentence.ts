import type { FrostOutlook } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

/** The odds of one limit, said in one or two sentences. */
export function oddsSentence(limit: FrostOutlook['limits'][number]): string {
  const text = words.season;
  const what = text.limitWords(limit.what, words.temperature(limit.at));
  if (limit.current === 'first') return text.first(what, limit.first.ahead);
  const { came } = limit.soFar;
  const later = limit.last.ahead.map(({ day, p }) => ({ day: shortDay(day), p }));
  const last = text.last(what, limit.last.today.p, later);
  return came === null ? last : `${text.came(what, shortDay(came))} ${last}`;
}
