import { pino } from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { watchBroker } from '../../../hub/main/broker/watchBroker.ts';
import { inTime } from '../../../hub/main/time/inTime.ts';
import { eventually } from '../broker/connected.ts';

function written() {
  const lines: string[] = [];
  const log = pino({}, { write: (line: string) => void lines.push(JSON.parse(line).msg) });
  return { lines, log };
}

test('a broker that is lost is told once, and once that it is back', async () => {
  const { lines, log } = written();
  let there = true;
  onTestFinished(watchBroker(() => there, log, 5));
  there = false;
  await eventually('a line', () => lines.length === 1);
  there = true;
  await eventually('another line', () => lines.length === 2);
  expect(lines).toEqual(['the broker is lost', 'the broker is back']);
});

test('a broker that is not there at the start is told at once', () => {
  const { lines, log } = written();
  watchBroker(() => false, log)();
  expect(lines).toEqual(['the broker cannot be reached']);
});

test('a part that never ends, or fails to, does not keep the hub from stopping', async () => {
  const { lines, log } = written();
  await inTime(() => new Promise(() => {}), log);
  await inTime(() => Promise.reject(new Error('odd')), log);
  await inTime(() => {
    throw new Error('odd');
  }, log);
  await inTime(() => 1, log);
  expect(lines).toEqual([
    'a part of the hub did not end in time',
    'a part of the hub failed to end',
    'a part of the hub failed to end',
  ]);
});
