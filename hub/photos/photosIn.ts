import { createHash } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { kindOf, mediaTypes, PHOTO_NAME } from './photoKind.ts';

/** Bytes of one photo. Ours: the page shrinks each to about a quarter of it. */
export const MOST_PHOTO = 2 * 1024 * 1024;
/** Bytes of all photos: some thousands, and a small part of any card. Ours. */
const MOST_OF_ALL = 1024 * 1024 * 1024;
/** A photo that was sent and never said to belong to anything is let go of after a day. Ours. */
const UNUSED = 86_400_000; // ms

/** A picture that cannot be kept; `message` is one sentence for the person who sent it. */
export class PhotoRefused extends Error {
  readonly status: number;
  constructor(status: number, sentence: string) {
    super(sentence);
    this.status = status;
  }
}

export type Photos = ReturnType<typeof photosIn>;

/**
 * Photos in a folder of their own beside the store, each under the hash of its bytes, so that one
 * that is sent twice is kept once and none can take another's place. Whoever refers to photos says
 * so with `usedBy`; one that nobody uses is deleted.
 * @param most bytes of all photos together
 */
export function photosIn(folder: string, now: () => number, most: number = MOST_OF_ALL) {
  const users: (() => Iterable<string>)[] = [];
  const names = () => {
    try {
      return readdirSync(folder);
    } catch {
      return []; // nothing was kept yet
    }
  };
  const bytes = () =>
    names().reduce((sum, name) => sum + (statOf(join(folder, name))?.size ?? 0), 0);
  const inUse = (name: string) => users.some((of) => [...of()].includes(name));
  /** Stands beside a photo that was sent and belongs to nothing yet. */
  const waiting = (name: string) => join(folder, `${name}.waiting`);
  const wait = (name: string) => {
    writeFileSync(waiting(name), '');
    utimesSync(waiting(name), new Date(now()), new Date(now())); // by the farm's clock, as `sweep`
  };
  const remove = (name: string) => {
    rmSync(join(folder, name), { force: true });
    rmSync(waiting(name), { force: true });
  };
  /** @throws PhotoRefused where the card takes nothing */
  const keep = (name: string, picture: Uint8Array) => {
    const part = join(folder, `${name}.part`);
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      wait(name);
      const file = openSync(part, 'w', 0o600);
      try {
        writeFileSync(file, picture);
        fsyncSync(file);
      } finally {
        closeSync(file);
      }
      renameSync(part, join(folder, name));
    } catch (error) {
      rmSync(part, { force: true });
      const { code } = error as NodeJS.ErrnoException;
      throw new PhotoRefused(507, `Expected a card that takes a photo, got ${code ?? error}`);
    }
  };
  const has = (name: string) => PHOTO_NAME.test(name) && statOf(join(folder, name)) !== undefined;

  return {
    /** @param of names that somebody refers to; asked whenever one may be deleted */
    usedBy(of: () => Iterable<string>) {
      users.push(of);
    },
    has,
    bytes,
    /** Something refers to it from now on: it stays until it is let go of. */
    adopt: (name: string) => rmSync(waiting(name), { force: true }),
    /**
     * Keeps a picture; it is on the disk when this returns.
     * @throws PhotoRefused for what is no picture, is too large, or does not fit any more
     */
    put(picture: Uint8Array): string {
      const kind = kindOf(picture);
      if (kind === null)
        throw new PhotoRefused(415, 'Expected a JPEG, PNG or WebP picture, got something else');
      if (picture.length > MOST_PHOTO)
        throw new PhotoRefused(
          413,
          `Expected a picture of at most ${MOST_PHOTO} bytes, got ${picture.length}`,
        );
      const name = `${createHash('sha256').update(picture).digest('hex')}.${kind}`;
      if (has(name)) {
        if (statOf(waiting(name)) !== undefined) wait(name); // sent again just now
        return name;
      }
      if (bytes() + picture.length > most)
        throw new PhotoRefused(
          507,
          `Expected room for a photo among ${most} bytes, got none: withdraw old ones first`,
        );
      keep(name, picture);
      return name;
    },
    /** The picture and what kind it is; undefined for one that is not kept. */
    get(name: string): { readonly bytes: Buffer; readonly type: string } | undefined {
      const kind = PHOTO_NAME.exec(name)?.[1] as keyof typeof mediaTypes | undefined;
      if (kind === undefined) return undefined;
      try {
        return { bytes: readFileSync(join(folder, name)), type: mediaTypes[kind] };
      } catch {
        return undefined;
      }
    },
    /** Somebody no longer refers to it: it is deleted unless another does. */
    letGo(name: string): boolean {
      if (!PHOTO_NAME.test(name) || inUse(name)) return false;
      remove(name);
      return true;
    },
    /**
     * Deletes what was sent more than a day ago and never came to belong to anything. What did is
     * left alone, even where a store that was mended no longer tells of it.
     * @returns how many
     */
    sweep(): number {
      const old = names().flatMap((file) => {
        const name = file.replace(/\.waiting$/, '');
        if (name === file || !PHOTO_NAME.test(name) || inUse(name)) return [];
        const sent = statOf(waiting(name))?.mtimeMs ?? now();
        return Math.abs(now() - sent) > UNUSED ? [name] : [];
      });
      for (const name of old) remove(name);
      return old.length;
    },
  };
}

function statOf(path: string) {
  return statSync(path, { throwIfNoEntry: false });
}
