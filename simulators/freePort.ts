import { createServer } from 'node:net';

const TRIES = 30;

export type Address = { readonly host: string; readonly port: number };

/** HOST:PORT, IPv6 in brackets. */
export function readAddress(name: string, text: string): Address {
  const found = /^(?:\[([0-9a-f:]+)\]|([^:]+)):(\d{1,5})$/i.exec(text);
  const host = found?.[1] ?? found?.[2];
  const port = Number(found?.[3]);
  if (host === undefined || !(port >= 1 && port <= 65535)) {
    throw new Error(`Expected --${name} as HOST:PORT, got ${text}`);
  }
  return { host, port };
}

export const addressText = ({ host, port }: Address) =>
  host.includes(':') ? `[${host}]:${port}` : `${host}:${port}`;

const isFree = ({ host, port }: Address) =>
  new Promise<boolean>((resolve, reject) => {
    const server = createServer();
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(new Error(`Expected to listen on ${host}:${port}, got ${error.message}`));
    });
    server.listen(port, host, () => server.close(() => resolve(true)));
  });

/** The address, or the next free port after it that is not in `taken`. */
export async function freePort(wanted: Address, taken: readonly number[] = []): Promise<Address> {
  for (let port = wanted.port; port < wanted.port + TRIES && port <= 65535; port++) {
    const address = { host: wanted.host, port };
    if (!taken.includes(port) && (await isFree(address))) return address;
  }
  throw new Error(
    `Expected a free port from ${wanted.port} to ${wanted.port + TRIES - 1}, got none`,
  );
}
