import { sendDirectly } from './direct.ts';
import { Refusal } from './exchange.ts';
import { kindOf, known, say } from './queue/index.ts';
import { link } from './state.ts';
import { words } from './words.ts';

export { Refusal } from './exchange.ts';

/**
 * One request to the hub. Without a link, what is asked is what was known last (its age stands in the
 * banner), and what is told waits where it may. Its own hub's JSON is trusted to have the contract's
 * shape, which the hub checks on its way out; checking again here would put the schemas' library on
 * every phone.
 *
 * @throws Refusal with a sentence for the screen; Waits, which is one, for what was kept to be sent.
 */
export async function ask<Shape>(
  path: string,
  command?: unknown,
  method?: 'DELETE' | 'PATCH' | 'POST',
): Promise<Shape> {
  if (command === undefined && method === undefined) return (await known(path)) as Shape;
  const verb = method ?? 'POST';
  const kind = kindOf(verb, path);
  if (kind !== null && (verb === 'POST' || verb === 'PATCH'))
    return (await say(kind, { method: verb, path, body: command ?? {} })) as Shape;
  try {
    return (await sendDirectly(verb, path, command)) as Shape;
  } catch (error) {
    if (error instanceof Refusal && error.status === null && link.value.state === 'lost')
      throw new Refusal(null, words.queue.cannotWait);
    throw error;
  }
}

/**
 * What the hub says now, never what was known before: for who is about to change it.
 *
 * @throws Refusal with a sentence for the screen
 */
export const askNow = async <Shape>(path: string): Promise<Shape> =>
  (await sendDirectly('GET', path, undefined)) as Shape;
