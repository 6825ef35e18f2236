import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The scripts that stand inside the page itself, each as a source of Content Security Policy Level 3
 * (section 2.3.1): `'sha256-…'` of its text. No page, or none in it: empty.
 */
export function inlinedScripts(pages: string | null): string[] {
  const page = pages === null ? '' : join(pages, 'index.html');
  if (!existsSync(page)) return [];
  return [...readFileSync(page, 'utf8').matchAll(/<script>([^<]*)<\/script>/g)].map(
    ([, text = '']) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`,
  );
}
