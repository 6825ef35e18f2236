import { signal } from '@preact/signals';
import { exactNow } from '../clock.ts';
import { sendDirectly } from '../direct.ts';
import { Refusal } from '../exchange.ts';
import { makeKey } from '../makeKey.ts';
import { link, who } from '../state.ts';
import { words } from '../words.ts';
import { describe } from './describe.ts';
import { TAB } from './inTurn.ts';
import type { SaidKind } from './mayWait.ts';
import type { Outcome } from './sendOne.ts';
import { inHand, sendWaiting } from './sendWaiting.ts';
import { addSaid, changeSaid, type Said } from './waits.ts';

/** It is kept on this device, and sent by itself. Not stored in the hub yet. */
export class Waits extends Refusal {}

/** Counts what came to wait on this page: its form is done with, as if it were stored. */
export const cameToWait = signal(0);

const PATIENCE = 12_000; // ms; ours: with the hub in reach
const SHORT = 1_500; // ms; ours: without a link the page does not keep anybody

type Told = { readonly method: 'POST' | 'PATCH'; readonly path: string; readonly body: unknown };

/**
 * A command that may wait. It is kept on this device first and sent then, so that nothing is lost when
 * the page is closed in between.
 *
 * @returns what the hub answered.
 * @throws Waits when no answer came: it goes on waiting; Refusal when the hub refused it.
 */
export async function say(kind: SaidKind, { method, path, body }: Told): Promise<unknown> {
  const person = who.value;
  // Without a name it could only be sent as somebody else's.
  if (person === null) return sendDirectly(method, path, body);
  const key = makeKey();
  let said: Said;
  try {
    const wall = Date.now();
    said = await addSaid({
      ...{ key, method, path, body, words: describe(kind, path, body), by: person.name },
      ...{ at: Math.round(exactNow()), wall, tries: 0, refused: null },
      ...{ tab: TAB, held: wall + PATIENCE },
    });
  } catch {
    return sendDirectly(method, path, body); // a browser that keeps nothing
  }
  inHand.add(said.turn);
  const outcome = await soonEnough(said.turn);
  if (outcome?.is === 'stored') return outcome.answer;
  if (outcome?.is === 'refused') throw new Refusal(outcome.status, outcome.sentence);
  await comesToWait(said, outcome);
  throw new Waits(null, outcome?.is === 'nobody' ? words.queue.signIn : words.queue.waitsHere);
}

/** What becomes of it while somebody waits at the form; undefined: nothing yet. */
async function soonEnough(turn: number): Promise<Outcome | undefined> {
  const sent = sendWaiting(turn);
  const given = new Promise<undefined>((done) =>
    setTimeout(() => done(undefined), link.value.state === 'lost' ? SHORT : PATIENCE),
  );
  const outcome = await Promise.race([sent, given]).catch(() => undefined);
  if (outcome !== undefined || inHand.delete(turn)) return outcome;
  // In the same moment it was settled after all, with the form still open: so that is what is told.
  return sent;
}

async function comesToWait(said: Said, outcome: Outcome | undefined) {
  inHand.delete(said.turn);
  // From now on any tab sends it.
  await changeSaid(said.turn, (kept) => ({ ...kept, held: 0, tries: tries(kept, outcome) }));
  cameToWait.value++;
  // A browser that is short of room then leaves this alone; asking costs nothing.
  navigator.storage?.persist?.().catch(() => {});
}

const tries = (kept: Said, outcome: Outcome | undefined) =>
  outcome?.is === 'nobody' || outcome?.is === 'other' ? kept.tries : Math.max(1, kept.tries);

/** Sends one again that was refused, mended or as it was; under its own key. */
export async function sendAgain(said: Said, change: Partial<Pick<Said, 'body' | 'at'>> = {}) {
  const again = { ...change, refused: null, tries: Math.max(1, said.tries) };
  await changeSaid(said.turn, (kept) => ({ ...kept, ...again }));
  await sendWaiting();
}
