// The page's own files, kept by the browser, so that the address opens while the hub is away. Browsers
// allow this only over https or on the hub itself; elsewhere the page does without.

type Waiting = { waitUntil(work: Promise<unknown>): void };
type Fetching = Waiting & {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
};
type Scope = {
  addEventListener(name: 'install' | 'activate', hear: (event: Waiting) => void): void;
  addEventListener(name: 'fetch', hear: (event: Fetching) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  readonly location: Location;
};
const scope = self as unknown as Scope;

const STORE = 'dewpost page';
const PAGE = '/'; // one page serves every address outside /api
const PATIENCE = 5_000; // ms; ours: then the kept page is shown and says itself that there is no link

scope.addEventListener('install', (event) => {
  event.waitUntil(fetchPage().then(() => scope.skipWaiting()));
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(scope.clients.claim());
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.location.origin) return;
  if (pathname.startsWith('/api/') || pathname === '/metrics') return;
  if (request.mode === 'navigate') event.respondWith(page());
  else if (pathname.startsWith('/assets/')) event.respondWith(asset(request));
});

// The newest page where the hub answers, so that an update is never hidden by the kept one.
async function page(): Promise<Response> {
  try {
    return await fetchPage();
  } catch {
    return (await (await caches.open(STORE)).match(PAGE)) ?? Response.error();
  }
}

async function fetchPage(): Promise<Response> {
  const response = await fetch(PAGE, { signal: AbortSignal.timeout(PATIENCE) });
  if (!response.ok) throw new Error(`Expected the page, got status ${response.status}`);
  const text = await response.clone().text();
  const store = await caches.open(STORE);
  const before = await store.match(PAGE);
  if (before && (await before.text()) === text) return response;
  const files: string[] = text.match(/\/assets\/[^"']+/g) ?? [];
  await store.addAll(files);
  await store.put(PAGE, response.clone());
  // Only once the new build is here whole may the files of the old one go.
  for (const kept of await store.keys()) {
    const { pathname } = new URL(kept.url);
    if (pathname !== PAGE && !files.includes(pathname)) await store.delete(kept);
  }
  return response;
}

// The name of such a file changes with its content: one that is kept is the right one.
async function asset(request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  const had = await store.match(request);
  if (had) return had;
  const response = await fetch(request);
  if (response.ok) await store.put(request, response.clone());
  return response;
}
