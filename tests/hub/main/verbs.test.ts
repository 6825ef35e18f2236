import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { startHub } from '../../../hub/main/start.ts';
import { runVerb } from '../../../hub/main/verbs/verbs.ts';
import { openStore } from '../../../hub/store/index.ts';
import { farmText } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

/** Runs a verb as the command does; what it writes is caught. */
async function run(...args: string[]) {
  let out = '';
  let err = '';
  const catching = (keep: (text: string) => void) => (text: string | Uint8Array) => {
    keep(String(text));
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(
      catching((text) => {
        out += text;
      }),
    ),
    vi.spyOn(process.stderr, 'write').mockImplementation(
      catching((text) => {
        err += text;
      }),
    ),
  ];
  try {
    return { code: await runVerb(args), out, err };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
const caught = async (...args: string[]) => {
  const { code, err } = await run(...args);
  return { code, lines: err.trimEnd().split('\n') };
};

function folder() {
  const path = tempFolder();
  const farm = join(path, 'farm.yaml');
  writeFileSync(farm, farmText());
  const lines = (...given: unknown[]) => {
    const file = join(path, 'readings.ndjson');
    writeFileSync(
      file,
      given.map((one) => (typeof one === 'string' ? one : JSON.stringify(one))).join('\n'),
    );
    return file;
  };
  return { path, farm, lines, data: join(path, 'data') };
}
const reading = (t: string, value: number) => ({ probe: 'p1', quantity: 'temperature', t, value });

test.for([
  [],
  ['fly'],
  ['constructor'],
  ['__proto__'],
  ['farm'],
  ['farm', 'burn'],
  ['probe', 'add'],
  ['start', '--prot'],
  ['start', 'now'],
  ['replay'],
  ['import'],
])('dewpost %s is wrong use: 2', async (args) => {
  expect((await run(...args)).code).toBe(2);
});

test.for(['start', 'replay', 'import', 'farm', 'probe', 'backup', 'restore'])(
  'dewpost %s --help tells how',
  async (verb) => {
    const { code, out } = await run(verb, '--help');
    expect(code).toBe(0);
    expect(out).toMatch(new RegExp(`^dewpost ${verb}`));
  },
);

test('a file that is not there is one line that names it: 1', async () => {
  const { path, farm, lines, data } = folder();
  const missing = join(path, 'nowhere');
  const given = lines(reading('2026-05-01T10:00:00Z', 20));
  for (const args of [
    ['farm', 'check', missing],
    ['import', missing, '--data', data, '--farm', farm],
    ['import', given, '--data', join(path, 'other'), '--farm', missing],
    ['replay', '--farm', missing, '--readings', given],
    ['replay', '--farm', farm, '--readings', missing],
  ]) {
    const { code, lines: said } = await caught(...args);
    expect([args[0], code, said.length]).toEqual([args[0], 1, 1]);
    expect(said[0], args.join(' ')).toMatch(/^Expected .*nowhere/);
  }
});

test('a farm file with faults is told line by line: 1', async () => {
  const { path } = folder();
  const bad = join(path, 'bad.yaml');
  writeFileSync(bad, farmText().replace('lat: 51.9', 'lat: 951').replace('wage: 16', 'wage: x'));
  const { code, lines } = await caught('farm', 'check', bad);
  expect(code).toBe(1);
  expect(lines).toEqual([
    expect.stringMatching(/^Expected .* in farm\.lat on line 2, got 951$/),
    expect.stringMatching(/^Expected .* in farm\.wage on line 2, got "x"$/),
  ]);
});

test('a farm comes out of the store as it went in', async () => {
  const { path, farm, data } = folder();
  expect((await run('farm', 'import', farm, '--data', data)).code).toBe(0);
  const out = join(path, 'out.yaml');
  expect((await run('farm', 'export', out, '--data', data)).code).toBe(0);
  expect(readFileSync(out, 'utf8')).toBe(farmText());
  expect((await caught('farm', 'export', out, '--data', join(path, 'empty'))).code).toBe(1);
  expect(existsSync(join(path, 'empty'))).toBe(false);
});

test('readings are imported once; bad lines are counted and told', async () => {
  const { farm, lines, data } = folder();
  const file = lines(
    reading('2026-05-01T10:00:00Z', 20),
    reading('2026-05-01T10:00:00Z', 20),
    { ...reading('2026-05-01T10:05:00Z', 68), unit: 'Fah' },
    '{"probe":',
    { ...reading('2026-05-01T10:00:00Z', 20), quantity: 'pressure' },
    '',
  );
  const { code, out, err } = await run('import', file, '--data', data, '--farm', farm);
  expect(code).toBe(0);
  expect(out).toContain('2 lines refused');
  expect(err).toMatch(/line 4: Expected JSON[\s\S]*line 5: Expected one of .* in quantity/);
  const store = openStore(join(data, 'dewpost.db'));
  expect(
    store.readings.between('p1', 'temperature', 0, Date.now()).map(({ value }) => value),
  ).toEqual([20, 20]);
  store.close();
});

test('a reading of a year to come is not believed, from a file either', async () => {
  const { farm, lines, data } = folder();
  const file = lines(reading('2026-05-01T10:00:00Z', 20), reading('2062-05-01T10:05:00Z', 21));
  await run('import', file, '--data', data, '--farm', farm);
  const store = openStore(join(data, 'dewpost.db'));
  const good = store.readings.between('p1', 'temperature', 0, Number.MAX_SAFE_INTEGER);
  store.close();
  expect(good.map(({ value }) => value)).toEqual([20]);
});

test('the password of a probe is shown once and kept only as a hash', async () => {
  const { data } = folder();
  const { code, out } = await run('probe', 'add', 'p9', '--data', data);
  expect(code).toBe(0);
  const password = /password (\S+)/.exec(out)?.[1] ?? '';
  expect(password).toMatch(/^[a-z0-9]{4}(-[a-z0-9]{4}){4}$/);
  const store = openStore(join(data, 'dewpost.db'));
  expect(store.probes.get('p9')?.password).toMatch(/^scrypt\$/);
  expect(store.probes.get('p9')?.password).not.toContain(password);
  store.close();
  expect((await caught('probe', 'add', 'a/b', '--data', data)).code).toBe(2);
});

const portOf = (server: ReturnType<typeof createServer>) =>
  (server.address() as { port: number }).port;
const listening = async (port = 0) => {
  const server = createServer();
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return server;
};

test('a hub that cannot have its address lets go of everything it had begun', async () => {
  const { farm, data } = folder();
  const taken = await listening();
  onTestFinished(() => void taken.close());
  const free = await listening();
  const mqtt = portOf(free);
  await new Promise((resolve) => free.close(resolve));
  const settings = {
    data,
    farm,
    open: true,
    http: { host: '127.0.0.1', port: portOf(taken) },
    mqtt: { host: '127.0.0.1', port: mqtt },
  };
  await expect(startHub(settings)).rejects.toThrow(/^Expected .*|EADDRINUSE/);
  const again = await listening(mqtt);
  again.close();
});
