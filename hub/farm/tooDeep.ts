/** A farm file has four levels; these leave room for whatever somebody adds. Ours. */
const MOST_BRACKETS = 50;
/** Columns before the first word of a line: each level of a block takes at least one. */
const MOST_COLUMNS = 200;
/** Dashes, question marks and colons of one line, each of which may begin a level. */
const MOST_MARKS = 500;

/**
 * The first line on which YAML may be nested deeper than any farm file is; null when there is none.
 * Looked at as text, before the reader of YAML sees it: that one follows each level by calling
 * itself, and where its stack ends in the middle of a pattern Node aborts instead of throwing.
 */
export function tooDeep(text: string): number | null {
  let depth = 0;
  for (const [i, line] of text.split(/\r\n?|\n/).entries()) {
    const before = /^[ \t?:-]*/.exec(line)?.[0].length ?? 0;
    let marks = 0;
    for (const letter of line) {
      if (letter === '[' || letter === '{') depth++;
      else if (letter === ']' || letter === '}') depth = Math.max(0, depth - 1);
      else if (letter === '-' || letter === '?' || letter === ':') marks++;
      if (depth > MOST_BRACKETS) return i + 1;
    }
    if (before > MOST_COLUMNS || marks > MOST_MARKS) return i + 1;
  }
  return null;
}
