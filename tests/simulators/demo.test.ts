import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { freshDemoFolder } from '../../simulators/demoFolder.ts';
import { addressText, freePort, readAddress } from '../../simulators/freePort.ts';
import { readInstant, readMinutes, readNumber, readOptions } from '../../simulators/options.ts';

const folder = mkdtempSync(join(tmpdir(), 'dewpost-demo-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('an older demonstration is cleared away', () => {
  const own = join(folder, 'own');
  freshDemoFolder(own);
  writeFileSync(join(own, 'store.sqlite'), 'old');
  freshDemoFolder(own);
  expect(existsSync(join(own, 'store.sqlite'))).toBe(false);
});

test('a folder that holds something else is refused and left alone', () => {
  const theirs = join(folder, 'theirs');
  mkdirSync(theirs);
  writeFileSync(join(theirs, 'accounts.txt'), 'keep me');
  expect(() => freshDemoFolder(theirs)).toThrow(
    'Expected --data to be empty or an older demonstration',
  );
  expect(existsSync(join(theirs, 'accounts.txt'))).toBe(true);
});

test('a busy port gives way to the next free one', async () => {
  const server = createServer();
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const found = await freePort({ host: '127.0.0.1', port });
  expect(found.port).toBeGreaterThan(port);
  const other = await freePort({ host: '127.0.0.1', port }, [found.port]);
  expect(other.port).toBeGreaterThan(found.port);
  server.close();
});

test('addresses are read and written alike, and a wrong one is refused', () => {
  for (const text of ['127.0.0.1:8470', '[::1]:1893', 'localhost:1']) {
    expect(addressText(readAddress('http', text))).toBe(text);
  }
  for (const text of ['8470', '127.0.0.1:0', '127.0.0.1:70000', '']) {
    expect(() => readAddress('http', text)).toThrow(`Expected --http as HOST:PORT, got ${text}`);
  }
});

test('a wrong option is refused in one sentence that says what was expected', () => {
  expect(readOptions(['speed'], ['--speed', '60'])).toEqual({ speed: '60' });
  expect(() => readOptions(['speed'], ['--sped', '60'])).toThrow('Expected only --speed');
  expect(() => readNumber('speed', '601', 1, 600)).toThrow(
    'Expected --speed from 1 to 600, got 601',
  );
  expect(() => readNumber('speed', '', 1, 600)).toThrow('Expected --speed from 1 to 600');
  expect(() => readMinutes('every', '10')).toThrow('Expected --every as minutes or hours');
  expect(readMinutes('every', '1h')).toBe(60);
  expect(() => readInstant('from', '2026-04-23')).toThrow('Expected --from in ISO 8601 with zone');
});
