import { signal } from '@preact/signals';

// Addresses and the page they belong to, by the browser's history; the hub serves index.html for
// every address outside /api.

export type Params = Readonly<Record<string, string>>;

/** `/places/:id` against `/places/long-house` gives `{ id: 'long-house' }`; null when it does not fit. */
export function match(pattern: string, path: string): Params | null {
  const wanted = pieces(pattern);
  const given = pieces(path);
  if (wanted.length !== given.length) return null;
  const params: Record<string, string> = {};
  for (const [i, piece] of wanted.entries()) {
    const got = given[i] ?? '';
    if (piece.startsWith(':')) {
      const plain = decoded(got);
      if (plain === null) return null;
      params[piece.slice(1)] = plain;
    } else if (piece !== got) return null;
  }
  return params;
}

const pieces = (path: string) => path.split('/').filter((piece) => piece !== '');

// A stray % in an address is a wrong address, not a broken page.
function decoded(piece: string): string | null {
  try {
    return decodeURIComponent(piece);
  } catch {
    return null;
  }
}

/** The first route whose pattern fits, with what stood in its `:` places. */
export function find<Route extends { readonly path: string }>(
  routes: readonly Route[],
  path: string,
): { route: Route; params: Params } | null {
  for (const route of routes) {
    const params = match(route.path, path);
    if (params) return { route, params };
  }
  return null;
}

export const path = signal('/');
/** What follows the `?` of the address. */
export const query = signal('');

export function go(to: string): void {
  if (to !== location.pathname + location.search + location.hash) history.pushState(null, '', to);
  here();
}

function here(): void {
  query.value = location.search;
  path.value = location.pathname;
}

/** Reads the address and follows it; plain links of this page are followed without a reload. */
export function startRouter(): void {
  here();
  addEventListener('popstate', here);
  document.addEventListener('click', (event) => {
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    if (!(link instanceof HTMLAnchorElement) || link.origin !== location.origin) return;
    // A jump within the page is the browser's own affair.
    if (link.hash !== '' && link.pathname === location.pathname) return;
    if (link.target !== '' || link.pathname.startsWith('/api')) return;
    event.preventDefault();
    go(link.pathname + link.search + link.hash);
  });
}
