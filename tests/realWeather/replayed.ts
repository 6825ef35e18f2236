import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Replayed, replay } from '../../hub/main/verbs/replay.ts';

/** One line of a readings file. */
export type Line = {
  readonly probe: string;
  readonly quantity: 'temperature' | 'humidity';
  readonly t: number;
  readonly value: number;
};

export const lineText = ({ t, ...rest }: Line) =>
  JSON.stringify({ ...rest, t: new Date(t).toISOString() });

/** Hands `use` a farm file and a readings file in a folder of their own, and removes it after. */
export async function inFiles<T>(
  farm: string,
  lines: readonly Line[],
  use: (files: { folder: string; farm: string; readings: string }) => T | Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'dewpost-real-weather-'));
  const files = { folder, farm: join(folder, 'farm.yaml'), readings: join(folder, 'year.ndjson') };
  try {
    writeFileSync(files.farm, farm);
    writeFileSync(files.readings, `${lines.map(lineText).join('\n')}\n`);
    return await use(files);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** `dewpost replay` over these lines, in this process. */
export const replayed = (farm: string, lines: readonly Line[]): Promise<Replayed> =>
  inFiles(farm, lines, ({ farm: file, readings }) => replay({ farm: file, readings, json: true }));
