/** What became of one try to send: delivered, not now, or never in this form. */
export type Sent = {
  readonly outcome: 'delivered' | 'later' | 'refused';
  /** What the other side said, or what went wrong on the way. */
  readonly words: string;
};

const LONGEST = 300; // characters

/** Somebody else's words, on one line, cut to a length that fits a screen. */
export const oneLine = (text: string): string =>
  text
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .trim()
    .slice(0, LONGEST);
