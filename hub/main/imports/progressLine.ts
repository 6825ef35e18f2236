/** How far long work is: what of the file is read, and what of it was refused. */
export type Progress = {
  /** 0..1 */
  readonly share: number;
  /** Lines read. */
  readonly rows: number;
  readonly refused: number;
};

type Terminal = {
  readonly isTTY?: boolean | undefined;
  write(text: string): unknown;
};

/** One line of a terminal that is written over, some times a second. Ours. */
const BETWEEN = 200; // ms

/**
 * Tells people at a terminal how far it is, on standard error, so that what a program reads stays clean.
 * Nothing without a terminal, or when it is to be quiet.
 */
export function progressLine(to: Terminal, quiet: boolean, steady: () => number) {
  const shows = to.isTTY === true && !quiet;
  let last = Number.NEGATIVE_INFINITY;
  return {
    tell({ share, rows, refused }: Progress) {
      if (!shows || steady() - last < BETWEEN) return;
      last = steady();
      const percent = Math.floor(100 * Math.min(1, share));
      to.write(`\r${percent} % read: ${rows} rows, ${refused} refused so far\u001b[K`);
    },
    /** Leaves the line empty for what is said next. */
    end() {
      if (shows && last !== Number.NEGATIVE_INFINITY) to.write('\r\u001b[K');
    },
  };
}
