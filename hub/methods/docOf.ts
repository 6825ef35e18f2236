// A docstring taken to pieces, as text.

export type Doc = {
  readonly words: readonly string[];
  readonly params: readonly { readonly name: string; readonly words: string }[];
  readonly returns: string | null;
  readonly throws: readonly string[];
  readonly sources: readonly string[];
};

const SOURCE = /\bSources?:\s*/;
// What a sentence has in it that says where something comes from: a year, a standard, or a plain
// word that there is no source.
const CITES =
  /\b1[89]\d\d\b|\b20\d\d\b|\bFAO\b|\bWMO\b|\bISO\b|\bASHRAE\b|\bours\b|\bno source\b|\bcommon practice\b|\bfrom memory\b|\bby definition\b|law of/i;

/** The text of a comment without its slashes and stars. */
export const plain = (comment: string): string =>
  comment
    .replace(/^\/\*\*?|\*\/$/g, '')
    .split('\n')
    .map((line) => line.replace(/^\s*(\/\/|\*(?!\/)) ?/, '').trimEnd())
    .join('\n')
    .trim();

const oneLine = (text: string) => text.replace(/\s+/g, ' ').trim();

/** What a comment says of a source: all after "Source:" up to the end of the paragraph. */
export const sourcesIn = (text: string): string[] =>
  text.split(/\n\s*\n/).flatMap((paragraph) => {
    const [, ...told] = paragraph.split(SOURCE);
    return told.map(oneLine).filter((words) => words !== '');
  });

/** Sentences that cite something, for comments that name a source without the word. */
export const citedIn = (text: string): string[] =>
  oneLine(text)
    .split(/(?<=[^A-Z][.;])\s+(?=[A-Z])/)
    .filter((sentence) => CITES.test(sentence));

export function docOf(comment: string): Doc {
  const [told = '', ...tags] = plain(comment).split(/^\s*@/m);
  const paragraphs = told.split(/\n\s*\n/).map((paragraph) => paragraph.split(SOURCE)[0] ?? '');
  const tagged = (name: string) =>
    tags.filter((tag) => new RegExp(`^${name}\\b`).test(tag)).map((tag) => rest(tag));
  return {
    words: paragraphs.map(oneLine).filter((words) => words !== ''),
    params: tagged('param').map((text) => {
      const [name = ''] = text.split(' ');
      return { name, words: text.slice(name.length).trim() };
    }),
    returns: tagged('returns')[0] ?? null,
    throws: tagged('throws'),
    sources: sourcesIn(told),
  };
}

const rest = (tag: string) => oneLine(tag.replace(/^\w+\s*/, ''));
