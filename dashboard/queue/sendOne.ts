import { exchange, Refusal } from '../exchange.ts';
import { handOverKept } from './photosKept.ts';
import { photosIn, type Said } from './waits.ts';

/** What became of a try. */
export type Outcome =
  | { readonly is: 'stored'; readonly answer: unknown }
  | { readonly is: 'refused'; readonly status: number; readonly sentence: string }
  /** No answer came, or one that asks to come again. */
  | { readonly is: 'away' }
  /** Nobody is signed in any more. */
  | { readonly is: 'nobody' }
  /** Somebody else is signed in by now. */
  | { readonly is: 'other' };

const PATIENCE = 10_000; // ms; ours: a hub on the farm's network answers in well under a second
/** Sent sooner than this, it is as good as said now, and the hub's own clock tells when. Ours. */
const FRESH = 10_000; // ms

/** Sends one thing that was said, its photos first. Sent again under its key it is entered once. */
export async function sendOne({ method, path, body, key, by, at, wall, tries }: Said) {
  try {
    let text = JSON.stringify(body);
    for (const name of photosIn(body)) text = text.replaceAll(name, await handOverKept(name));
    const isOld = tries > 0 || Date.now() - wall > FRESH;
    const answer = await exchange(path, {
      method,
      body: text,
      patience: PATIENCE,
      headers: {
        'content-type': 'application/json',
        // A string of RFC 8941, as draft-ietf-httpapi-idempotency-key-header has it.
        'idempotency-key': `"${key}"`,
        ...(by === null ? {} : { 'dewpost-said-by': encodeURIComponent(by) }),
        ...(isOld ? { 'dewpost-said-at': new Date(at).toISOString() } : {}),
      },
    });
    return { is: 'stored', answer } satisfies Outcome;
  } catch (error) {
    return outcomeOf(error);
  }
}

const SOMEBODY_ELSE = 412;

export function outcomeOf(error: unknown): Outcome {
  if (!(error instanceof Refusal)) throw error;
  const { status, message: sentence, again } = error;
  if (status === null || again) return { is: 'away' };
  if (status === 401) return { is: 'nobody' };
  if (status === SOMEBODY_ELSE) return { is: 'other' };
  return { is: 'refused', status, sentence };
}
