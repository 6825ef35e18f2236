import { Worker } from 'node:worker_threads';
import type { Bundle } from './bundleTests.ts';

export type Given = {
  readonly root: string;
  readonly code: string;
  readonly values: readonly number[];
  /** File of each number. */
  readonly files: readonly string[];
};
export type Asked = { readonly index: number };
export type Said =
  | {
      readonly ready: true;
      readonly failed: readonly string[];
      readonly tests: number;
      readonly ms: number;
    }
  /** `by` is the test that noticed; null when none did. */
  | {
      readonly ready: false;
      readonly index: number;
      readonly by: string | null;
      readonly ms: number;
    };

export type Outcome = { readonly index: number; readonly by: string | null; readonly ms: number };

const WORKERS = 2;
const LEAST_PATIENCE = 3000; // ms

/**
 * Changes each of the numbers asked for in turn and tells of every outcome. A run that takes ten
 * times as long as all tests unchanged hangs: that is noticed, and a new thread goes on.
 * @param leftOut told of each test that fails with nothing changed; it is not asked again
 * @throws Error when all do
 */
export async function tryMutants(
  root: string,
  { code, constants }: Bundle,
  indices: readonly number[],
  told: (outcome: Outcome) => void,
  leftOut: (test: string) => void,
): Promise<void> {
  const waiting = [...indices];
  const given: Given = {
    root,
    code,
    values: constants.map(({ value }) => value),
    files: constants.map(({ file }) => file),
  };
  const url = new URL(
    `./mutantWorker${import.meta.url.endsWith('.ts') ? '.ts' : '.js'}`,
    import.meta.url,
  );

  const thread = () =>
    new Promise<'done' | 'again'>((resolve, reject) => {
      const worker = new Worker(url, { workerData: given });
      let patience = LEAST_PATIENCE;
      let timer: NodeJS.Timeout | undefined;
      const end = async (how: 'done' | 'again') => {
        await worker.terminate();
        resolve(how);
      };
      const next = () => {
        const index = waiting.shift();
        if (index === undefined) return void end('done');
        worker.postMessage({ index } satisfies Asked);
        timer = setTimeout(() => {
          told({ index, by: 'it never ended', ms: patience });
          void end('again');
        }, patience);
      };
      worker.on('error', reject);
      worker.on('message', (said: Said) => {
        clearTimeout(timer);
        if (!said.ready) {
          told(said);
          return next();
        }
        for (const test of said.failed) leftOut(test);
        if (said.failed.length === said.tests)
          return reject(new Error('Expected tests that pass with nothing changed, got none'));
        patience = Math.max(LEAST_PATIENCE, 10 * said.ms);
        next();
      });
    });

  const lane = async () => {
    while ((await thread()) === 'again');
  };
  await Promise.all(Array.from({ length: Math.min(WORKERS, indices.length) }, lane));
}
