// What a phone has to fetch: gzipped bytes of all scripts and styles of the built dashboard, and of
// those the first page needs before it shows anything (named in index.html, or imported by those).

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { pagesFolder } from '../../hub/main/verbs/package.ts';
import { figure, remark } from './report.ts';

const kB = (files: Iterable<string>) => {
  let bytes = 0;
  for (const file of files) bytes += gzipSync(readFileSync(file)).length;
  return bytes / 1000;
};

export async function dashboardBytes() {
  if (!existsSync(pagesFolder)) {
    remark(`no dashboard in ${pagesFolder}: build it first`);
    return;
  }
  const all = readdirSync(pagesFolder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(js|css)$/.test(name))
    .map((name) => join(pagesFolder, name));
  const byName = new Map(all.map((file) => [basename(file), file]));
  const first = new Set<string>();
  const follow = (text: string, naming: RegExp) => {
    for (const [, name = ''] of text.matchAll(naming)) {
      const file = byName.get(basename(name));
      if (file === undefined || first.has(file)) continue;
      first.add(file);
      // `import"./x.js"` and `from"./x.js"` at once; `import("./x.js")` only when a page asks.
      if (file.endsWith('.js'))
        follow(readFileSync(file, 'utf8'), /(?:import|from)\s*["']([^"']+\.js)["']/g);
    }
  };
  const page = readFileSync(join(pagesFolder, 'index.html'), 'utf8');
  follow(page, /(?:src|href)="([^"]+\.(?:js|css))"/g);
  if (first.size === 0) throw new Error('Expected scripts named in index.html, got none');
  figure('dashboard-bytes-all', kB(all), 'kB');
  figure('dashboard-bytes-first', kB(first), 'kB');
}
