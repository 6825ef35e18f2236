// The browser's own database (Indexed Database API, W3C): what waits to be sent, its photos, and what
// the hub last answered. A browser without one, or one that forbids it, keeps nothing, and says so.

const NAME = 'dewpost';
const VERSION = 1;

export type StoreName = 'waiting' | 'photos' | 'known' | 'turn';
const KEYS: Readonly<Record<StoreName, IDBObjectStoreParameters>> = {
  waiting: { keyPath: 'turn', autoIncrement: true },
  photos: { keyPath: 'name' },
  known: { keyPath: 'path' },
  turn: { keyPath: 'name' },
};

let opened: Promise<IDBDatabase> | undefined;

/** @throws where the browser has none, or does not let this page use it */
function database(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((resolve, reject) => {
    const asked = indexedDB.open(NAME, VERSION);
    asked.onupgradeneeded = () => {
      for (const [name, how] of Object.entries(KEYS)) asked.result.createObjectStore(name, how);
    };
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => {
      const { result } = asked;
      const forget = () => {
        opened = undefined;
      };
      // A newer page in another tab must not wait for this one.
      result.onversionchange = () => {
        result.close();
        forget();
      };
      result.onclose = forget;
      resolve(result);
    };
  });
  opened.catch(() => {
    opened = undefined;
  });
  return opened;
}

/**
 * Work on one store in one transaction; what it returns is there once all of it is kept. Requests only
 * within: a transaction ends by itself when it is waited for anything else.
 */
export async function within<Result>(
  name: StoreName,
  mode: 'readonly' | 'readwrite',
  work: (store: IDBObjectStore, done: (result: Result) => void) => void,
): Promise<Result> {
  const database_ = await database();
  return new Promise<Result>((resolve, reject) => {
    let result: Result;
    // Strict: on the disk, not on its way there, when the page says that it is kept.
    const change = database_.transaction(name, mode, { durability: 'strict' });
    change.oncomplete = () => resolve(result);
    change.onabort = () =>
      reject(change.error ?? new Error('Expected room to keep this, got none'));
    work(change.objectStore(name), (got) => {
      result = got;
    });
  });
}

/** Everything in a store, in the order of its keys. */
export const allIn = <Row>(name: StoreName) =>
  within<Row[]>(name, 'readonly', (store, done) => {
    const asked: IDBRequest<Row[]> = store.getAll();
    asked.onsuccess = () => done(asked.result);
  });

export const oneIn = <Row>(name: StoreName, key: IDBValidKey) =>
  within<Row | undefined>(name, 'readonly', (store, done) => {
    const asked: IDBRequest<Row | undefined> = store.get(key);
    asked.onsuccess = () => done(asked.result);
  });

export const putIn = (name: StoreName, row: unknown) =>
  within<IDBValidKey>(name, 'readwrite', (store, done) => {
    const asked = store.put(row);
    asked.onsuccess = () => done(asked.result);
  });

export const dropIn = (name: StoreName, key: IDBValidKey | IDBKeyRange) =>
  within<undefined>(name, 'readwrite', (store) => {
    store.delete(key);
  });
