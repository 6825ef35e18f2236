import type { Answer, Evidence } from '../answer.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { KEEPING, lifeHow, lifeOf, lotFacts } from './lots.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { LotNow } from './snapshot.ts';
import { ENTERED } from './sources.ts';

const MINUTES_OF_WORK = 10; // ours, from no source

/**
 * A lot that somebody has to look at and decide on: its keeping time is used up, it lay where the
 * figures end (frozen, chilled, heated), or its time over the limit has, or may have, reached the
 * clock that was agreed with the food-safety officer. It states facts; a named person decides, and
 * once one has said that the lot may stay, this is quiet.
 *
 * Source: the Q10 rule as in USDA Agriculture Handbook 66; limit and clock as entered.
 */
export function throwOut(_look: Look, lot: LotNow): Answer {
  const life = lifeOf(lot);
  const { days, risk } = life;
  const because: Evidence[] = [...lotFacts(lot)];
  if (risk !== null) {
    const held = risk === 'freezing' ? (lot.keeps.freezesAt ?? 0) : lot.keeps.chillMin;
    const limit = risk === 'heat' ? null : held;
    because.push(fact(`lot-${risk}`, risk, '', limit, KEEPING, lifeHow(lot, life)));
  } else if (days !== null) {
    because.push(fact('lot-days-most', days.most, 'd', 0, KEEPING, lifeHow(lot, life)));
  }
  const over = clockFacts(lot);
  because.push(...over.facts);
  const spent = risk !== null || days?.most === 0;
  if (lot.released !== null) {
    const how = by('throwOut', when('released-at', lot.released));
    return leave(...because, fact('lot-released', 'released', '', null, ENTERED, how));
  }
  if (spent || over.out) return act(because, { minutes: MINUTES_OF_WORK });
  if (days === null) return unknown(['lot-life'], because);
  return leave(...because);
}

/** Time over the limit, and the time nobody knows beside it, held against the clock. */
function clockFacts({ exposure, storedAt }: LotNow): { facts: Evidence[]; out: boolean } {
  const { above, unknown: notKnown, limit, clock } = exposure;
  if (clock === null) return { facts: [], out: false };
  const how = by(
    'exposureClock',
    put('limit', limit, '°C'),
    put('clock-hours', clock / 60, 'h'),
    when('stored-at', storedAt),
  );
  const hours = clock / 60;
  const facts = [
    fact('lot-above-hours', above / 60, 'h', hours, ENTERED, how),
    fact('lot-unknown-hours', notKnown / 60, 'h', hours, ENTERED, how),
  ];
  return { facts, out: above + notKnown >= clock };
}
