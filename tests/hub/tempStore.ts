import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openStore, type Store } from '../../hub/store/index.ts';

/** A folder that is gone when the test is over. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A store in a file of its own. `again` opens the same file once more, as a restart does. */
export function tempStore(): { store: Store; path: string; again: () => Store } {
  const path = join(tempFolder(), 'dewpost.db');
  const opened: Store[] = [];
  const open = () => {
    const store = openStore(path);
    opened.push(store);
    return store;
  };
  const store = open();
  onTestFinished(() => {
    for (const one of opened) one.close();
  });
  return { store, path, again: open };
}
