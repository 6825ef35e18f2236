import { expect, test } from 'vitest';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

const T = Date.UTC(2026, 4, 10, 9);

// Source: Prometheus documentation, "Exposition formats", text-based format, version 0.0.4.
const HELP = /^# HELP ([a-zA-Z_:][a-zA-Z0-9_:]*) (.*)$/;
const TYPE = /^# TYPE ([a-zA-Z_:][a-zA-Z0-9_:]*) (counter|gauge|histogram|summary|untyped)$/;
const LABEL = '[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\\\\n]|\\\\\\\\|\\\\"|\\\\n)*"';
const SAMPLE = new RegExp(
  `^([a-zA-Z_:][a-zA-Z0-9_:]*)(\\{${LABEL}(?:,${LABEL})*\\})? (\\S+)(?: (-?\\d+))?$`,
);

function parse(text: string) {
  expect(text.endsWith('\n')).toBe(true);
  const samples = new Map<string, number>();
  const types = new Map<string, string>();
  let family = '';
  const done = new Set<string>();
  for (const line of text.slice(0, -1).split('\n')) {
    const help = HELP.exec(line);
    const type = TYPE.exec(line);
    if (help) {
      expect(done.has(help[1] ?? ''), line).toBe(false);
      continue;
    }
    if (type) {
      family = type[1] ?? '';
      expect(done.has(family), `${family} in one group`).toBe(false);
      done.add(family);
      types.set(family, type[2] ?? '');
      continue;
    }
    const sample = SAMPLE.exec(line);
    expect(sample, line).not.toBeNull();
    expect(sample?.[1], line).toBe(family);
    expect(sample?.[3], line).toMatch(/^([+-]?(\d+(\.\d+)?([eE][+-]?\d+)?|Inf)|NaN)$/);
    const key = `${sample?.[1]}${sample?.[2] ?? ''}`;
    expect(samples.has(key), `${key} once`).toBe(false);
    samples.set(key, Number(sample?.[3]));
  }
  return { samples, types };
}

async function metrics() {
  const hub = await servedHub({ now: T });
  const get = async () => {
    const reply = await hub.app.inject({ url: '/metrics' });
    expect(reply.statusCode).toBe(200);
    expect(reply.headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/);
    return parse(reply.body);
  };
  return { ...hub, get };
}

test('a hub that has just started has metrics that parse', async () => {
  const { get, core } = await metrics();
  core.look();
  const { samples } = await get();
  expect(samples.get('dewpost_up')).toBe(1);
  expect([...samples.keys()].some((key) => key.startsWith('dewpost_temperature'))).toBe(false);
});

test('what was measured is there by place, spot and probe; what is old is not', async () => {
  const { get, send, core, clock } = await metrics();
  send('p1', 'temperature', T, 21.5);
  send('p1', 'humidity', T, 71);
  core.look();
  const key = 'dewpost_temperature_celsius{place="long-house",spot="canopy",probe="p1"}';
  const now = await get();
  expect(now.samples.get(key)).toBe(21.5);
  expect(now.types.get('dewpost_temperature_celsius')).toBe('gauge');
  expect(now.samples.get('dewpost_last_reading_timestamp_seconds')).toBe(T / 1000);
  expect(now.samples.get('dewpost_last_look_timestamp_seconds')).toBe(T / 1000);
  clock.set(T + 2 * HOUR);
  core.look();
  expect((await get()).samples.has(key)).toBe(false);
});

test('refusals are counted by reason, and open tasks by kind', async () => {
  const { get, send, core, clock } = await metrics();
  send('p1', 'temperature', T, 20);
  send('p1', 'temperature', T + MINUTE, 85);
  clock.set(T + HOUR);
  core.look();
  const { samples } = await get();
  expect(samples.get('dewpost_refused_in_a_day{reason="out-of-range"}')).toBe(1);
  expect(samples.get('dewpost_open_tasks{kind="see-to-probe"}')).toBeGreaterThan(0);
});

// Source: Prometheus documentation, "Writing client libraries", table "Process metrics"; "Metric and
// label naming": base units, `_total` for what only grows, ratios from 0 to 1.
test('the process and the hub tell of themselves by the standard names', async () => {
  const { get, core, send, app } = await metrics();
  send('p1', 'temperature', T, 21.5);
  send('p1', 'humidity', T, 71);
  core.look();
  await app.inject({ url: '/api/nowhere' });
  const { samples, types } = await get();
  for (const name of ['resident_memory_bytes', 'start_time_seconds', 'cpu_seconds_total'])
    expect(samples.get(`process_${name}`), name).toBeGreaterThan(0);
  if (process.platform === 'linux')
    for (const name of ['open_fds', 'max_fds', 'virtual_memory_bytes'])
      expect(samples.get(`process_${name}`), name).toBeGreaterThan(0);
  expect(types.get('process_cpu_seconds_total')).toBe('counter');
  expect(
    Math.abs((samples.get('process_start_time_seconds') ?? 0) - Date.now() / 1000),
  ).toBeLessThan(3600);
  expect(
    samples.get('dewpost_humidity_ratio{place="long-house",spot="canopy",probe="p1"}'),
  ).toBeCloseTo(0.71, 9);
  expect(samples.get('dewpost_http_requests_total{method="GET",code="404"}')).toBe(1);
  expect(samples.get('dewpost_build_info{version="0.0.0"}')).toBe(1);
  for (const [name, type] of types) {
    expect(name).toMatch(/^(dewpost|process)_[a-z_]+$/);
    expect(type === 'counter', name).toBe(name.endsWith('_total'));
    expect(name).not.toMatch(/percent|_ms\b|minutes|milli|kilo/);
  }
});

test('of a store that is gone nothing is told but that the hub does not work', async () => {
  const { get, core, store } = await metrics();
  core.look();
  store.close();
  const { samples } = await get();
  expect(samples.get('dewpost_up')).toBe(0);
  expect(samples.get('dewpost_store_keeps')).toBe(0);
  expect(
    [...samples.keys()].filter(
      (key) => key !== 'dewpost_store_keeps' && key.startsWith('dewpost_store'),
    ),
  ).toEqual([]);
});
