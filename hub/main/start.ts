import { join } from 'node:path';
import cron from 'node-cron';
import { type Publish, sendAlarm } from '../alarms/index.ts';
import { CLAIM_CODE, openTasks } from '../api/index.ts';
import { type Broker, connectExisting, type Receive, startEmbedded } from '../broker/index.ts';
import { filterOf } from '../intake/index.ts';
import { hashPassword, newSecret, passwordFits } from '../passwords.ts';
import type { Settings } from '../settings.ts';
import { openStore, type Store } from '../store/index.ts';
import { makeAnnouncer } from './announcer.ts';
import { clockFrom } from './clockFrom.ts';
import { joinCore } from './core.ts';
import { everySoOften } from './everySoOften.ts';
import { importFarm } from './farmKept.ts';
import { inTime } from './inTime.ts';
import { makeLog } from './log.ts';
import { readText } from './readText.ts';
import { servePages } from './servePages.ts';
import { watchBroker } from './watchBroker.ts';

const MINUTE = 60_000;
/** Readings that cross limits one after another lead to one look. Ours. */
const SETTLE = 1000; // ms

export type Hub = {
  readonly http: string;
  readonly mqtt: string;
  /** To be typed in the browser once; null when somebody has claimed the hub. */
  readonly claimCode: string | null;
  close(): Promise<void>;
};

/** The whole hub, running. @throws Error or Faults in one sentence when it cannot start. */
export async function startHub(settings: Settings<'start'>): Promise<Hub> {
  const log = makeLog();
  const clock = clockFrom(settings.clock);
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
    let soon: NodeJS.Timeout | undefined;
    const core = joinCore({
      store,
      clock,
      log,
      onCrossing: () => {
        soon ??= setTimeout(() => {
          soon = undefined;
          core.look();
        }, SETTLE / clock.speed);
      },
    });
    endings.push(() => {
      clearTimeout(soon);
      core.intake.flush();
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
    const filters = () => ['garden/#', ...core.farm().mappings.map(filterOf)];
    const receive: Receive = (message, acknowledge) =>
      core.intake.receive({ ...message, receivedAt: clock.now() }, acknowledge);
    broker = settings.broker
      ? await connectExisting({
          url: settings.broker,
          filters: filters(),
          clientId: keptSecret(store, 'hub-id', () => `dewpost-${newSecret(2)}`),
          receive,
          onConnect: () => setImmediate(say.everything),
        })
      : await startEmbedded({ ...settings.mqtt, receive, ...admission(store, settings.open) });
    endings.push(() => broker?.close(), say.gone);
    core.feed.on('farm', () => broker?.listen(filters()));
    core.feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
    core.feed.on('task', say.tasks);
    say.everything();
    endings.push(watchBroker(parts.brokerConnected, log));

    const secret = keptSecret(store, 'cookie', () => newSecret(10));
    const pages = await servePages(parts, settings, secret, log);
    const http = pages.address;
    endings.push(() => pages.close());
    const timers = [
      cron.schedule(everySoOften(5 * MINUTE, clock.speed), () => {
        core.look();
        setImmediate(core.snapshots.prepareDays);
      }),
      cron.schedule(everySoOften(MINUTE, clock.speed), say.heartbeat),
    ];
    endings.push(() => Promise.all(timers.map((timer) => timer.destroy())));
    log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');
    const stop = () => {
      log.info('the hub stops');
      return close();
    };
    return { http, mqtt: broker.address, claimCode, close: stop };
  }
}

/** A secret that stays the same for this store: made at the first start. */
function keptSecret(store: Store, name: string, make: () => string) {
  const kept = store.people.secret(name) ?? make();
  store.people.putSecret(name, kept);
  return kept;
}

/** Who may connect and publish where: a probe under its own name only; anybody on an open hub. */
function admission(store: Store, open: boolean) {
  return {
    mayConnect: async (user: string | undefined, password: Uint8Array | undefined) => {
      if (open) return true;
      const kept = user === undefined ? undefined : store.probes.get(user)?.password;
      return kept != null && password !== undefined && passwordFits(password, kept);
    },
    mayPublish: (user: string | null, topic: string) =>
      open ||
      (user !== null &&
        (!topic.startsWith('garden/') ||
          topic === `garden/${user}` ||
          topic.startsWith(`garden/${user}/`))),
  };
}
