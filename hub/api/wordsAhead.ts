import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

type Built = Readonly<Record<string, { readonly file: string }>>;

/**
 * For each language the `Link` header (RFC 8288, relation `modulepreload`) that has a browser fetch its
 * words beside the page, not once the page has been read. Without a build: null for each.
 * @param pages folder of the built dashboard, with its list of files
 */
export function wordsAhead(pages: string): (language: string) => string | null {
  const list = join(pages, 'files.json');
  const built: Built = existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : {};
  return (language) => {
    const words = built[`../hub/words/${language}.ts`];
    return words ? `</${words.file}>; rel=modulepreload; crossorigin` : null;
  };
}
