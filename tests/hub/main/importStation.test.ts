import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { runVerb } from '../../../hub/main/verbs/verbs.ts';
import { openStore } from '../../../hub/store/index.ts';
import { farmText } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

/** Runs a verb as the command does; what it writes is caught. */
async function run(...args: string[]) {
  const said = { out: '', err: '' };
  const spies = (['out', 'err'] as const).map((to) =>
    vi.spyOn(process[`std${to}`], 'write').mockImplementation((text) => {
      said[to] += String(text);
      return true;
    }),
  );
  try {
    return { code: await runVerb(args), ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

function folder(content: string, name = 'station.dat') {
  const path = tempFolder();
  const file = join(path, name);
  writeFileSync(file, content);
  const data = join(path, 'data');
  const days = (id: string) => {
    const store = openStore(join(data, 'dewpost.db'));
    const found = { about: store.stations.get(id), days: store.stations.days(id) };
    store.close();
    return found;
  };
  return { path, file, data, days };
}
const at = ['--lat=51.75', '--lon=-6.95'];
// Invented values in the published layouts of GHCN-Daily and ISD-Lite.
const dly =
  'XX000012345201904TMIN  -23  S   15 IS-9999       4  S\nXX000012345201904TMAX  101  S  122  S';

test('a GHCN-Daily file becomes days of its station, under its own name, once', async () => {
  const { file, data, days } = folder(dly);
  const first = await run('import', file, '--data', data, ...at, '--altitude', '12');
  expect(first).toMatchObject({ code: 0, err: '' });
  expect(first.out).toContain('of XX000012345 taken in as xx000012345, from 2019-04-01');
  const { about, days: taken } = days('xx000012345');
  expect(about).toMatchObject({ name: 'XX000012345', lat: 51.75, altitude: 12, observedAt: null });
  expect(taken.slice(0, 4).map(({ min, max }) => [min, max])).toEqual([
    [-2.3, 10.1],
    [null, 12.2], // failed a check of the archive
    [null, null],
    [0.4, null],
  ]);
  const again = await run('import', file, '--data', data); // where it stands is known by now
  expect(again.code).toBe(0);
  expect(days('xx000012345').days).toEqual(taken);
});

test('a reader who looks in the morning is told once, and remembered', async () => {
  const { file, data, days } = folder(dly);
  await run('import', file, '--data', data, ...at, '--observed-at', '7');
  const [first, second] = days('xx000012345').days;
  expect([first?.day, first?.max]).toEqual(['2019-03-31', 10.1]);
  expect([second?.min, second?.max]).toEqual([-2.3, 12.2]);
  await run('import', file, '--data', data);
  expect(days('xx000012345').days[0]?.day).toBe('2019-03-31');
  await run('import', file, '--data', data, '--observed-at', '0');
  expect(days('xx000012345').days[0]?.day).toBe('2019-04-01'); // other days, not both
});

test('an ISD-Lite file gives nights of its hours', async () => {
  const lines = Array.from({ length: 72 }, (_, hour) => {
    const date = `2019 04 ${10 + Math.floor(hour / 24)} ${String(hour % 24).padStart(2, '0')}`;
    const cold = hour === 28 ? -31 : 80;
    return `${date}${String(cold).padStart(6)}   -25 10213   250    15     0     0 -9999`;
  });
  const { file, data, days } = folder(lines.join('\n'));
  const { code, out } = await run('import', file, '--data', data, ...at, '--station', 'Far Head');
  expect(out).toContain('as far-head');
  expect(code).toBe(0);
  expect(days('far-head').days.find(({ day }) => day === '2019-04-11')).toMatchObject({
    ...{ min: -3.1, max: 8, calm: true, rain: 0 },
  });
});

test('a CSV file of days is taken in; what is not known stays so, and more rows add to it', async () => {
  const { path, file, data, days } = folder('date,tmin,tmax,tavg,rain\n2019-04-01,-1,9,4,\n');
  const name = ['--station', 'Far Head'];
  expect((await run('import', file, '--data', data, ...at, ...name)).code).toBe(0);
  const more = join(path, 'more.csv');
  writeFileSync(more, 'date,tmin,tmax,rain\n2019-04-01,,,2.5\n2019-04-02,3,9,0\n');
  expect((await run('import', more, '--data', data, ...name)).code).toBe(0);
  expect(days('far-head').days).toEqual([
    { day: '2019-04-01', min: -1, max: 9, mean: 4, rain: 2.5, trace: false, calm: null },
    { day: '2019-04-02', min: 3, max: 9, mean: null, rain: 0, trace: false, calm: null },
  ]);
});

test('a faulty line is told with its line, its field, its value and what was expected; the others go on', async () => {
  const { file, data, days } = folder(
    'date,tmin,tmax\n2019-04-01,-1,9\n2019-04-31,1,2\n2019-04-02,-1,warm\n2019-04-03,2,8\n',
  );
  const { code, out, err } = await run('import', file, '--data', data, ...at, '--station', 'A');
  expect(code).toBe(0);
  expect(out).toContain('2 lines refused');
  expect(err.trim().split('\n')).toEqual([
    'Expected a day like 2025-10-15 in date of line 3, got "2019-04-31"',
    'Expected a number from -90 to 60 in tmax of line 4, got "warm"',
  ]);
  expect(days('a').days.map(({ day }) => day)).toEqual(['2019-04-01', '2019-04-03']);
});

test.for([
  [dly, ['--lat=51'], 2, /^Expected --lon in degrees, .*got nothing$/],
  [dly, ['--lat=91', '--lon=1'], 2, /^Expected degrees from -90 to 90 in --lat, got "91"$/],
  [dly, ['--lat=x', '--lon=1'], 2, /^Expected degrees from -90 to 90 in --lat, got "x"$/],
  [
    dly,
    [...at, '--observed-at', '24'],
    2,
    /^Expected an hour from 0 to 23 in --observed-at, got "24"$/,
  ],
  ['date,tmin,tmax\n2019-04-01,1,2', at, 2, /^Expected --station NAME, .*got nothing$/],
  ['date,tmin\n2019-04-01,1', [...at, '--station', 'A'], 1, /a column tmax in header of line 1/],
  [
    'date,tmin,tmax\n',
    [...at, '--station', 'A'],
    1,
    /Expected at least one day of a station, got none$/,
  ],
] as const)(
  '%j with %j ends with code %d and one sentence',
  async ([text, options, code, sentence]) => {
    const { file, data } = folder(text);
    const done = await run('import', file, '--data', data, ...options);
    expect(done.code).toBe(code);
    expect(done.err.trim()).toMatch(sentence);
  },
);

test('how far a long file is goes to people at a terminal, and never into what programs read', async () => {
  const lines = Array.from({ length: 20_001 }, () => '2019-04-01,1,2');
  const { file, data } = folder(`date,tmin,tmax\n${lines.join('\n')}\n`);
  const told = await run('import', file, '--data', data, ...at, '--station', 'A');
  expect(told.code).toBe(0);
  expect(told.out + told.err).not.toMatch(/% read/);
});

const farm = `${farmText().replace('kind: patch,', 'kind: patch, crop: strawberry,')}`.replace(
  'crops:\n',
  'crops:\n  - { id: strawberry, price: 9 }\n',
);
test('counts of fruit go into the journal once, and faults name the line', async () => {
  const { path, file, data } = folder(
    'counted,place,stage,kg,flowered\n2026-04-20,south-patch,green,6,\n2026-04-20,south-patch,flower,9,2026-04-11\n2026-04-20,nowhere,green,6,\n2026-04-20,south-patch,rotten,6,\n2026-04-20,south-patch,green,,\n',
  );
  writeFileSync(join(path, 'farm.yaml'), farm);
  expect((await run('farm', 'import', join(path, 'farm.yaml'), '--data', data)).code).toBe(0);
  const first = await run('import', file, '--data', data);
  expect(first.out).toContain('1 counts of fruit taken in, 0 were there already, 3 lines refused');
  expect(first.err).toContain('line 4: Expected one of south-patch in place, got "nowhere"');
  expect(first.err).toMatch(/line 5: Expected .* in cohorts\[0\]\.stage, got "rotten"/);
  expect(first.err).toMatch(/line 6: Expected number in cohorts\[0\]\.kg, got nothing/);
  const again = await run('import', file, '--data', data);
  expect(again.out).toContain('0 counts of fruit taken in, 1 were there already');
  const store = openStore(join(data, 'dewpost.db'));
  const [entry, ...more] = store.journal.between('fruit', 0, Number.MAX_SAFE_INTEGER);
  store.close();
  expect(more).toEqual([]);
  expect(entry?.body).toEqual({
    counted: '2026-04-20',
    cohorts: [
      { stage: 'green', kg: 6 },
      { stage: 'flower', kg: 9, flowered: '2026-04-11' },
    ],
  });
});
