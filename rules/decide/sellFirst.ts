import type { Answer, Evidence } from '../answer.ts';
import { sellFirst as inTurn } from '../cooler/index.ts';
import { instant } from '../units.ts';
import { by, put } from './how.ts';
import type { Look } from './look.ts';
import { DAY, KEEPING, lifeHow, lifeOf, lotFacts, worthOf } from './lots.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { LotNow } from './snapshot.ts';
import { PRACTICE, TOLD } from './sources.ts';
import { dropInRisk } from './worth.ts';

const MINUTES_OF_WORK = 10; // ours: a word to a customer, a crate put in front
const DROP = 0.5; // ours, from no source: share of the lot's worth that is sold and not lost

/**
 * A lot that will not last until the next delivery, or not until the one after it, and so has to go
 * with the next. By the least of its days left: what may be over early is sold early.
 *
 * Source: days left less days to the next sale, common practice, no source.
 */
export function sellFirst(look: Look, lot: LotNow): Answer {
  const { now, snapshot } = look;
  const [next, after] = snapshot.stored?.sales ?? [];
  const life = lifeOf(lot);
  const { days } = life;
  // What cold or heat has ended is for somebody to look at: see throwOut.
  if (life.risk !== null) return leave(...lotFacts(lot));
  if (days === null) return unknown(['lot-life'], lotFacts(lot));
  if (next === undefined) return unknown(['delivery-days'], lotFacts(lot));

  const toNext = Math.max(0, (next - now) / DAY);
  const toAfter = after === undefined ? null : (after - now) / DAY;
  const turn = inTurn(
    [
      {
        id: lot.id,
        daysLeft: days.least,
        kilograms: lot.kilograms,
        pricePerKilogram: lot.pricePerKilogram,
        storedAt: lot.storedAt,
      },
    ],
    toNext,
  )[0];
  const slack = turn?.slack ?? 0;
  const slackHow = by(
    'sellFirst',
    put('days-left-least', days.least, 'd'),
    put('days-to-sale', toNext, 'd'),
  );
  const because: readonly Evidence[] = [
    ...lotFacts(lot),
    fact('lot-days-left', days.least, 'd', toNext, KEEPING, lifeHow(lot, life), TOLD),
    fact('lot-days-most', days.most, 'd', null, KEEPING, lifeHow(lot, life)),
    fact(slack < 0 ? 'lot-over-before-sale' : 'lot-slack', slack, 'd', 0, PRACTICE, slackHow),
  ];
  if (days.most === 0) return leave(...because); // nothing left to sell in time: see throwOut
  const last = toAfter !== null && days.least < toAfter;
  if (slack >= 0 && !last) return leave(...because);
  return act([...because, dropInRisk(DROP)], {
    minutes: MINUTES_OF_WORK,
    doBy: slack < 0 ? instant(now + days.least * DAY) : next,
    saves: worthOf(lot, DROP),
  });
}
