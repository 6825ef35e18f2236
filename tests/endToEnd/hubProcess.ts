import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { askOverTls } from './askOverTls.ts';
import { begin, type Ended, killed, until } from './processes.ts';

// The hub as it is installed: built, started by its command, spoken to over its sockets.

export const root = new URL('../..', import.meta.url).pathname;
const built = join(root, 'dist', 'hub', 'dewpost.js');
const READY_WITHIN = 40_000; // ms; a machine that builds at the same time takes its time

/** Starts one command of the hub. */
export async function spawnVerb(...args: readonly string[]) {
  await isBuilt();
  return begin(process.execPath, [built, ...args], { cwd: root });
}
/** Runs one command of the hub to its end. */
export async function dewpost(...args: readonly string[]): Promise<Ended> {
  return (await spawnVerb(...args)).ended;
}

const isBuilt = () =>
  until(
    () => existsSync(built) && existsSync(join(root, 'dist', 'dashboard', 'index.html')),
    `a built hub in ${built}: run npm run build first`,
    30_000,
  );

export type HubOptions = {
  readonly data: string;
  readonly farm?: string;
  readonly open?: boolean;
  /** Ports, when a hub that was there before is started again. */
  readonly http?: number;
  readonly mqtt?: number;
  readonly broker?: string;
  /** How many times faster than a wall clock; the farm is looked at every five of its minutes. */
  readonly clock?: FarmClock;
  /** Further words of the command line. */
  readonly more?: readonly string[];
};
export type FarmClock = { readonly start: number; readonly real: number; readonly speed: number };

/** A farm's clock that stands at `start` now. */
export const clockFrom = (start: number, speed: number): FarmClock => ({
  start,
  speed,
  real: Date.now(),
});
export const farmNow = ({ start, real, speed }: FarmClock) =>
  Math.round(start + (Date.now() - real) * speed);

export type HubProcess = Awaited<ReturnType<typeof startHub>>;

/** Starts a hub and waits for nothing. */
export async function spawnHub(options: HubOptions) {
  const { data, farm, open, http = 0, mqtt = 0, broker, clock, more = [] } = options;
  await isBuilt();
  return begin(
    process.execPath,
    [
      ...[built, 'start', '--data', data, '--http', `127.0.0.1:${http}`],
      ...(broker ? ['--broker', broker] : ['--mqtt', `127.0.0.1:${mqtt}`]),
      ...(farm ? ['--farm', farm] : []),
      ...(open ? ['--open'] : []),
      ...(clock
        ? ['--clock', `${new Date(clock.start).toISOString()}/${clock.real}/${clock.speed}`]
        : []),
      ...more,
    ],
    { cwd: root },
  );
}

/** Starts a hub and waits until it says that it runs. */
export async function startHub(options: HubOptions) {
  const hub = await spawnHub(options);
  const over = hub.ended.then(({ code, err }) => {
    throw new Error(`Expected a hub that runs, got exit code ${code}: ${err}`);
  });
  over.catch(() => {});
  const said = until(
    () =>
      /Open (https?:\S+) in a browser; probes speak to (mqtts?:\S+)(?: and \S+)?\.\n/.exec(
        hub.out(),
      ),
    'a hub that says where it is',
    READY_WITHIN,
  );
  const [, page = '', wire = ''] = await Promise.race([said, over]);
  let cookie = '';

  const ask = (path: string, command?: unknown) =>
    (page.startsWith('https:') ? askOverTls : fetch)(new URL(path, page), {
      headers: { cookie, ...(command === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(command === undefined ? {} : { method: 'POST', body: JSON.stringify(command) }),
    });
  const answered = async <Shape>(path: string, response: Response): Promise<Shape> => {
    if (!response.ok)
      throw new Error(`${path} answered ${response.status}: ${await response.text()}`);
    return (await response.json()) as Shape;
  };

  return {
    /** Where the pages are, without a stroke at its end. */
    page: page.replace(/\/$/, ''),
    ports: { http: Number(new URL(page).port), mqtt: Number(new URL(wire).port) },
    pid: hub.child.pid ?? 0,
    said: hub.out,
    log: hub.err,
    /** The one-time code it printed; empty when it needs none. */
    claimCode: () => /type this code, once: (\S+)/.exec(hub.out())?.[1] ?? '',
    ask,
    get: async <Shape>(path: string) => answered<Shape>(path, await ask(path)),
    post: async <Shape>(path: string, command: unknown) =>
      answered<Shape>(path, await ask(path, command)),
    /** Claims the hub, or signs in; what is asked afterwards is asked by that person. */
    async signIn(command: { code?: string; name: string; password: string }) {
      const path = command.code === undefined ? '/api/sign-in' : '/api/claim';
      const response = await ask(path, command);
      await answered(path, response);
      cookie = response.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    },
    kill: () => killed(hub.child),
    /** Ends it as Ctrl-C does. @returns how it ended. */
    async stop(): Promise<Ended> {
      await killed(hub.child, 'SIGTERM');
      return hub.ended;
    },
  };
}
