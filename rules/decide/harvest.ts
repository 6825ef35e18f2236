import type { Answer, Evidence } from '../answer.ts';
import { type Instant, instant } from '../units.ts';
import type { HarvestNow } from './growingNow.ts';
import { by, type How, put, when } from './how.ts';
import type { Look } from './look.ts';
import { DAY } from './lots.ts';
import { act, fact, leave, unknown } from './say.ts';
import { ENTERED, PRACTICE, TOLD_AND_OURS } from './sources.ts';
import { dropInRisk } from './worth.ts';

// Ours, from no source, where nobody told how long a tray takes.
const MINUTES_PER_TRAY = 4;
/** Cut on the day before the delivery, or on its morning; ours. */
const CUT_AHEAD = 1.5 * DAY;
/** Said so long before it is over, where no delivery waits for it; ours. */
const OVER_AHEAD = 1 * DAY;
const LIKELY = 0.5; // of being ready: as likely as not; ours
const DROP_OVER = 0.5; // ours: share of what is over that could still have been sold

/**
 * A batch in its window: cut it before the delivery it grows for, or before it is over. One that
 * nobody saw ready has to be as likely ready as not.
 *
 * Source: heat units of past batches (chanceReady); the hours before are ours.
 */
export function harvest({ now, snapshot }: Look, batch: HarvestNow): Answer {
  const { seenReady, readyAt, ready, delivery, overAt } = batch;
  const because: Evidence[] = [...factsOf(batch, now)];
  if (seenReady === null && readyAt === null) return unknown(['growing-days'], because);
  const isReady =
    seenReady !== null || (ready === null ? (readyAt ?? now) <= now : ready >= LIKELY);
  const soon = delivery !== null && delivery.at - now <= CUT_AHEAD;
  const ends = overAt !== null && overAt - now <= OVER_AHEAD;
  if (!isReady || !(soon || ends)) return leave(...because);

  const chance = seenReady !== null ? 1 : (ready ?? LIKELY);
  const drop = soon ? chance : chance * DROP_OVER;
  const { kilograms, pricePerKilogram, trays, minutesPerTray } = batch;
  const amount = kilograms === null ? null : kilograms * drop;
  // What is over already is cut, or cleared, by this evening.
  const last = soon && delivery !== null ? delivery.at : (overAt ?? now);
  return act([...because, dropInRisk(drop)], {
    minutes: trays * (minutesPerTray ?? MINUTES_PER_TRAY),
    doBy: last > now ? instant(last) : snapshot.day.ends,
    saves: {
      amount,
      money: amount === null || pricePerKilogram === null ? null : amount * pricePerKilogram,
    },
  });
}

function factsOf(batch: HarvestNow, now: Instant): readonly Evidence[] {
  const { crop, trays, kilograms, seenReady, readyAt, ready, overAt, delivery } = batch;
  const told: How = { method: null, inputs: [] };
  const how = by('harvest', put('batch', batch.id), when('ready-at', seenReady ?? readyAt));
  const facts: Evidence[] = [
    fact('harvest-crop', crop, '', null, ENTERED, told),
    fact('harvest-trays', trays, 'trays', null, ENTERED, told),
  ];
  if (seenReady !== null)
    facts.push(fact('seen-ready', (now - seenReady) / DAY, 'd', null, ENTERED, how));
  else if (ready !== null)
    facts.push(
      fact('ready-chance', 100 * ready, '%', 100 * LIKELY, PRACTICE, {
        ...how,
        method: 'chanceReady',
      }),
    );
  else if (readyAt !== null)
    facts.push(fact('ready-expected', (readyAt - now) / DAY, 'd', 0, PRACTICE, how));
  if (delivery !== null) {
    const plan = by('coverWants', put('batch', batch.id), when('delivery-at', delivery.at));
    facts.push(fact('harvest-for', delivery.day, '', null, ENTERED, plan));
  }
  if (overAt !== null)
    facts.push(
      fact(
        overAt < now ? 'over-since' : 'over-in',
        Math.abs(overAt - now) / DAY,
        'd',
        null,
        TOLD_AND_OURS,
        how,
      ),
    );
  if (kilograms !== null)
    facts.push(
      fact(
        'harvest-weight',
        kilograms,
        'kg',
        null,
        PRACTICE,
        by('harvest', put('sow-trays', trays)),
      ),
    );
  return facts;
}
