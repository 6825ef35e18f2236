import type { Store } from '../store/index.ts';

/** Longer ago no delivery was planned. */
const REMEMBERED = 100 * 86_400_000; // ms

/** What somebody answered when a sowing was asked for; null where nobody did. */
export type SaidOf = (
  sowing: { readonly place: string; readonly delivery: string },
  cropName: string,
) => 'done' | 'no' | null;

/** Answers to tasks that asked to sow, of the time that a plan looks ahead. */
export function saidOf(store: Store, now: number): SaidOf {
  const said = new Map<string, 'done' | 'no'>();
  const key = (place: string | null, crop: string, delivery: string) =>
    `${place}\n${crop}\n${delivery}`;
  for (const { place, body } of store.journal.between('sowing-said', now - REMEMBERED, now + 1)) {
    const { answer, rows } = body as {
      answer: 'done' | 'no';
      rows: readonly { crop: string; delivery: string }[];
    };
    for (const { crop, delivery } of rows) said.set(key(place, crop, delivery), answer);
  }
  return ({ place, delivery }, crop) => said.get(key(place, crop, delivery)) ?? null;
}
