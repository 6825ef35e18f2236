import type { ComponentType } from 'preact';
import { ReadyWhen } from './ReadyWhen.tsx';

/** What a batch's card shows below its words, besides the batch itself: when it will be ready, and the like. */
export const cardParts: readonly ComponentType<{ id: string }>[] = [ReadyWhen];

/** The field of a note for a picture; tells the name under which the hub keeps it, null for none. */
export const photoField: {
  Field: ComponentType<{ onPhoto: (name: string | null) => void }> | null;
} = { Field: null };
