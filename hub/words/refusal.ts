import { refused, wantedSaid, withUnit } from './index.ts';

/** The parts of a schema's complaint that a sentence needs. */
export type Complaint = {
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly code?: string | undefined;
  readonly keys?: readonly string[] | undefined;
};

const LONGEST = 60; // characters of a refused value shown back

/** A value as it was sent, short enough for one line. */
export function shown(value: unknown): string {
  if (value === undefined) return refused.nothing;
  let text: string;
  try {
    text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  } catch {
    text = refused.tooDeep;
  }
  return text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…`;
}

const at = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    root,
  );

/** A field's name; one that somebody made up may hold anything, or be as long as a page. */
const named = (key: string) => (/^[\p{L}\p{N}_ -]{1,60}$/u.test(key) ? key : shown(key));

const dotted = (path: readonly PropertyKey[]) =>
  path
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${named(String(key))}`))
    .join('')
    .replace(/^\./, '');

/** Never shown back, not even to who sent it: an answer may end up in a log. */
const SECRET = new Set<PropertyKey>([
  'password',
  'newPassword',
  'code',
  'webhookSecret',
  'webhook',
  'url',
]);
const got = (root: unknown, path: readonly PropertyKey[], secret: boolean) =>
  secret || path.some((key) => SECRET.has(key)) ? refused.another : shown(at(root, path));

/**
 * "Expected number in places[0].limit, got "cold"": field, value and what was expected.
 *
 * @param secret no value is shown, because any of them may be a password in the wrong field.
 */
export function refusal(complaint: Complaint, root: unknown, where = '', secret = false): string {
  const { path, code, keys } = complaint;
  if (code === 'unrecognized_keys' && keys?.length) {
    const field = dotted([...path, keys[0] ?? '']);
    const sent = got(root, [...path, keys[0] ?? ''], secret);
    return refused.sentence(refused.noField(field), where, sent);
  }
  const wanted = inWords(refused.wants, wantedBy(complaint));
  const field = path.length === 0 ? '' : refused.inField(dotted(path));
  return refused.sentence(wanted, `${field}${where}`, got(root, path, secret));
}

// Schemas say "Invalid input: expected X, received Y" or "Too small: expected X"; ours say "expected X".
const wantedBy = ({ message }: Complaint) =>
  message
    .replace(/^[^:]*: (?=expected)/i, '')
    .replace(/, received .*$/, '')
    .replace(/^expected /i, '')
    .replace(/^Invalid (.*)$/, (_, what: string) => refused.valid(what));

const inWords = (table: typeof wantedSaid, wanted: string) =>
  table.reduce((said, [from, to]) => said.replace(from, to), wanted);

/** The same complaint, to stand beside the field on a page: without its name in the file. */
export const refusalBeside = (complaint: Complaint, root: unknown): string =>
  saidBeside(wantedBy(complaint), at(root, complaint.path));

/** @param wanted as in a sentence about a file; said in words of a page. */
export const saidBeside = (wanted: string, value: unknown): string =>
  refused.sentence(inWords(wantedSaid, wanted), '', sharesTogether(value) ?? shown(value));

/** Parts of a mix are told by what they come to: `120 %`; null for what is no such list. */
function sharesTogether(value: unknown): string | null {
  if (!Array.isArray(value) || value.length === 0) return null;
  const shares = value.map((part: { share?: unknown } | null) => part?.share);
  if (!shares.every((share) => typeof share === 'number')) return null;
  return withUnit(
    shares.reduce((sum, share) => sum + share * 100, 0),
    '%',
    0,
  );
}
