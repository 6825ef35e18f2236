import { existsSync } from 'node:fs';
import { join } from 'node:path';
import cron from 'node-cron';
import { pino } from 'pino';
import { type Publish, sendAlarm } from '../alarms/index.ts';
import { buildServer, CLAIM_CODE, openTasks } from '../api/index.ts';
import { type Broker, connectExisting, type Receive, startEmbedded } from '../broker/index.ts';
import { filterOf, steadyPace } from '../intake/index.ts';
import { hashPassword, newSecret, passwordFits } from '../passwords.ts';
import type { Settings } from '../settings.ts';
import { newestBackupAt, openOrMend, type Store } from '../store/index.ts';
import { makeAnnouncer } from './announcer.ts';
import { clockFrom } from './clockFrom.ts';
import { joinCore } from './core.ts';
import { everySoOften } from './everySoOften.ts';
import { importFarm } from './farmKept.ts';
import { keepUp } from './keeping.ts';
import { nightly } from './nightly.ts';
import { pagesFolder, version } from './package.ts';
import { readText } from './readText.ts';
import { recordMended, stampOf, watchStore } from './storeWatch.ts';

const MINUTE = 60_000;
/** Readings that cross limits one after another lead to one look. Ours. */
const SETTLE = 1000; // ms
/** With many probes, one commit in so many seconds, unless --gather says otherwise. Ours: a probe
 *  on a battery is not kept awake for longer. */
const GATHER = 2;
/** Single readings are kept for two seasons and some, unless --keep-raw says otherwise. Ours. */
const RAW_DAYS = 800;
/** Commits that may be made at once after a quiet time (hub/intake/pace.ts). Ours. */
const AHEAD = 300;
/** The newest backup is older than a night. */
const BACKUP_LATE = 26 * 60 * MINUTE;

export type Hub = {
  readonly http: string;
  readonly mqtt: string;
  /** To be typed in the browser once; null when somebody has claimed the hub. */
  readonly claimCode: string | null;
  close(): Promise<void>;
};

/** The whole hub, running. @throws Error or Faults in one sentence when it cannot start. */
export async function startHub(settings: Settings<'start'>): Promise<Hub> {
  const log = pino({ level: process.env.DEWPOST_LOG ?? 'info' }, pino.destination(2));
  const clock = clockFrom(settings.clock);
  const backups = settings.backup ?? null;
  const file = join(settings.data, 'dewpost.db');
  const { store, mended } = openOrMend(file, backups, stampOf(clock.now()));
  if (mended) recordMended(store, log, mended, clock.now());
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
    let soon: NodeJS.Timeout | undefined;
    const core = joinCore({
      store,
      clock,
      log,
      pace: steadyPace(((settings.gather ?? GATHER) * 1000) / clock.speed, AHEAD),
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
      core.snapshots.fold(true);
    });
    const keeping = keepUp({ core, log, backups, rawDays: settings['keep-raw'] ?? RAW_DAYS });
    endings.push(keeping.stop);
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
      keeping: keeping.facts,
    };
    const say = makeAnnouncer({
      store,
      clock,
      publish,
      lastLook: core.lastLook,
      tasks: () => openTasks(parts),
    });

    const watch = watchStore({ ...core, log, backups, look: () => core.look() });
    endings.push(watch.stop);
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
          onConnect: () =>
            setImmediate(() => {
              say.everything();
              watch.sayAgain();
            }),
        })
      : await startEmbedded({ ...settings.mqtt, receive, ...admission(store, settings.open) });
    endings.push(() => broker?.close(), say.gone);
    core.feed.on('farm', () => broker?.listen(filters()));
    core.feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
    core.feed.on('task', say.tasks);
    say.everything();

    const app = await buildServer(parts, {
      cookieSecret: keptSecret(store, 'cookie', () => newSecret(10)),
      pages: existsSync(pagesFolder) ? pagesFolder : null,
      version,
      onFault: (error) => {
        store.note(error);
        log.error(error, 'a request failed');
      },
    });
    endings.push(() => app.close());
    const http = await app.listen(settings.http);
    const timers = [
      cron.schedule(everySoOften(5 * MINUTE, clock.speed), () => {
        core.look();
        setImmediate(core.snapshots.prepareDays);
      }),
      cron.schedule(everySoOften(MINUTE, clock.speed), say.heartbeat),
      ...nightly(clock.speed, core.calendar().zone, [
        ['0 10 3 * * *', keeping.backUp],
        ['0 40 3 * * *', keeping.trim],
      ]),
    ];
    if (backups !== null && clock.now() - (newestBackupAt(backups) ?? 0) > BACKUP_LATE)
      void keeping.backUp(); // it was off last night
    endings.push(() => Promise.all(timers.map((timer) => timer.destroy())));
    log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');
    return { http, mqtt: broker.address, claimCode, close };
  }
}

/** A secret that stays the same for this store: made at the first start. */
function keptSecret(store: Store, name: string, make: () => string) {
  const kept = store.people.secret(name);
  if (kept !== undefined) return kept;
  const made = make();
  store.people.putSecret(name, made);
  return made;
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
