import type { ServerResponse } from 'node:http';
import { Refused } from './parts.ts';
import type { Session } from './sessions.ts';

/** A page that does not read is let go before it fills the memory. Bytes, ours. */
const MOST_UNREAD = 1024 * 1024;
/** Open pages of one person; then the one opened first is let go. Ours. */
const MOST_OF_ONE = 30;
/** Open pages in all. Ours: a farm has a handful. */
const MOST = 200;

export type Streams = ReturnType<typeof makeStreams>;

/** The pages that listen to what happens, and whose they are. */
export function makeStreams() {
  const pages = new Map<ServerResponse, Session | null>();
  const end = (page: ServerResponse) => {
    pages.delete(page);
    page.end();
  };
  return {
    /** @throws Refused 503 when too many listen already. */
    mayOpen() {
      if (pages.size >= MOST)
        throw new Refused(
          503,
          `Expected at most ${MOST} pages that listen, got one more: close some and try again`,
        );
    },
    open(page: ServerResponse, session: Session | null) {
      const others = [...pages].filter(([, whose]) => whose?.name === session?.name);
      if (others.length >= MOST_OF_ONE && others[0]) end(others[0][0]);
      pages.set(page, session);
      page.on('close', () => pages.delete(page));
    },
    send(text: string, only?: ServerResponse) {
      for (const page of only ? [only] : pages.keys()) {
        if (page.writableLength > MOST_UNREAD) {
          pages.delete(page);
          page.destroy();
        } else page.write(text);
      }
    },
    /** Ends those whose session is over. */
    endIf(isOver: (session: Session) => boolean) {
      for (const [page, session] of pages) if (session && isOver(session)) end(page);
    },
    endAll() {
      for (const page of pages.keys()) end(page);
    },
    count: () => pages.size,
  };
}
