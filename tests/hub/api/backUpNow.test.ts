import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { keepUp } from '../../../hub/main/keeping/keeping.ts';
import { backupName } from '../../../hub/store/index.ts';
import { quietLog, servedHub } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const T = Date.UTC(2026, 4, 10, 9);

/** A hub that makes backups when it is asked to; `made` waits for the one that is being made. */
async function hubWith(backups: string | null) {
  const hub = await servedHub({ now: T });
  const keeping = keepUp({ core: hub.core, log: quietLog, backups, rawDays: 60 });
  let made: Promise<void> = Promise.resolve();
  Object.assign(hub.parts, {
    keeping: keeping.facts,
    backUpNow: () => {
      made = keeping.backUp();
    },
  });
  const ask = async (method: 'GET' | 'POST', url: string) => {
    const reply = await hub.app.inject({ method, url });
    return { status: reply.statusCode, body: reply.json() };
  };
  return { ask, made: () => made };
}

test('"Back up now" makes a copy beside the nightly ones, and says what became of it', async () => {
  const folder = tempFolder();
  const { ask, made } = await hubWith(folder);
  expect((await ask('GET', '/api/keeping')).body.backup).toMatchObject({ at: null, running: null });
  expect((await ask('POST', '/api/keeping/backup')).status).toBe(200);
  await made();
  const { backup } = (await ask('GET', '/api/keeping')).body;
  expect(backup).toMatchObject({ fault: null, running: null });
  expect(backup.at).not.toBeNull();
  expect(existsSync(join(folder, backupName('2026-05-10')))).toBe(true);
});

test('without a folder, or with one that is gone, it is refused in a sentence', async () => {
  const { ask } = await hubWith(null);
  expect(await ask('POST', '/api/keeping/backup')).toEqual({
    status: 409,
    body: { error: 'Expected a hub started with --backup FOLDER, got one without' },
  });
  const gone = tempFolder();
  const other = await hubWith(gone);
  rmSync(gone, { recursive: true });
  expect((await other.ask('POST', '/api/keeping/backup')).status).toBe(409);
});
