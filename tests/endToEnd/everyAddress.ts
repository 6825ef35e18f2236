import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './hubProcess.ts';

// Read from the list that makes the routes, so that a page which is added is walked to by itself.

const EXAMPLES: Readonly<Record<string, readonly string[]>> = {
  '/places/:id': ['/places/long-house', '/places/south-patch', '/places/cool-room'],
  '/how/:name': ['/how/dewPoint'],
  '/set-up/:step': ['/set-up/position', '/set-up/places', '/set-up/crops', '/set-up/changes'],
};

/** An address for every page of the dashboard; one with a `:` needs an example here. */
export function everyAddress(): string[] {
  const list = readFileSync(join(root, 'dashboard', 'pages', 'index.ts'), 'utf8');
  const paths = [...list.matchAll(/\bpath: '([^']+)'/g)].map(([, path = '']) => path);
  if (paths.length < 20) throw new Error(`Expected the list of pages, got ${paths.length} of them`);
  return paths.flatMap((path) => {
    const examples = path.includes(':') ? EXAMPLES[path] : [path];
    if (examples === undefined) throw new Error(`Expected an example for ${path}, got none`);
    return examples;
  });
}
