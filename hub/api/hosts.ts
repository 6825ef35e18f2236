import { isIP } from 'node:net';
import { hostname } from 'node:os';

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d{1,5})?$/i;

/** The name in a Host header, without its port; null when it is none (RFC 9110, section 7.2). */
export function nameIn(host: string | undefined): string | null {
  const [, name] = /^(\[[0-9a-f:.]+\]|[^:[\]/@\s]+)(?::\d{1,5})?$/i.exec(host ?? '') ?? [];
  return name?.toLowerCase().replace(/\.$/, '') ?? null;
}

/**
 * Whether the hub answers to a Host header. A page of another site may point its own name at this
 * machine, and would then be read as the hub's own; it cannot do so with an address, with
 * `localhost`, or with a name of the farm's own network (RFC 6762: `.local` is never asked outside).
 *
 * @param names further names, given with --host.
 */
export function answersTo(host: string | undefined, open: boolean, names: readonly string[]) {
  if (open) return LOOPBACK.test(host ?? '');
  const name = nameIn(host);
  if (name === null) return false;
  return (
    isIP(name.replace(/^\[|\]$/g, '')) !== 0 ||
    name === 'localhost' ||
    name === hostname().toLowerCase() ||
    /^[a-z0-9-]+(\.[a-z0-9-]+)*\.local$/.test(name) ||
    names.some((one) => one.toLowerCase() === name)
  );
}
