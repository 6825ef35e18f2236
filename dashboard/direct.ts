import { exchange } from './exchange.ts';
import { makeKey } from './makeKey.ts';

const PATIENCE = 20_000; // ms; ours: a hub on the farm's network answers in well under a second

/** Commands that were sent and not answered, by what they say, with the key each went under. */
const unanswered = new Map<string, string>();

/** A tap after "no answer" is the same command again: under the same key it is entered once. */
function keyOf(said: string): string {
  const key = unanswered.get(said) ?? makeKey();
  unanswered.set(said, key);
  return key;
}

/** A command that cannot wait: sent now or not at all. @throws Refusal */
export async function sendDirectly(method: string, path: string, command: unknown) {
  if (command === undefined) return exchange(path, { method, patience: PATIENCE });
  const body = JSON.stringify(command);
  const said = `${method} ${path} ${body}`;
  const headers = {
    'content-type': 'application/json',
    // A string of RFC 8941, as draft-ietf-httpapi-idempotency-key-header has it.
    'idempotency-key': `"${keyOf(said)}"`,
  };
  const answer = await exchange(path, { method, body, headers, patience: PATIENCE });
  // What was refused was not entered, and the hub takes it again under its key.
  unanswered.delete(said);
  return answer;
}
