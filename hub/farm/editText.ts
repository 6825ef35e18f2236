import {
  Document,
  isMap,
  isScalar,
  isSeq,
  parseDocument,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { sameValue } from './sameValue.ts';

export type Edited = {
  readonly text: string;
  /** Comments of the text before that stand in no part that is left. */
  readonly lost: readonly string[];
};
type Fields = Record<string, unknown>;
/** A value before, after, and after as it is to be written: with what the schema fills in left out. */
type Step = { readonly before: unknown; readonly after: unknown; readonly write: unknown };

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What tells the items of a list apart, each in its own kind of list. */
const NAMES = ['id', 'topic', 'day', 'of', 'crop', 'quantity'];
const nameOf = (item: unknown): string | null => {
  if (!isFields(item)) return null;
  const field = NAMES.find((name) => typeof item[name] === 'string');
  return field === undefined ? null : String(item[field]);
};

/** Names of all items, when each has one of its own. */
function namesOf(list: readonly unknown[]): string[] | null {
  const names = list.map(nameOf);
  const all = names.filter((name) => name !== null);
  return all.length === list.length && new Set(all).size === all.length ? all : null;
}

/**
 * The text of a farm file with another description in it. Only what differs is written anew: comments
 * and order of all else stay as somebody wrote them; spaces within brackets become the usual ones.
 *
 * @param text the file before; none makes a new one.
 * @param before what it says, checked, and `after` what it is to say; `write` the same as it was given.
 */
export function editText(text: string | undefined, { before, after, write }: Step): Edited {
  if (text === undefined) return { text: new Document(write).toString({ lineWidth: 0 }), lost: [] };
  const document = parseDocument(text, { logLevel: 'error' });
  const kept = commentsOf(document);
  if (isMap(document.contents)) editMap(document, document.contents, { before, after, write });
  const now = commentsOf(document);
  const lost = kept.filter((comment) => {
    const at = now.indexOf(comment);
    if (at >= 0) now.splice(at, 1); // two alike are two
    return at < 0;
  });
  return { text: document.toString({ lineWidth: 0 }), lost };
}

function editMap(document: Document, map: YAMLMap, { before, after, write }: Step) {
  const [was, is, told] = [before, after, write] as Fields[];
  const fields = new Set([...Object.keys(was ?? {}), ...Object.keys(is ?? {})]);
  for (const field of fields) {
    const step = { before: was?.[field], after: is?.[field], write: told?.[field] };
    if (sameValue(step.before, step.after)) continue;
    const node = map.get(field, true) as unknown;
    if (step.write === undefined) map.delete(field);
    else if (isMap(node) && isFields(step.before) && isFields(step.after))
      editMap(document, node, step);
    else if (isSeq(node) && editList(document, node, step)) continue;
    else if (isScalar(node) && typeof step.write !== 'object') node.value = step.write;
    else map.set(field, document.createNode(step.write, { flow: map.flow === true }));
  }
}

/** @returns false for a list whose items have no names: it is written anew. */
function editList(document: Document, list: YAMLSeq, { before, after, write }: Step): boolean {
  if (!Array.isArray(before) || !Array.isArray(after) || !Array.isArray(write)) return false;
  const [were, are] = [namesOf(before), namesOf(after)];
  if (were === null || are === null || list.items.length !== before.length) return false;
  const flow = list.items.some((item) => isMap(item) && item.flow === true);
  list.items = are.map((name, i) => {
    const at = were.indexOf(name);
    const node = at < 0 ? undefined : list.items[at];
    if (!isMap(node)) return document.createNode(write[i], { flow });
    editMap(document, node, { before: before[at], after: after[i], write: write[i] });
    return node;
  });
  return true;
}

/** Every comment line by line, as often as it stands there. */
function commentsOf(document: Document): string[] {
  const found: string[] = [];
  const take = (one: { comment?: string | null; commentBefore?: string | null }) => {
    for (const text of [one.commentBefore, one.comment])
      found.push(...(text ?? '').split('\n').map((line) => line.trim()));
  };
  take(document);
  visit(document, { Node: (_, node) => take(node) });
  return found.filter((line) => line !== '');
}
