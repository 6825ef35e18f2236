import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { type Constant, findConstants, withNumbersFrom } from './findConstants.ts';

/** A folder's tests and formulas as one script, its numbers in a list beside it. */
export type Bundle = {
  readonly folder: string;
  /** CommonJS that calls `__file(path)` before each test file and reads `__numbers`. */
  readonly code: string;
  readonly constants: readonly Constant[];
};

/** Names the script is given by whoever runs it. */
export const NUMBERS = '__numbers';
export const FILE = '__file';

const ENTRY = 'all-tests-of-a-folder';
// Rules over rules: slow, and not meant to hold the formulas.
const NOT_ASKED = new Set(['decide']);

const sourcesIn = (folder: string, ending: RegExp) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();

/** The folder's own tests, then those of other folders that import it. */
function testsOf(root: string, folder: string): string[] {
  const tests = join(root, 'tests', 'rules');
  const all = sourcesIn(tests, /\.test\.ts$/);
  const own = all.filter((path) => path.startsWith(join(tests, folder, '/')));
  const others = all.filter((path) => {
    const theirs = relative(tests, path).split('/')[0] ?? '';
    if (theirs === folder || NOT_ASKED.has(theirs)) return false;
    return readFileSync(path, 'utf8').includes(`/rules/${folder}/`);
  });
  return [...own, ...others];
}

/** Built in memory: the work tree is read and never written. */
export async function bundleTests(root: string, folder: string): Promise<Bundle> {
  const constants: Constant[] = [];
  const formulas = new Map<string, string>();
  for (const path of sourcesIn(join(root, 'rules', folder), /^(?!index\.).*\.ts$/)) {
    const text = readFileSync(path, 'utf8');
    const found = findConstants(relative(root, path), text);
    formulas.set(path, withNumbersFrom(NUMBERS, text, found, constants.length));
    constants.push(...found);
  }
  const tests = testsOf(root, folder);
  if (tests.length === 0) throw new Error(`Expected tests of rules/${folder}, got none`);

  const made = await build({
    configFile: false,
    root,
    logLevel: 'error',
    build: {
      ssr: true,
      write: false,
      minify: false,
      target: 'node20',
      rolldownOptions: {
        input: ENTRY,
        output: { format: 'cjs', codeSplitting: false },
        treeshake: false,
      },
    },
    plugins: [
      {
        name: 'numbers-from-a-list',
        enforce: 'pre',
        resolveId: (id) => (id === ENTRY ? `\0${ENTRY}` : null),
        load: (id) =>
          id === `\0${ENTRY}`
            ? tests.map((path) => `import ${JSON.stringify(path)};`).join('\n')
            : null,
        transform(code, id) {
          const url = JSON.stringify(pathToFileURL(id).href);
          const text = (formulas.get(id) ?? code).replaceAll('import.meta.url', url);
          return tests.includes(id)
            ? `${FILE}(${JSON.stringify(relative(root, id))});\n${text}`
            : text;
        },
      },
    ],
  });
  const outputs = Array.isArray(made) ? made : [made];
  const chunk = outputs.flatMap((one) => ('output' in one ? one.output : []))[0];
  if (chunk?.type !== 'chunk') throw new Error(`Expected a script of rules/${folder}, got none`);
  return { folder, code: chunk.code, constants };
}
