import { createHmac } from 'node:crypto';
import { oneLine, type Sent } from './sent.ts';

const PATIENCE = 10_000; // ms for the whole exchange, ours
const MOST_REDIRECTS = 3; // ours
const MOST_READ = 2048; // bytes of the answer

/** RFC 9110: these keep method and content (307, 308); may work later (408, 425, 429, RFC 6585). */
const KEEPS = new Set([307, 308]);
const LATER = new Set([408, 425, 429]);

/**
 * Signature of a message: HMAC-SHA256 (RFC 2104, FIPS 198-1), in hexadecimal digits, with the shared
 * secret as its key, of the time in the header `dewpost-sent-at`, a line feed, and the body.
 */
export const signature = (secret: string, sentAt: string, body: string): string =>
  createHmac('sha256', secret).update(`${sentAt}\n${body}`).digest('hex');

export type Post = {
  readonly url: string;
  /** Kept name of the message: the same for each try. */
  readonly id: string;
  readonly body: string;
  /** Shared with the receiver; null: not signed. */
  readonly secret: string | null;
  /** ISO 8601. */
  readonly sentAt: string;
};

/** Posts JSON. Never throws: what went wrong is in what it returns, and never an address in full. */
export async function sendWebhook({ url, id, body, secret, sentAt }: Post): Promise<Sent> {
  const headers = {
    'content-type': 'application/json',
    'dewpost-message': id,
    'dewpost-sent-at': sentAt,
    ...(secret === null ? {} : { 'dewpost-signature': signature(secret, sentAt, body) }),
  };
  const signal = AbortSignal.timeout(PATIENCE);
  try {
    let to = new URL(url);
    for (let hop = 0; hop <= MOST_REDIRECTS; hop++) {
      const reply = await fetch(to, { method: 'POST', headers, body, signal, redirect: 'manual' });
      const where = reply.headers.get('location');
      if (reply.status < 300 || reply.status > 399 || where === null) return judged(reply);
      await reply.body?.cancel();
      if (!KEEPS.has(reply.status))
        return refused(`${reply.status}: sent elsewhere, but not with the message (307 or 308)`);
      const next = new URL(where, to);
      if (to.protocol === 'https:' && next.protocol !== 'https:')
        return refused(`${reply.status}: sent on to ${next.origin}, which is not encrypted`);
      to = next;
    }
    return refused(`sent on more than ${MOST_REDIRECTS} times`);
  } catch (error) {
    return { outcome: 'later', words: oneLine(reasonOf(error)) };
  }
}

const refused = (words: string): Sent => ({ outcome: 'refused', words });

async function judged(reply: Response): Promise<Sent> {
  const said = oneLine(`${reply.status} ${reply.statusText} ${await beginningOf(reply)}`);
  if (reply.ok) return { outcome: 'delivered', words: said };
  const later = reply.status >= 500 || LATER.has(reply.status);
  return { outcome: later ? 'later' : 'refused', words: said };
}

/** As much of the answer as a screen can show; whoever answers without end is not listened to. */
async function beginningOf({ body }: Response): Promise<string> {
  if (body === null) return '';
  let bytes = Buffer.alloc(0);
  try {
    for await (const piece of body) {
      bytes = Buffer.concat([bytes, piece]);
      if (bytes.length >= MOST_READ) break;
    }
  } catch {
    // The status was heard; the rest of the words is no part of it.
  }
  return bytes.subarray(0, MOST_READ).toString('utf8');
}

/** The reason under "fetch failed". Node's are of host and port; they hold no path and no query. */
function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (error.name === 'TimeoutError') return `no answer within ${PATIENCE / 1000} s`;
  const { cause } = error;
  if (cause instanceof AggregateError) return reasonOf(cause.errors[0]);
  if (cause instanceof Error) return cause.message;
  return error instanceof TypeError ? 'not an address that can be asked' : error.message;
}
