/** Why the store cannot keep what it is given. */
export type Trouble = 'full' | 'read-only' | 'damaged' | 'gone' | 'failing';

/** The file is not where it was put: what is written to it now would be lost with the process. */
export class StoreGone extends Error {}

/** What is read is a copy; the file itself cannot be written. */
export class StoreElsewhere extends Error {
  readonly trouble: Trouble;
  constructor(trouble: Trouble, path: string) {
    super(`Expected to write to the store in ${path}, got a card in trouble: ${trouble}`);
    this.trouble = trouble;
  }
}

/** SQLite's result codes (sqlite.org/rescode.html) and those of the system, by their beginning. */
const codes: readonly (readonly [string, Trouble])[] = [
  ['SQLITE_FULL', 'full'],
  ['ENOSPC', 'full'],
  ['EDQUOT', 'full'],
  ['SQLITE_READONLY', 'read-only'],
  ['EROFS', 'read-only'],
  ['SQLITE_CORRUPT', 'damaged'],
  ['SQLITE_NOTADB', 'damaged'],
  ['SQLITE_CANTOPEN', 'gone'],
  ['SQLITE_IOERR', 'failing'],
  ['EIO', 'failing'],
];

/** What an error says about the card or its file; null when it is about something else. */
export function troubleOf(error: unknown): Trouble | null {
  if (error instanceof StoreGone) return 'gone';
  if (error instanceof StoreElsewhere) return error.trouble;
  const code = (error as { code?: unknown } | null)?.code;
  if (typeof code !== 'string') return null;
  return codes.find(([beginning]) => code.startsWith(beginning))?.[1] ?? null;
}
