import { join } from 'node:path';
import { root } from './hubProcess.ts';
import { begin, freePort, killed, tempFolder, until } from './processes.ts';

const WITHIN = 300_000; // ms; a season is made up and imported, on a machine that does other things too

export type DemoHub = Awaited<ReturnType<typeof startDemoHub>>;

/** The demonstration as anybody starts it: a season of readings, batches, lots, pickings, losses. */
export async function startDemoHub() {
  const [http, mqtt] = [await freePort(), await freePort()];
  const page = `http://127.0.0.1:${http}`;
  const demo = begin(
    process.execPath,
    [
      join(root, 'dist', 'simulators', 'demo.js'),
      ...['--data', join(tempFolder(), 'demo')],
      ...['--http', `127.0.0.1:${http}`, '--mqtt', `127.0.0.1:${mqtt}`],
    ],
    { cwd: root },
  );
  await until(
    () => {
      if (demo.child.exitCode !== null) throw new Error(demo.err());
      return demo.out().includes(`Open  ${page}/`);
    },
    'the address of the demonstration',
    WITHIN,
  );
  return { page, kill: () => killed(demo.child, 'SIGINT') };
}
