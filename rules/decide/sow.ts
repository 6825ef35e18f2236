import type { Answer, Evidence } from '../answer.ts';
import { HOUR, type Instant, instant } from '../units.ts';
import type { SowingNow } from './growingNow.ts';
import { by, put, when } from './how.ts';
import type { Look } from './look.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { Snapshot } from './snapshot.ts';
import { ENTERED, OURS, PRACTICE, TOLD } from './sources.ts';
import { dropInRisk } from './worth.ts';

// Ours, from no source, where nobody told how long a tray takes.
const MINUTES_PER_TRAY = 3;
/** Sown by then it has the night before it as any other; ours. */
const BY = 18; // h after midnight
/** Trays that nobody can give a chance for: told days are right more often than not. Ours. */
const DROP_UNTIL_KNOWN = 0.5;
const WANTED_CHANCE = 0.9; // the plan's own: sowingDay

/** Sowings of one place whose day has come, in the order of their deliveries. */
export const dueIn = ({ sowings }: Snapshot, place: string, now: Instant): readonly SowingNow[] =>
  (sowings?.rows ?? [])
    .filter((one) => one.place === place && one.on <= now)
    .sort((a, b) => (a.delivery < b.delivery ? -1 : a.delivery > b.delivery ? 1 : 0));

/**
 * Trays to sow today in one place, so that the wanted weights are ready on their delivery days; one
 * task for all of them. What is spared is the money of the deliveries times the drop in the chance
 * of missing them: not sown, they are missed for sure.
 *
 * Source: heat units backwards from the delivery day (sowingDay); the plan is ours.
 */
export function sow({ now, snapshot }: Look, due: readonly SowingNow[]): Answer {
  if (due.length === 0) return leave();
  const because: Evidence[] = due.flatMap(factsOf);
  let amount = 0;
  let money: number | null = 0;
  for (const { kilograms, pricePerKilogram, ready } of due) {
    const spared = kilograms * (ready ?? DROP_UNTIL_KNOWN);
    amount += spared;
    money = money === null || pricePerKilogram === null ? null : money + spared * pricePerKilogram;
  }
  if (due.some(({ ready }) => ready === null)) because.push(dropInRisk(DROP_UNTIL_KNOWN));
  const evening = snapshot.day.begins + BY * HOUR;
  return act(because, {
    minutes: due.reduce(
      (sum, { trays, minutesPerTray }) => sum + trays * (minutesPerTray ?? MINUTES_PER_TRAY),
      0,
    ),
    doBy: now < evening ? instant(evening) : snapshot.day.ends,
    saves: { amount, money },
  });
}

/** A crop that is wanted, and of which nobody knows how long it takes. */
export const untimed = (crop: string): Answer =>
  unknown(
    ['growing-days'],
    [fact('sow-crop', crop, '', null, ENTERED, by('sow', put('crop', crop)))],
  );

function factsOf(one: SowingNow): readonly Evidence[] {
  const { crop, trays, kilograms, delivery, ready, batches, late, on } = one;
  const asked = [put('wanted-weight', kilograms, 'kg'), put('delivery-day', delivery)];
  const plan = by('sowingPlan', ...asked, put('past-batches', batches), when('sow-on', on));
  const facts: Evidence[] = [
    fact('sow-crop', crop, '', null, ENTERED, plan),
    fact('sow-trays', trays, 'trays', null, PRACTICE, by('traysFor', ...asked)),
    fact('sow-for', delivery, '', null, ENTERED, plan),
  ];
  const inputs = by('readyProbability', put('past-batches', batches), when('sow-on', on));
  if (ready !== null)
    facts.push(fact('sow-chance', 100 * ready, '%', 100 * WANTED_CHANCE, PRACTICE, inputs));
  else if (batches === 0) facts.push(fact('sow-by-told-days', delivery, '', null, TOLD, plan));
  else facts.push(fact('sow-first-batches', batches, '', null, PRACTICE, inputs));
  if (late) facts.push(fact('sow-late', delivery, '', null, OURS, plan));
  return facts;
}
