import type { FarmBegun } from '../contract/index.ts';
import type { FarmFault } from '../farm/index.ts';

export type FarmSeen = {
  readonly faults: readonly FarmFault[];
  readonly changes: readonly string[];
  readonly lost: readonly string[];
};
export type FarmTaken = { readonly version: string; readonly changes: readonly string[] };
type Refusal = 'changed meanwhile' | { readonly faults: readonly FarmFault[] };
type Plain = Readonly<Record<string, unknown>>;

/** The farm's description, for people to look at and change. Times in ms since 1970. */
export type FarmDesk = {
  /** The farm file as it stands, with its comments. */
  readonly text: () => string | undefined;
  readonly read: () => { readonly version: string; readonly description: FarmBegun | null };
  readonly preview: (description: Plain) => FarmSeen;
  /** @param version that of the description it was made from. */
  readonly change: (
    version: string,
    description: Plain,
    who: string,
    now: number,
    why?: string,
  ) => FarmTaken | Refusal;
  /** The newest first. */
  readonly changes: () => readonly {
    readonly id: number;
    readonly t: number;
    readonly who: string;
    readonly words: readonly string[];
    readonly undoes: number | null;
    /** What the one who changed it gave as the reason. */
    readonly why: string | null;
    readonly undoable: boolean;
  }[];
  /** Puts the description before that change back, as a change of its own. */
  readonly undo: (
    id: number,
    version: string,
    who: string,
    now: number,
  ) => FarmTaken | Refusal | 'no such change' | 'nothing before it';
};
