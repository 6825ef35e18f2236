import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Day, FarmFacts, Health, Probe, Today } from '../../hub/contract/index.ts';
import { hasChromium, type Opened, openBrowser } from './browser.ts';
import { everyAddress } from './everyAddress.ts';
import { root } from './hubProcess.ts';
import { morningByKeys } from './morningByKeys.ts';
import { type Begun, begin, freePort, killed, tempFolder, until } from './processes.ts';
import { settled, walkPage } from './walkPage.ts';

// The demonstration, once for all that needs a season behind it: it takes longer to make up than to
// look at.

const DAY = 24 * 60 * 60_000;
const SPEED = 20;

const listens = (port: number) =>
  new Promise<boolean>((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });

/** Processes that have this text in their command line, where the system tells (Linux). */
const running = (text: string): string[] =>
  !existsSync('/proc')
    ? []
    : readdirSync('/proc')
        .filter((name) => /^\d+$/.test(name))
        .filter((pid) => {
          try {
            return readFileSync(join('/proc', pid, 'cmdline'), 'utf8').includes(text);
          } catch {
            return false; // ended meanwhile
          }
        });

let demo: Begun;
let page = '';
let folder = '';
let ports: readonly number[] = [];
const get = async <Shape>(path: string) => {
  const response = await fetch(page + path);
  if (!response.ok) throw new Error(`${path} answered ${response.status}`);
  return (await response.json()) as Shape;
};

beforeAll(async () => {
  folder = join(tempFolder(), 'demo');
  const [http, mqtt] = [await freePort(), await freePort()];
  ports = [http, mqtt];
  page = `http://127.0.0.1:${http}`;
  const where = ['--data', folder, '--http', `127.0.0.1:${http}`, '--mqtt', `127.0.0.1:${mqtt}`];
  const script = join(root, 'dist', 'simulators', 'demo.js');
  await until(() => existsSync(script), 'a built demonstration: run npm run build first', 30_000);
  demo = begin(process.execPath, [script, ...where, '--speed', String(SPEED)], { cwd: root });
  await until(
    () => {
      if (demo.child.exitCode !== null) throw new Error(demo.err());
      return demo.out().includes(`Open  ${page}/`);
    },
    'the address of the demonstration',
    300_000,
  );
}, 340_000);

test('the demonstration goes from nothing to a useful day', { timeout: 120_000 }, async () => {
  const today = await until(async () => {
    const facts = await get<Today>('/api/today');
    return new Set(facts.tasks.map(({ kind }) => kind)).size >= 4 && facts;
  }, 'four kinds of task');
  expect(today.sentence).toMatch(/^This cannot wait: .+ \d+ more things to do\./);
  for (const { title, why, because } of today.tasks) {
    expect(title).not.toBe('');
    expect(why).toMatch(/\.$/);
    expect(because.length).toBeGreaterThan(0);
  }
  expect(today.frost.length).toBeGreaterThan(2);
  expect(today.frost.every(({ nightsLearned }) => nightsLearned >= 10)).toBe(true);
  expect(today.coolRooms).toHaveLength(1);

  const farm = await get<FarmFacts>('/api/farm');
  expect(farm).toMatchObject({ invented: true, speed: SPEED });
  const to = farm.now.slice(0, 10);
  const from = new Date(Date.parse(to) - 140 * DAY).toISOString().slice(0, 10);
  for (const id of ['long-house', 'hollow-house', 'south-patch', 'outside']) {
    const days = await get<Day[]>(`/api/places/${id}/days?from=${from}&to=${to}`);
    const known = days.filter(({ min, max }) => min !== null && max !== null && min <= max);
    expect(known.length, `days of ${id}`).toBeGreaterThanOrEqual(120);
  }

  const probes = await get<Probe[]>('/api/probes');
  const unplaced = probes.filter(({ place }) => place === null);
  expect(unplaced.map(({ id }) => id)).toEqual(['spare-7']);
  expect(unplaced[0]?.suggestion).toMatchObject({ place: 'long-house', spot: 'canopy' });

  const before = (await get<Health>('/api/health')).lastReadingAt ?? '';
  const later = await until(async () => {
    const health = await get<Health>('/api/health');
    return (health.lastReadingAt ?? '') > before && health;
  }, 'a reading that comes in now');
  expect(later.status).toBe('ok');
  const all = probes.filter(({ heardAt }) => heardAt !== null).length;
  expect(all).toBe(probes.length);
});

describe.skipIf(!hasChromium)('with a season behind it', () => {
  let opened: Opened;
  beforeAll(async () => {
    opened = await openBrowser({ width: 320 });
    await opened.page.goto(page);
    await settled(opened.page);
  }, 60_000);
  afterAll(() => opened?.close());

  test.for(everyAddress())(
    '%s shuts nobody out, at any width, light and dark and on paper',
    { timeout: 120_000 },
    async (path) => {
      const had = opened.complaints.length;
      expect(await walkPage(opened.page, path)).toEqual([]);
      expect(opened.complaints.slice(had)).toEqual([]);
    },
  );

  test('the morning is done by keys alone', { timeout: 180_000 }, async () => {
    const browser = await openBrowser({ width: 360, height: 740 });
    await morningByKeys(browser.page, page, get);
    expect(browser.complaints).toEqual([]);
    await browser.close();
  });
});

test('it leaves nothing when it is stopped', { timeout: 60_000 }, async () => {
  expect(running(folder).length).toBeGreaterThan(0);
  demo.child.kill('SIGINT');
  const late = setTimeout(() => void killed(demo.child), 30_000);
  const { code, out, err } = await demo.ended;
  clearTimeout(late);
  expect(err).toBe('');
  expect(code).toBe(0);
  expect(out).toMatch(/Stopped\.\n$/);
  for (const port of ports) expect(await listens(port)).toBe(false);
  expect(running(folder)).toEqual([]);
});
