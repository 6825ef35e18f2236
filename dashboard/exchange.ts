import { words } from './words.ts';

/** What the hub refused, or that it did not answer: `message` is a sentence fit for the screen. */
export class Refusal extends Error {
  /** null: no answer came. */
  readonly status: number | null;
  /** The hub asks to have it sent again in a moment. */
  readonly again: boolean;
  constructor(status: number | null, sentence: string, again = false) {
    super(sentence);
    this.status = status;
    this.again = again;
  }
}

export type Asked = {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  /** JSON as text, or a picture. */
  readonly body?: string | Blob;
  /** ms */
  readonly patience: number;
};

/** Said by something between here and a hub that is not there (RFC 9110, 15.6.3 and 15.6.5). */
const NOBODY_THERE = new Set([502, 504]);

/** One request and its whole answer. @throws Refusal */
export async function exchange(
  path: string,
  { method = 'GET', headers = {}, body, patience }: Asked,
): Promise<unknown> {
  let response: Response;
  let text: string;
  try {
    response = await fetch(path, {
      method,
      headers,
      signal: AbortSignal.timeout(patience),
      ...(body === undefined ? {} : { body }),
    });
    // An answer that breaks off half way is none.
    text = await response.text();
  } catch {
    throw new Refusal(null, words.state.noAnswer);
  }
  const { status } = response;
  if (NOBODY_THERE.has(status)) throw new Refusal(null, words.state.noAnswer);
  const said = parsed(text);
  if (!response.ok)
    throw new Refusal(
      status,
      sentence(said) ?? words.state.badAnswer(status),
      response.headers.has('retry-after'),
    );
  return said;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function sentence(body: unknown): string | null {
  if (typeof body !== 'object' || body === null || !('error' in body)) return null;
  return typeof body.error === 'string' ? body.error : null;
}
