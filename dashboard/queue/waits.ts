import { computed, signal } from '@preact/signals';
import { who } from '../state.ts';
import { allIn, dropIn, putIn, within } from './database.ts';

/** Something a person said, until the hub has answered it. */
export type Said = {
  /** Its place in the order. */
  readonly turn: number;
  /** The name it goes under each time, so that the hub enters it once. */
  readonly key: string;
  readonly method: 'POST' | 'PATCH';
  readonly path: string;
  /** Photos that wait as well are named `waiting:…` in it. */
  readonly body: unknown;
  /** What it is, in words of the moment it was said. */
  readonly words: string;
  /** Who said it; null on a hub that nobody signs in to. */
  readonly by: string | null;
  /** When, ms: by the hub's clock, and by this browser's. */
  readonly at: number;
  readonly wall: number;
  /** Tries that had no answer. */
  readonly tries: number;
  /** The hub's sentence, once it has refused it. */
  readonly refused: string | null;
  /** The tab whose form is still open, and until when (wall clock) it alone sends this; 0 once it waits. */
  readonly tab: string;
  readonly held: number;
};

const waitingRows = signal<readonly Said[]>([]);
/** Whose entries may be shown and sent here: never those of somebody else who used this browser. */
export const isOwn = ({ by }: Pick<Said, 'by'>) => who.value !== null && by === who.value.name;
/** What waits, and what was refused, of the person who is here, in order. */
export const waiting = computed(() =>
  waitingRows.value.filter((one) => isOwn(one) && one.held < Date.now()),
);
/** How many entries of others wait here, by their names. */
export const ofOthers = computed(() => {
  const counts = new Map<string, number>();
  for (const one of waitingRows.value)
    if (one.by !== null && !isOwn(one)) counts.set(one.by, (counts.get(one.by) ?? 0) + 1);
  return [...counts];
});

const others = 'BroadcastChannel' in globalThis ? new BroadcastChannel('dewpost waiting') : null;

export async function reread(): Promise<readonly Said[]> {
  try {
    waitingRows.value = await allIn<Said>('waiting');
  } catch {
    waitingRows.value = []; // a browser that keeps nothing
  }
  return waitingRows.value;
}
/** Other tabs change what waits, too. */
export function startWaits(): Promise<readonly Said[]> {
  others?.addEventListener('message', () => reread());
  return reread();
}

async function changed() {
  await reread();
  others?.postMessage('changed');
}

export async function addSaid(said: Omit<Said, 'turn'>): Promise<Said> {
  const turn = Number(await putIn('waiting', said));
  await changed();
  return { ...said, turn };
}
/** Changes one that still waits: one that was sent meanwhile does not come back. */
export async function changeSaid(turn: number, next: (kept: Said) => Said): Promise<void> {
  await within<undefined>('waiting', 'readwrite', (store) => {
    const asked: IDBRequest<Said | undefined> = store.get(turn);
    asked.onsuccess = () => {
      if (asked.result) store.put(next(asked.result));
    };
  });
  await changed();
}
export async function dropSaid({ turn, body }: Said): Promise<void> {
  await dropIn('waiting', turn);
  for (const name of photosIn(body)) await dropIn('photos', name);
  await changed();
}

/** Names of photos that wait on this device, wherever they stand in what was said. */
export const photosIn = (body: unknown): string[] => [
  ...new Set(JSON.stringify(body ?? null).match(/waiting:[0-9a-f]{32}/g) ?? []),
];
