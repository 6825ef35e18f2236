import { existsSync } from 'node:fs';
import { join } from 'node:path';
import cron from 'node-cron';
import { pino } from 'pino';
import { type Publish, sendAlarm } from '../alarms/index.ts';
import { buildServer, CLAIM_CODE, openTasks } from '../api/index.ts';
import type { Broker } from '../broker/index.ts';
import type { Clock } from '../clock.ts';
import { hashPassword, newSecret } from '../passwords.ts';
import type { Settings } from '../settings.ts';
import { openStore } from '../store/index.ts';
import { makeAnnouncer } from './announcer.ts';
import { bootOf, clockFrom } from './clockFrom.ts';
import { joinCore } from './core.ts';
import { everySoOften } from './everySoOften.ts';
import { importFarm } from './farmKept.ts';
import { keptSecret } from './keptSecret.ts';
import { openBroker, sayProbeSettings } from './openBroker.ts';
import { pagesFolder, version } from './package.ts';
import { readText } from './readText.ts';
import { rescheduled } from './rescheduled.ts';

const MINUTE = 60_000;
/** Readings that cross limits one after another lead to one look. Ours. */
const SETTLE = 1000; // ms
/** How often the clock is held against the machine's steady count. Ours. */
const TICK = 1000; // ms

export type Hub = {
  readonly http: string;
  readonly mqtt: string;
  /** To be typed in the browser once; null when somebody has claimed the hub. */
  readonly claimCode: string | null;
  close(): Promise<void>;
};

/**
 * The whole hub, running.
 *
 * @param given a clock instead of the machine's, and what its steady count is named after.
 * @throws Error or Faults in one sentence when it cannot start.
 */
export async function startHub(
  settings: Settings<'start'>,
  given: { readonly clock?: Clock; readonly boot?: string } = {},
): Promise<Hub> {
  const log = pino({ level: process.env.DEWPOST_LOG ?? 'info' }, pino.destination(2));
  const clock = given.clock ?? clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  /** What has been begun, to be ended in the opposite order, also when the start fails half-way. */
  const endings: (() => unknown)[] = [() => store.close()];
  const close = async () => {
    for (const end of endings.splice(0).reverse()) await end();
  };
  try {
    return await run();
  } catch (error) {
    await close();
    throw error;
  }

  async function run(): Promise<Hub> {
    if (settings.farm !== undefined && store.farm() === undefined)
      importFarm(store, readText(settings.farm), clock.now());
    let onJump = () => {};
    let soon: NodeJS.Timeout | undefined;
    const core = joinCore({
      store,
      clock,
      log,
      boot: given.boot ?? bootOf(settings.clock),
      onJump: () => onJump(),
      onCrossing: () => {
        soon ??= setTimeout(() => {
          soon = undefined;
          core.look();
        }, SETTLE / clock.speed);
      },
    });
    endings.push(() => {
      clearTimeout(soon);
      core.flush();
    });
    const claimCode = settings.open || store.people.claimed() ? null : newSecret(3);
    if (claimCode) store.people.putSecret(CLAIM_CODE, await hashPassword(claimCode));

    let broker: Broker | undefined;
    const publish: Publish = async (topic, payload, options) => {
      await broker
        ?.publish(topic, payload, options)
        .catch((error) => log.error(error, 'publishing failed'));
    };
    const parts = {
      ...core,
      look: () => core.look(),
      brokerConnected: () => broker?.connected() ?? false,
      open: settings.open,
    };
    const say = makeAnnouncer({
      store,
      clock,
      publish,
      lastLook: core.lastLook,
      tasks: () => openTasks(parts),
    });

    core.look();
    broker = await openBroker(settings, store, core, () =>
      setImmediate(() => {
        say.everything();
        sayProbeSettings(core, publish);
      }),
    );
    endings.push(() => broker?.close(), say.gone);
    core.feed.on('farm', () => sayProbeSettings(core, publish));
    core.feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
    core.feed.on('task', say.tasks);
    say.everything();
    sayProbeSettings(core, publish);

    const app = await buildServer(parts, {
      cookieSecret: keptSecret(store, 'cookie', () => newSecret(10)),
      pages: existsSync(pagesFolder) ? pagesFolder : null,
      version,
      onFault: (error) => log.error(error, 'a request failed'),
    });
    endings.push(() => app.close());
    const http = await app.listen(settings.http);
    const timers = rescheduled(() => [
      cron.schedule(everySoOften(5 * MINUTE, clock.speed), () => {
        core.look();
        setImmediate(core.snapshots.prepareDays);
      }),
      cron.schedule(everySoOften(MINUTE, clock.speed), say.heartbeat),
    ]);
    endings.push(timers.stop);
    onJump = timers.again;
    const ticks = setInterval(() => void core.tick(), TICK);
    endings.push(() => clearInterval(ticks));
    await core.tick();
    log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');
    return { http, mqtt: broker.address, claimCode, close };
  }
}
