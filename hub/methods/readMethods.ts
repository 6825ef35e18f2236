import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Method, MethodConstant } from '../contract/index.ts';
import { citedIn, docOf, plain, sourcesIn } from './docOf.ts';
import { type Named, readFile, type SourceFile } from './readFile.ts';

type Found = { readonly file: SourceFile; readonly named: Named };

/**
 * Every exported formula of rules/, as its docstring, its comments and its constants tell it.
 * @param root the folder that holds rules/
 * @throws Error when there is no formula at all, so that an empty list is never taken for the list
 */
export function readMethods(root: string): readonly Method[] {
  const files = readdirSync(join(root, 'rules'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /^(?!index\.).*\.ts$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => readFile(relative(root, path), readFileSync(path, 'utf8')))
    .sort((a, b) => a.path.localeCompare(b.path));

  const formulas = new Map<string, Found>();
  const constants = new Map<string, Named>();
  for (const file of files) {
    for (const named of file.named.values()) {
      if (!named.exported || isPlumbing(file.path, named)) continue;
      if (!named.formula) constants.set(named.name, named);
      else if (formulas.has(named.name))
        formulas.set(`${folderOf(file)}.${named.name}`, { file, named });
      else formulas.set(named.name, { file, named });
    }
  }
  if (formulas.size === 0) throw new Error(`Expected formulas in ${join(root, 'rules')}, got none`);

  const methods = [...formulas].map(([name, found]) => methodOf(name, found, formulas, constants));
  const byName = new Map(methods.map((method) => [method.name, method]));
  /** Steps of the code that hold no knowledge of their own are passed over in what is shown. */
  const tells = (name: string) => (byName.get(name)?.sources.length ?? 0) > 0;
  return methods.map((method) => ({
    ...method,
    sources: method.sources.length > 0 ? method.sources : borrowed(method, byName),
    uses: method.uses.filter(tells),
    usedBy: methods.filter(({ uses }) => uses.includes(method.name)).map(({ name }) => name),
  }));
}

// Units, guards and the ways an answer is written: they hold no formula, and every formula uses them.
const PLUMBING = /^rules\/(\w+|decide\/(how|say))\.ts$/;
const GUARD = /^(expect[A-Z]|orUnknown|ofKnown$)/;
const isPlumbing = (path: string, { name, formula, docstring }: Named) =>
  PLUMBING.test(path) || GUARD.test(name) || (formula && docstring === null);

/** `rules/air/dewPoint.ts` lives in air; a file in the open has no folder. */
const folderOf = ({ path }: SourceFile) =>
  path.split('/').length > 2 ? (path.split('/')[1] ?? '') : '';

function methodOf(
  name: string,
  { file, named }: Found,
  formulas: ReadonlyMap<string, Found>,
  constants: ReadonlyMap<string, Named>,
): Method {
  const near = reached(file, named);
  const inside = near.filter((one) => one === named || !toldApart(one));
  const mentions = new Set(inside.flatMap((one) => [...one.mentions]));
  const own = near.filter((one) => !one.formula).sort((a, b) => a.line - b.line);
  const foreign = [...file.imported].filter((word) => mentions.has(word));
  const doc = docOf(named.docstring ?? '');
  const limits = foreign.flatMap((word) => constants.get(word) ?? []);
  const built = foreign.filter((word) => formulas.has(word));
  const siblings = near.map((one) => one.name).filter((word) => formulas.has(word));
  return {
    name,
    folder: folderOf(file),
    file: file.path,
    line: named.line,
    words: [...doc.words],
    params: [...doc.params],
    returns: doc.returns,
    throws: [...doc.throws],
    constants: [...own, ...limits].flatMap(constantOf),
    sources: ownSources(doc.sources, named, [...inside, ...limits], file).map((words) => ({
      words,
      of: null,
    })),
    uses: [...new Set([...siblings, ...built])].filter((word) => word !== name).sort(),
    usedBy: [],
  };
}

/** Has a page of its own, and so its constants and sources there. */
const toldApart = ({ formula, exported, docstring }: Named) =>
  formula && exported && docstring !== null;

/** The formula, and all of its file that it leans on, up to formulas told apart. */
function reached({ named }: SourceFile, from: Named): Named[] {
  const found = new Set([from]);
  for (const one of found) {
    if (one !== from && toldApart(one)) continue;
    for (const word of one.mentions) {
      const next = named.get(word);
      if (next) found.add(next);
    }
  }
  return [...found];
}

function constantOf({ name, value, beside, docstring }: Named): MethodConstant[] {
  if (value === null || !/\d/.test(value) || /^['"`]/.test(value)) return [];
  const said = [docstring === null ? '' : plain(docstring), ...beside];
  return [{ name, value, words: said.join(' ').replace(/\s+/g, ' ').trim() }];
}

/** What the docstring calls its source; else what the file's comments do; else what either cites. */
function ownSources(
  told: readonly string[],
  named: Named,
  near: readonly Named[],
  file: SourceFile,
): readonly string[] {
  if (told.length > 0) return told;
  const [first] = file.named.values();
  const header = first?.comments.filter((comment) => !first.beside.includes(comment)) ?? [];
  const comments = [...new Set([...header, ...near.flatMap((one) => one.comments)])];
  const marked = comments.flatMap(sourcesIn);
  if (marked.length > 0) return marked;
  const doc = named.docstring === null ? [] : citedIn(plain(named.docstring));
  const docs = near.flatMap(({ docstring }) => (docstring === null ? [] : [plain(docstring)]));
  const found = [...doc, ...comments.flatMap(citedIn), ...docs.flatMap(citedIn)];
  return [...new Set(found)];
}

/** A formula that names no source has those of what it is built on, nearest first. */
function borrowed(method: Method, byName: ReadonlyMap<string, Method>): Method['sources'] {
  const seen = new Set([method.name]);
  let layer = method.uses;
  while (layer.length > 0) {
    const met = layer.flatMap((name) => byName.get(name) ?? []);
    const sources = met.flatMap(({ name, sources: told }) =>
      told.map(({ words }) => ({ words, of: name })),
    );
    if (sources.length > 0) return sources;
    for (const name of layer) seen.add(name);
    layer = [...new Set(met.flatMap(({ uses }) => uses))].filter((name) => !seen.has(name));
  }
  return [];
}
