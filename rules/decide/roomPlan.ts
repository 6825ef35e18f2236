import type { Evidence } from '../answer.ts';
import { energyTrend, type GeneratorPlan, generatorPlan } from '../cooler/index.ts';
import { by, put } from './how.ts';
import type { Signs } from './roomSigns.ts';
import { fact } from './say.ts';
import { NEWTON, TOLD } from './sources.ts';

// When the set that feeds the room has to run, and what that takes.

const inputsOf = ({ room, hold }: Signs) => ({
  inside: room.air?.latest?.value ?? null,
  outside: room.warmestAhead,
  limit: room.limit,
  bottom: room.habits.bottom,
  tauHours:
    hold.shortest !== null && hold.toLimit !== null && hold.toLimit > 0
      ? (hold.tauHours * hold.shortest) / hold.toLimit
      : hold.tauHours,
  share: room.habits.duty?.share ?? room.habits.cycle?.fallingShare ?? null,
  shareGap: room.habits.duty?.gap ?? null,
  need: needOf(room),
});

/** How its energy hangs on the weather, once there are days enough to say. */
function needOf({ place }: Signs['room']) {
  const { line } = energyTrend(place.coolRoom?.energyDays ?? []);
  return line?.enough === true ? line : null;
}

export const planOf = (signs: Signs): GeneratorPlan =>
  generatorPlan(inputsOf(signs), signs.room.burns);

/** The plan as evidence: when, for how long, and what it burns. */
export function planFacts(signs: Signs): readonly Evidence[] {
  const { runIn, runFor, litres } = planOf(signs);
  const { inside, outside, limit, bottom, tauHours, share } = inputsOf(signs);
  const how = by(
    'generatorPlan',
    put('room-air', inside, '°C'),
    put('warmest-outside-ahead', outside, '°C'),
    put('limit', limit, '°C'),
    put('cycle-bottom', bottom, '°C'),
    put('time-constant', tauHours, 'h'),
    put('running-share', share),
  );
  return [
    ...(runIn === null ? [] : [fact('run-within-minutes', runIn * 60, 'min', null, NEWTON, how)]),
    ...(runFor === null ? [] : [fact('run-for-minutes', runFor * 60, 'min', null, NEWTON, how)]),
    ...(litres === null ? [] : [fact('burns-litres', litres, 'L', null, TOLD, how)]),
  ];
}
