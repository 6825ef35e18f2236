/** How what is kept is looked after. Times in ms since 1970. */
export type KeepingFacts = {
  readonly bytes: number;
  readonly freeBytes: number;
  readonly rawDays: number;
  readonly rawFrom: number | null;
  readonly backup: {
    readonly wanted: boolean;
    readonly at: number | null;
    readonly fault: string | null;
    readonly absent: boolean;
    readonly sameCard: boolean;
    /** The share of a copy that is written, 0 to 1; null while none is made. */
    readonly running: number | null;
  };
  readonly mended: {
    readonly at: number;
    readonly aside: string;
    readonly readings: number;
    readonly damaged: readonly string[];
    readonly backup: string | null;
  } | null;
};
