import { closeSync, openSync, writeSync } from 'node:fs';
import { createHistoryLine, type HistoryOptions, historyReadings } from './historyLines.ts';
import type { Scenario } from './scenario.ts';

const CHUNK = 1 << 20; // characters gathered before a write: a write per line takes ten times as long

/** Writes history as newline JSON to a file, or to standard output; gives the number of lines. */
export function writeHistory(scenario: Scenario, options: HistoryOptions, file?: string): number {
  const target = file === undefined ? 1 : openSync(file, 'w');
  const historyLine = createHistoryLine(scenario);
  let text = '';
  let lines = 0;
  const flush = () => {
    let bytes = Buffer.from(text);
    text = '';
    while (bytes.length > 0) bytes = bytes.subarray(writeSome(target, bytes));
  };
  for (const readings of historyReadings(scenario, options)) {
    for (const reading of readings) {
      text += historyLine(reading);
      lines++;
    }
    if (text.length > CHUNK) flush();
  }
  flush();
  if (file !== undefined) closeSync(target);
  return lines;
}

/** A pipe that is full for a moment says EAGAIN; that is no failure, only "not yet". */
function writeSome(target: number, bytes: Buffer): number {
  try {
    return writeSync(target, bytes);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    return 0;
  }
}
