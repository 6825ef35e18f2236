import { signInNeeded } from '../state.ts';
import { inTurn, TAB } from './inTurn.ts';
import { type Outcome, sendOne } from './sendOne.ts';
import { changeSaid, dropSaid, isOwn, reread, type Said } from './waits.ts';

/** Turns whose form is still open on this page: what the hub refuses of them is mended there. */
export const inHand = new Set<number>();

const SOON = 5_000; // ms
let next: ReturnType<typeof setTimeout> | undefined;
let hearStored: () => void = () => {};

/** Told after anything that had waited was stored. */
export function whenStored(hear: () => void): void {
  hearStored = hear;
}

/**
 * Sends what waits, in order, up to a turn; stops at the first that gets no answer.
 * @returns what became of that turn; undefined when it was not tried
 */
export async function sendWaiting(upTo = Number.POSITIVE_INFINITY): Promise<Outcome | undefined> {
  let found: Outcome | undefined;
  let stored = 0;
  await inTurn(async (goesOn) => {
    for (const said of await reread()) {
      if (said.turn > upTo) break;
      if (said.refused !== null || !isOwn(said)) continue;
      if (isHeldElsewhere(said)) {
        soon(); // the tab it was said in sends it now, or was closed
        break;
      }
      await goesOn();
      const outcome = await sendOne(said);
      const inForm = await settle(said, outcome);
      if (said.turn === upTo) found = outcome;
      if (outcome.is === 'stored' && !inForm) stored++;
      if (outcome.is === 'nobody') signInNeeded.value = true;
      if (outcome.is === 'away' || outcome.is === 'nobody') {
        if (outcome.is === 'away') soon();
        break;
      }
    }
  });
  if (stored > 0) hearStored();
  return found;
}

const isHeldElsewhere = ({ tab, held }: Said) => tab !== TAB && held > Date.now();

/** @returns whether somebody waits for it at its form */
async function settle(said: Said, outcome: Outcome): Promise<boolean> {
  if (outcome.is === 'stored') {
    const inForm = inHand.delete(said.turn);
    await dropSaid(said);
    return inForm;
  }
  if (outcome.is === 'refused') {
    // Who still looks at the form mends it there; else it is kept with the hub's sentence. A hub in
    // trouble is asked again where nobody looks.
    const inForm = inHand.delete(said.turn);
    if (inForm) await dropSaid(said);
    else if (outcome.status < 500)
      await changeSaid(said.turn, (kept) => ({ ...kept, held: 0, refused: outcome.sentence }));
    else soon();
    return inForm;
  }
  if (outcome.is === 'away' && said.tries === 0)
    await changeSaid(said.turn, (kept) => ({ ...kept, tries: 1 }));
  return false;
}

/** Tries again in a little while; one such wait at a time. */
function soon(): void {
  if (next !== undefined) return;
  next = setTimeout(() => {
    next = undefined;
    sendNow();
  }, SOON);
}

/** Sends whatever waits, in its own time. */
export function sendNow(): void {
  sendWaiting().catch(() => {
    // A browser that keeps nothing has nothing that waits.
  });
}
