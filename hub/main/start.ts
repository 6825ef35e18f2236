import { join } from 'node:path';
import cron from 'node-cron';
import { type Publish, SIREN, sendAlarm } from '../alarms/index.ts';
import { CLAIM_CODE, openTasks } from '../api/index.ts';
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
import { inTime } from './inTime.ts';
import { keptSecret } from './keptSecret.ts';
import { makeLog } from './log.ts';
import { openBroker, sayProbeSettings } from './openBroker.ts';
import { readText } from './readText.ts';
import { rescheduled } from './rescheduled.ts';
import { servePages } from './servePages.ts';
import { watchBroker } from './watchBroker.ts';

const MINUTE = 60_000;
/** Readings that cross limits one after another lead to one look. Ours. */
const SETTLE = 1000; // ms
/** How often the clock is held against the machine's steady count. Ours. */
const TICK = 1000; // ms
/** How often messages about alarms are planned and tried again, ms of the hub's clock. Ours. */
const TELL_EVERY = 5000;

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
  const log = makeLog();
  const clock = given.clock ?? clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  /** What has been begun, to be ended in the opposite order, also when the start fails half-way. */
  const endings: (() => unknown)[] = [() => store.close()];
  const close = async () => {
    for (const end of endings.splice(0).reverse()) await inTime(end, log);
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
      core.season.close();
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

    let siren: boolean | null = null;
    const saySiren = () => {
      const on = core.alarms.sounds();
      if (on !== siren) void publish(SIREN, on ? 'on' : 'off', { retain: true });
      siren = on;
    };
    const sayEverything = () => {
      siren = null;
      say.everything();
      saySiren();
    };
    const tellAlarms = () => {
      core.alarms.work();
      saySiren();
    };

    core.look();
    broker = await openBroker(settings, store, core, () =>
      setImmediate(() => {
        sayEverything();
        sayProbeSettings(core, publish);
      }),
    );
    endings.push(() => broker?.close(), say.gone);
    core.feed.on('farm', () => sayProbeSettings(core, publish));
    core.feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
    core.feed.on('task', say.tasks);
    core.feed.on('alarm', () => setImmediate(tellAlarms));
    core.feed.on('alarms', () => setImmediate(saySiren));
    sayEverything();
    sayProbeSettings(core, publish);
    core.alarms.begin();
    endings.push(() => core.alarms.end(), watchBroker(parts.brokerConnected, log));

    const secret = keptSecret(store, 'cookie', () => newSecret(10));
    const pages = await servePages(parts, settings, secret, log);
    const http = pages.address;
    endings.push(() => pages.close());
    const timers = rescheduled(() => [
      cron.schedule(everySoOften(5 * MINUTE, clock.speed), () => {
        core.look();
        setImmediate(core.snapshots.prepareDays);
      }),
      cron.schedule(everySoOften(MINUTE, clock.speed), say.heartbeat),
    ]);
    endings.push(timers.stop);
    onJump = timers.again;
    const telling = setInterval(tellAlarms, Math.max(250, TELL_EVERY / clock.speed));
    endings.push(() => clearInterval(telling));
    const ticks = setInterval(() => void core.tick(), TICK);
    endings.push(() => clearInterval(ticks));
    await core.tick();
    log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');
    const stop = () => {
      log.info('the hub stops');
      return close();
    };
    return { http, mqtt: broker.address, claimCode, close: stop };
  }
}
