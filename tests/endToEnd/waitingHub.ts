import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect } from 'vitest';
import { gardenFile } from './gardenFile.ts';
import { dewpost, type HubProcess, startHub } from './hubProcess.ts';
import { freePort, tempFolder, until } from './processes.ts';

const MINUTE = 60_000;
export const PASSWORD = 'rain on glass';

export type WaitingHub = Awaited<ReturnType<typeof startWaitingHub>>;

/** A hub of the invented garden that Una has claimed, which can go and come back at its address. */
export async function startWaitingHub() {
  const data = tempFolder();
  const farm = gardenFile(data);
  const now = Date.now();
  const lines: string[] = [];
  for (let t = now - 120 * MINUTE; t < now; t += 5 * MINUTE)
    for (const [probe, value] of [
      ['leaf', 21],
      ['mast', 14],
      ['bloom', 13],
      ['cold', 3],
    ] as const)
      lines.push(JSON.stringify({ probe, quantity: 'temperature', t, value }));
  const file = join(data, 'readings.ndjson');
  writeFileSync(file, lines.join('\n'));
  expect(await dewpost('import', '--data', data, '--farm', farm, file)).toMatchObject({ code: 0 });
  const [http, mqtt] = [await freePort(), await freePort()];
  let hub: HubProcess = await startHub({ data, http, mqtt });
  const code = await until(hub.claimCode, 'a code to claim the hub with');
  await hub.signIn({ code, name: 'Una', password: PASSWORD });
  return {
    hub: () => hub,
    page: hub.page,
    kill: () => hub.kill(),
    async restart() {
      hub = await startHub({ data, http, mqtt });
      await hub.signIn({ name: 'Una', password: PASSWORD });
    },
    /** Entries of one kind in the hub's journal, oldest first. */
    entered(what: string): { t: number; who: string; body: Record<string, unknown> }[] {
      const db = new Database(join(data, 'dewpost.db'), { readonly: true });
      try {
        return db
          .prepare<[string], { t: number; who: string; body: string }>(
            'SELECT t, who, body FROM journal WHERE what = ? ORDER BY id',
          )
          .all(what)
          .map((row) => ({ ...row, body: JSON.parse(row.body) }));
      } finally {
        db.close();
      }
    },
  };
}
