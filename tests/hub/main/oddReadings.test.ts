import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { importReadings, readLine } from '../../../hub/main/imports/importReadings.ts';
import { openStore } from '../../../hub/store/index.ts';
import { oddBody, oddValue } from '../api/fuzz/odd.ts';
import { makeRandom, seedOfRun } from '../api/fuzz/random.ts';
import { farmText } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);
const good = (i: number) =>
  JSON.stringify({
    ...{ probe: 'p1', quantity: 'humidity', value: 60 + (i % 7) },
    t: new Date(T + i * 300_000).toISOString(),
  });

async function imported(lines: readonly string[], raw?: Buffer) {
  const data = tempFolder();
  const [file, farm] = [join(data, 'readings.ndjson'), join(data, 'farm.yaml')];
  writeFileSync(file, raw ?? lines.join('\n'));
  writeFileSync(farm, farmText());
  const result = await importReadings(file, { data, farm });
  const store = openStore(join(data, 'dewpost.db'));
  const rows = store.readings.allBetween('p1', 'humidity', 0, Number.MAX_SAFE_INTEGER).length;
  store.close();
  return { ...result, rows };
}

test('each line is a reading or an error in a sentence, whatever it holds', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (line) => {
      try {
        readLine(line);
        return true;
      } catch (error) {
        return error instanceof Error && /^Expected [\s\S]+, got/.test(error.message);
      }
    }),
    { numRuns: 2000 },
  );
});

test('good lines among two thousand bad ones are all taken in; the bad ones are counted and told by line', async () => {
  const seed = seedOfRun();
  console.log(`DEWPOST_SEED=${seed}`);
  const random = makeRandom(seed);
  const lines: string[] = [];
  for (let i = 0; i < 200; i++) {
    lines.push(good(i));
    for (let j = 0; j < 10; j++) {
      const fields: Record<string, unknown> = JSON.parse(good(i));
      // A value of another kind, so that no bad line is a good one by chance.
      fields[random.pick(['probe', 'quantity', 't', 'value'])] = random.pick([[], {}, null]);
      const spoilt = random.chance(0.7) ? fields : { ...fields, extra: oddValue(random) };
      const text = random.chance(0.2) ? oddBody(random) : JSON.stringify(spoilt);
      lines.push(text.replace(/[\r\n]/g, ' ').trim() || '{');
    }
  }
  const { readings, refused, sentences, rows } = await imported(lines);
  expect([readings, refused, rows]).toEqual([200, 2000, 200]);
  expect(sentences).toHaveLength(10);
  for (const [i, told] of sentences.entries())
    expect(told).toMatch(new RegExp(`^line ${i + 2}: Expected [^\\n]+, got`));
});

test('a file of bytes that are no text is told line by line, and stores nothing', async () => {
  const bytes = Buffer.from(Array.from({ length: 20_000 }, (_, i) => (i * 7919) % 256));
  const { readings, refused, rows } = await imported([], bytes);
  expect([readings, rows]).toEqual([0, 0]);
  expect(refused).toBeGreaterThan(10);
});

test('the same file again adds nothing', async () => {
  const { readings, rows } = await imported([
    ...Array.from({ length: 50 }, (_, i) => good(i)),
    good(3),
    good(4),
  ]);
  expect([readings, rows]).toEqual([52, 50]);
});
