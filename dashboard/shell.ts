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
const SHELL = '/shell.js';
const PAGE = '/'; // one page serves every address outside /api
const PATIENCE = 5_000; // ms; ours: then the kept page is shown and says itself that there is no link

scope.addEventListener('install', (event) => {
  event.waitUntil(
    newestPage()
      .then(keep)
      .then(() => scope.skipWaiting()),
  );
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(scope.clients.claim());
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.location.origin) return;
  if (pathname.startsWith('/api/') || pathname === '/metrics') return;
  if (request.mode === 'navigate') event.respondWith(page(event));
  else if (pathname.startsWith('/assets/')) event.respondWith(asset(request));
});

// The newest page where the hub answers, so that an update is never hidden by the kept one.
async function page(event: Fetching): Promise<Response> {
  try {
    const response = await newestPage();
    event.waitUntil(keep(response.clone()));
    return response;
  } catch {
    return (await (await caches.open(STORE)).match(PAGE)) ?? Response.error();
  }
}

async function newestPage(): Promise<Response> {
  const response = await fetch(PAGE, { signal: AbortSignal.timeout(PATIENCE) });
  if (!response.ok) throw new Error(`Expected the page, got status ${response.status}`);
  return response;
}

// Every file of the build is kept, those of pages nobody has opened yet as well: without a link they
// can be opened for the first time.
async function keep(response: Response) {
  const store = await caches.open(STORE);
  const before = await store.match(PAGE);
  if (before && (await before.text()) === (await response.clone().text())) return;
  const answer = await fetch('/files.json', { signal: AbortSignal.timeout(PATIENCE) });
  const files = namesIn((await answer.json()) as Built);
  const had = new Set((await store.keys()).map(({ url }) => new URL(url).pathname));
  await store.addAll(files.filter((name) => !had.has(name)));
  await store.put(PAGE, response);
  // Only once the new build is here whole may the files of the old one go.
  for (const kept of await store.keys()) {
    const { pathname } = new URL(kept.url);
    if (pathname !== PAGE && !files.includes(pathname)) await store.delete(kept);
  }
}

type Built = Record<string, { readonly file: string; readonly css?: readonly string[] }>;
const namesIn = (built: Built) =>
  [...new Set(Object.values(built).flatMap(({ file, css = [] }) => [file, ...css]))]
    .map((name) => `/${name}`)
    .filter((name) => name !== SHELL);

// The name of such a file changes with its content: one that is kept is the right one.
async function asset(request: Request): Promise<Response> {
  const store = await caches.open(STORE);
  const had = await store.match(request);
  if (had) return had;
  const response = await fetch(request);
  if (response.ok) await store.put(request, response.clone());
  return response;
}
