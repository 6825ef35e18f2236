import { once } from 'node:events';
import { createReadStream, statSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { pino } from 'pino';
import { probeName, quantity } from '../../contract/index.ts';
import { inKeptUnit, type RawReading, readTime } from '../../intake/index.ts';
import type { Settings } from '../../settings.ts';
import { openStore } from '../../store/index.ts';
import { shown } from '../../words/index.ts';
import { joinCore } from '../core.ts';
import { importFarm } from '../farm/farmKept.ts';
import { clockFrom } from '../time/clockFrom.ts';
import { readText, unreadable } from '../verbs/readText.ts';
import type { Progress } from './progressLine.ts';

/** Lines that go into one commit. */
const BATCH = 5000;
/** Told how far it is after so many lines. Ours: some hundredths of a second on a small board. */
const STEP = 1000;
/** Faults shown in full; the rest are counted. */
const SHOWN = 10;

/**
 * One line of a readings file: `{"probe","quantity","t","value"}`, with an optional `unit`.
 *
 * @throws Error naming the field, what it held and what was expected.
 */
export function readLine(line: string): RawReading {
  let fields: Record<string, unknown>;
  try {
    fields = JSON.parse(line);
  } catch {
    throw new Error(`Expected JSON, got ${shown(line)}`);
  }
  if (typeof fields !== 'object' || fields === null)
    throw new Error(`Expected an object, got ${shown(fields)}`);
  const probe = probeName.safeParse(fields.probe);
  if (!probe.success)
    throw new Error(`Expected a probe's name in probe, got ${shown(fields.probe)}`);
  const named = quantity.safeParse(fields.quantity);
  if (!named.success)
    throw new Error(
      `Expected one of ${quantity.options.join(', ')} in quantity, got ${shown(fields.quantity)}`,
    );
  const value = typeof fields.value === 'boolean' ? Number(fields.value) : fields.value;
  if (typeof value !== 'number')
    throw new Error(`Expected a number in value, got ${shown(fields.value)}`);
  const unit = fields.unit === undefined ? undefined : String(fields.unit);
  return { probe: probe.data, t: readTime(fields.t, 't'), ...inKeptUnit(named.data, value, unit) };
}

export type Imported = {
  readonly readings: number;
  readonly refused: number;
  /** The first few, with their line numbers. */
  readonly sentences: readonly string[];
};

/** Reads a file of readings line by line; a bad line is counted and told, the others go on. */
export async function* readLines(
  file: string,
): AsyncGenerator<{ line: number; bytes: number; reading?: RawReading; fault?: string }> {
  const input = createReadStream(file);
  await once(input, 'open').catch((error) => {
    throw unreadable(file, error);
  });
  const lines = createInterface({
    input,
    crlfDelay: Number.POSITIVE_INFINITY,
  });
  let line = 0;
  let bytes = 0;
  for await (const text of lines) {
    line++;
    bytes += Buffer.byteLength(text) + 1;
    if (text.trim() === '') continue;
    let item: { line: number; bytes: number; reading?: RawReading; fault?: string };
    try {
      item = { line, bytes, reading: readLine(text) };
    } catch (error) {
      item = { line, bytes, fault: `line ${line}: ${(error as Error).message}` };
    }
    yield item;
  }
}

/** `dewpost import FILE`: readings of a file through the same intake and store as those of probes. */
export async function importReadings(
  file: string,
  settings: Settings<'import'>,
  progress: (so: Progress) => void = () => {},
): Promise<Imported> {
  const log = pino({ level: 'warn' }, pino.destination(2));
  const clock = clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    if (settings.farm !== undefined && store.farm() === undefined)
      importFarm(store, readText(settings.farm), clock.now());
    const core = joinCore({ store, clock, log });
    let batch: RawReading[] = [];
    let readings = 0;
    let refused = 0;
    const sentences: string[] = [];
    const flush = () => {
      let failure: Error | null | undefined;
      core.intake.receiveReadings(batch, clock.now(), (error) => {
        failure = error;
      });
      core.intake.flush();
      if (failure) throw failure;
      readings += batch.length;
      batch = [];
    };
    const size = Math.max(1, statSync(file, { throwIfNoEntry: false })?.size ?? 1);
    for await (const { line, bytes, reading, fault } of readLines(file)) {
      if (line % STEP === 0) progress({ share: bytes / size, rows: line, refused });
      if (reading) {
        batch.push(reading);
        if (batch.length >= BATCH) flush();
      } else {
        refused++;
        if (sentences.length < SHOWN && fault) sentences.push(fault);
      }
    }
    flush();
    core.snapshots.fold();
    for (const _ of core.farm().places) core.snapshots.prepareDays();
    return { readings, refused, sentences };
  } finally {
    store.close();
  }
}
