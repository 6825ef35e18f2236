import { words } from './words.ts';

/** What the hub refused, or that it did not answer: `message` is a sentence fit for the screen. */
export class Refusal extends Error {
  readonly status: number | null;
  constructor(status: number | null, sentence: string) {
    super(sentence);
    this.status = status;
  }
}

const PATIENCE = 20_000; // ms; ours: a hub on the farm's network answers in well under a second

/** Commands that were sent and not answered, by what they say, with the key each went under. */
const unanswered = new Map<string, string>();

/** A tap after "no answer" is the same command again: under the same key it is entered once. */
function keyOf(said: string): string {
  const key = unanswered.get(said) ?? makeKey();
  unanswered.set(said, key);
  return key;
}

// `crypto.randomUUID` is only there over https; this is there on the farm's own network as well.
const makeKey = () =>
  [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');

/**
 * One request to the hub. Its own hub's JSON is trusted to have the contract's shape, which the hub
 * checks on its way out; checking again here would put the schemas' library on every phone.
 */
export async function ask<Shape>(
  path: string,
  command?: unknown,
  method?: 'DELETE' | 'PATCH' | 'POST',
): Promise<Shape> {
  const said = command === undefined ? null : JSON.stringify([method, path, command]);
  let response: Response;
  try {
    response = await fetch(path, {
      signal: AbortSignal.timeout(PATIENCE),
      ...(command === undefined
        ? method && { method }
        : {
            method: method ?? 'POST',
            headers: {
              'content-type': 'application/json',
              // A string of RFC 8941, as draft-ietf-httpapi-idempotency-key-header has it.
              'idempotency-key': `"${keyOf(said ?? '')}"`,
            },
            body: JSON.stringify(command),
          }),
    });
  } catch {
    throw new Refusal(null, words.state.noAnswer);
  }
  // What was refused was not entered, and the hub takes it again under its key.
  if (said !== null && response.ok) unanswered.delete(said);
  const body: unknown = await response.json().catch(() => null);
  if (!response.ok) {
    throw new Refusal(response.status, sentence(body) ?? words.state.badAnswer(response.status));
  }
  return body as Shape;
}

function sentence(body: unknown): string | null {
  if (typeof body !== 'object' || body === null || !('error' in body)) return null;
  return typeof body.error === 'string' ? body.error : null;
}
