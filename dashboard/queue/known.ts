import { signal } from '@preact/signals';
import { exactNow } from '../clock.ts';
import { exchange, Refusal } from '../exchange.ts';
import { path as page } from '../router.ts';
import { link, who } from '../state.ts';
import { words } from '../words.ts';
import { isSecret, type Known, knownAt, mayKeep, remember } from './knownBook.ts';

// What the hub answers is remembered on this device, so that a page that was opened once can be read
// without a link, with its age.

const PATIENCE = 20_000; // ms; ours: a hub on the farm's network answers in well under a second
const READY = 3_000; // ms; ours: how long a page that is known waits while nobody knows of a link

/** When the oldest of what stands on a page was answered, by the hub's clock; by the page's address. */
type Ages = {
  readonly page: string;
  readonly of: ReadonlyMap<string, number>;
  /** Addresses that did not answer now: what stands there is from before. */
  readonly before: ReadonlySet<string>;
};
const ages = signal<Ages>({ page: '', of: new Map(), before: new Set() });
/** Whether something on the page at hand is from before, because the hub did not answer. */
export const showsBefore = (): boolean =>
  ages.value.page === page.value && ages.value.before.size > 0;
/** The oldest answer that the page at hand was made with, ms; null while it has none. */
export function oldestAnswer(): number | null {
  const { value } = ages;
  return value.page !== page.value || value.of.size === 0 ? null : Math.min(...value.of.values());
}
function shows(path: string, at: number, isBefore = false): void {
  const before = ages.peek();
  const here = page.peek();
  const of = new Map(before.page === here ? before.of : []);
  of.set(path, at);
  const then = new Set(before.page === here ? before.before : []);
  if (isBefore) then.add(path);
  else then.delete(path);
  ages.value = { page: here, of, before: then };
}

/** What an address of the hub answers, or answered last. @throws Refusal with a sentence for the screen */
export async function known(path: string): Promise<unknown> {
  const person = who.peek()?.name ?? null;
  const { state } = link.peek();
  const had = state === 'up' ? undefined : await knownAt(path, person);
  if (had !== undefined && state === 'lost') return again(path, had);
  try {
    const answer = await exchange(path, { patience: had ? READY : PATIENCE });
    const at = Math.round(exactNow());
    remember(path, person, answer, at);
    shows(path, at);
    return answer;
  } catch (error) {
    if (!(error instanceof Refusal) || error.status !== null) throw error;
    const last = had ?? (await knownAt(path, person));
    if (last === undefined) throw new Refusal(null, sentence(path));
    return again(path, last);
  }
}

function sentence(path: string): string {
  if (isSecret(path)) return words.queue.secretNotKept;
  return mayKeep(path) ? words.queue.neverOpened : words.state.noAnswer;
}

function again(path: string, { at, answer }: Known): unknown {
  shows(path, at, true);
  return JSON.parse(answer);
}
