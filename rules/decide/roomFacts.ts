import type { Evidence } from '../answer.ts';
import { MINUTE } from '../units.ts';
import { by, put, when } from './how.ts';
import { feedHow } from './room.ts';
import { pullLate } from './roomAir.ts';
import type { Signs } from './roomSigns.ts';
import { fact } from './say.ts';
import { MEASURED, OURS } from './sources.ts';

// The evidence of a cool room's trouble, for the tasks and for its page alike.

const LEARNED = 'learned from this room; ours, from no source';

/** What the air shows against what is usual in this room. */
export function airFacts({ room, air, drift }: Signs): readonly Evidence[] {
  const { above, pull, stalledFor, patience, coldSince, sameSince, moved } = air;
  const { habits, now } = room;
  const read = feedHow(room.air);
  const limit = habits.learned ? LEARNED : OURS;
  const facts: Evidence[] = [];
  if (drift !== null) {
    const how = by('cycleBottom', put('set-point', room.setPoint, '°C'), ...read.inputs);
    facts.push(fact('cycle-bottom-above', drift, 'K', null, OURS, how));
  }
  if (above !== null) {
    const how = by(
      'excursions',
      put('out-of-cycle-above', habits.line, '°C'),
      when('above-since', above.since),
      when('no-way-down-since', above.stalledSince),
      when('now', now),
    );
    facts.push(fact('no-way-down-minutes', stalledFor, 'min', patience, OURS, how, limit));
  }
  if (moved !== null) {
    const how = by(
      'bandMoved',
      put('cycle-top', habits.top, '°C'),
      put('cycle-bottom', habits.bottom, '°C'),
      when('moved-since', moved.since),
    );
    facts.push(fact('cycle-moved-by', moved.by, 'K', null, OURS, how));
    return facts;
  }
  const late = pull === null ? null : pullLate(room, pull);
  if (pull !== null && late !== null && late.minutes >= late.most) {
    const how = by(
      'lostBottom',
      put('cycle-top', habits.top, '°C'),
      put('cycle-bottom', habits.bottom, '°C'),
      when('at-top-since', pull.since),
      when('now', now),
    );
    facts.push(fact('top-to-bottom-minutes', late.minutes, 'min', late.most, OURS, how, limit));
  }
  if (coldSince !== null && room.air?.latest != null) {
    const { value } = room.air.latest;
    facts.push(fact('colder-than-ever', value, '°C', habits.lowest, MEASURED, read, limit));
  }
  if (sameSince !== null) {
    const how = by('sameValue', when('stuck-since', sameSince), when('now', now), ...read.inputs);
    const minutes = (now - sameSince) / MINUTE;
    facts.push(fact('one-value-minutes', minutes, 'min', habits.same, OURS, how, limit));
  }
  return facts;
}

export function coilFacts({ room, power }: Signs): readonly Evidence[] {
  const { coil } = power;
  if (coil === null) return [];
  const usual = room.habits.coil?.belowAir ?? null;
  const how = by('coilSays', ...feedHow(room.coil).inputs);
  return [fact('coil-below-air', coil.belowAir, 'K', usual, OURS, how, LEARNED)];
}

/** What it may be, and how sure that is. */
export function causeFacts({ why, trouble }: Signs): readonly Evidence[] {
  if (why === null || trouble === null) return [];
  const how = by('roomCauses', put('trouble', trouble));
  return [fact('may-be', why.among.join(' '), '', null, OURS, how)];
}
