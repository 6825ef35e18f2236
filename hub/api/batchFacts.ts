import {
  type Batch,
  type BatchFacts,
  type FaultAbout,
  factsFault,
  growingAt,
} from '../batches/index.ts';
import { roomWarning } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { nameOf } from './present.ts';

/** What somebody sends of a batch; a field left out is not said. Times ISO 8601. */
export type BatchSaid = {
  readonly [Key in Exclude<keyof BatchFacts, 'sownAt'>]?: BatchFacts[Key] | undefined;
} & { readonly sownAt?: string | undefined };

/** Fields that were said, with the time in ms. */
export function saidOfBatch({ sownAt, ...rest }: BatchSaid): Partial<BatchFacts> {
  const facts = { ...rest, ...(sownAt === undefined ? {} : { sownAt: Date.parse(sownAt) }) };
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
}

/** What entries are held against; a field is called as its command has it. */
export const aboutIn = (parts: ApiParts, command: string, now: number): FaultAbout => ({
  farm: parts.farm(),
  now,
  field: (name) => (command === '' ? name : `${command}.${name}`),
});

/** @throws Refused 400 with the sentence, where there is one */
export function unlessFault(sentence: string | null) {
  if (sentence !== null) throw new Refused(400, sentence);
}

/** What no schema of one field can see. @throws Refused 400 with the field */
export const checkBatch = (parts: ApiParts, facts: BatchFacts, command: string, now: number) =>
  unlessFault(factsFault(facts, aboutIn(parts, command, now)));

/**
 * What speaks against so many more trays in a place, in words: it holds fewer. null where nothing
 * does, or where nobody told how many it holds.
 */
export function roomFault(parts: ApiParts, place: string, trays: number): string | null {
  const capacity = parts.farm().place(place)?.capacity;
  if (capacity === undefined) return null;
  const would = standingTrays(parts, place) + trays;
  return would <= capacity ? null : roomWarning(nameOf(parts, place), would, capacity);
}

const sum = (batches: readonly Batch[]) =>
  batches.reduce((total, { traysLeft }) => total + traysLeft, 0);

/** Trays of batches that stand in a place now. */
export const standingTrays = (parts: ApiParts, place: string): number =>
  sum(growingAt(parts.batches.all(), place));
