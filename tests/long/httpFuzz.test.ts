import { Agent, request } from 'node:http';
import { expect, test } from 'vitest';
import type { Health } from '../../hub/contract/index.ts';
import { gardenFile } from '../endToEnd/gardenFile.ts';
import { startHub } from '../endToEnd/hubProcess.ts';
import { tempFolder, until } from '../endToEnd/processes.ts';
import { bareRequest, sendBare } from '../hub/api/fuzz/bareRequests.ts';
import { type Answered, faultIn } from '../hub/api/fuzz/judge.ts';
import { type Operation, operationsOf } from '../hub/api/fuzz/operations.ts';
import { makeRandom, seedOfRun } from '../hub/api/fuzz/random.ts';
import { type Asked, makeRequest } from '../hub/api/fuzz/requests.ts';

const REQUESTS = 60_000;
const BARE = 3000;
const AT_ONCE = 8;
const PATIENCE = 30_000; // ms; an answer that has not come by then hangs
const MIB = 1024 * 1024;

const seed = seedOfRun();
const agent = new Agent({ keepAlive: true, maxSockets: AT_ONCE });

/** Asks a hub that runs; an answer without end (/api/events) counts when it has begun. */
const ask = (port: number, { method, url, headers, body }: Asked) =>
  new Promise<Answered>((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, method, path: url, headers, agent, timeout: PATIENCE },
      (reply) => {
        let text = '';
        const status = reply.statusCode ?? 0;
        if (String(reply.headers['content-type']).startsWith('text/event-stream')) {
          resolve({ status, body: '' });
          asked.destroy();
          return;
        }
        reply.setEncoding('utf8').on('data', (part) => {
          text += part;
        });
        reply.on('end', () => resolve({ status, body: text }));
        reply.on('error', () => resolve({ status, body: '' }));
      },
    );
    asked.on('timeout', () => {
      asked.destroy();
      reject(new Error(`Expected an answer within ${PATIENCE} ms, got none: ${method} ${url}`));
    });
    // A refused body may end the connection while it is still being sent.
    asked.on('error', () => resolve({ status: 400, body: '' }));
    asked.end(body);
  });

/** An address that Node's own client refuses to send is for the bare requests. */
const canBeSent = ({ url, method }: Asked) => /^[\x21-\x7e]+$/.test(url) && method !== 'CONNECT';

test(`${REQUESTS} requests by chance, and ${BARE} that are hardly any, harm a hub in nothing`, async () => {
  console.log(`DEWPOST_SEED=${seed}`);
  const data = tempFolder();
  const hub = await startHub({ data, farm: gardenFile(data) });
  const code = await until(hub.claimCode, 'a code to claim the hub with');
  const password = 'rain on glass';
  await hub.signIn({ code, name: 'Una', password });
  const signedIn = async (path: string, command: object) => {
    const reply = await hub.ask(path, command);
    return reply.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  };
  const una = await signedIn('/api/sign-in', { name: 'Una', password });
  const made = await hub.post<{ code: string }>('/api/people/codes', { role: 'helper' });
  const hal = await signedIn('/api/join', { code: made.code, name: 'Hal', password });
  const document = await hub.get<Parameters<typeof operationsOf>[0]>('/api/openapi.json');
  const operations: Operation[] = operationsOf(document);
  const port = hub.ports.http;

  const random = makeRandom(seed);
  const found: string[] = [];
  const heap: number[] = [];
  const resident: number[] = [];
  let done = 0;
  const memory = async () => {
    const text = await (await hub.ask('/metrics')).text();
    const of = (name: string) => Number(new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1]);
    heap.push(of('process_heap_bytes'));
    resident.push(of('process_resident_memory_bytes'));
  };
  const worker = async () => {
    while (done < REQUESTS && found.length < 20) {
      done++;
      if (done % 250 === 0) await memory();
      const asked = makeRequest(operations, random, ['', una, una, una, hal]);
      if (!canBeSent(asked)) continue;
      const fault = faultIn(await ask(port, asked), asked.method);
      const { method, url, body = '' } = asked;
      if (fault) found.push(`${method} ${url.slice(0, 200)} ${body.slice(0, 200)}: ${fault}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  for (let i = 0; i < BARE && found.length < 20; i++) {
    const text = bareRequest(random);
    const reply = await sendBare(port, text, PATIENCE);
    if (/^HTTP\/1\.1 (5\d\d|2\d\d [\s\S]*"farm)/.test(reply))
      found.push(`${JSON.stringify(text.slice(0, 300))}: ${reply.slice(0, 300)}`);
  }
  expect(found).toEqual([]);
  expect(hub.log()).not.toMatch(/"level":[56]0/);

  // The least after a collection, early and late: what grows shows there.
  const least = (list: number[]) => Math.min(...list);
  const quarter = Math.floor(heap.length / 4);
  const grown = least(heap.slice(-quarter)) - least(heap.slice(quarter, 2 * quarter));
  const told = (list: number[]) => (least(list) / MIB).toFixed(1);
  console.log(
    `${done} requests; heap MiB: ${told(heap.slice(quarter, 2 * quarter))} early, ${told(heap.slice(-quarter))} late; resident at most ${(Math.max(...resident) / MIB).toFixed(0)} MiB`,
  );
  expect(grown / MIB).toBeLessThan(10);
  const health = await hub.get<Health>('/api/health');
  expect(['ok', 'no-readings', 'late']).toContain(health.status);
  expect((await hub.stop()).code).toBe(0);
});
