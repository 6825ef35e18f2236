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

/**
 * One request to the hub. Its own hub's JSON is trusted to have the contract's shape, which the hub
 * checks on its way out; checking again here would put the schemas' library on every phone.
 */
export async function ask<Shape>(
  path: string,
  command?: unknown,
  method?: 'DELETE' | 'PATCH' | 'POST',
): Promise<Shape> {
  let response: Response;
  try {
    response = await fetch(path, {
      signal: AbortSignal.timeout(PATIENCE),
      ...(command === undefined
        ? method && { method }
        : {
            method: method ?? 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(command),
          }),
    });
  } catch {
    throw new Refusal(null, words.state.noAnswer);
  }
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
