import { join } from 'node:path';
import type { Publish } from '../alarms/index.ts';
import { CLAIM_CODE, openTasks } from '../api/index.ts';
import type { Broker } from '../broker/index.ts';
import { type Clock, wallClock } from '../clock.ts';
import { steadyPace } from '../intake/index.ts';
import { hashPassword, newSecret } from '../passwords.ts';
import { photosIn } from '../photos/index.ts';
import type { Settings } from '../settings.ts';
import { newestBackupAt, openOrMend } from '../store/index.ts';
import { makeTrials, runTrial } from '../trial/index.ts';
import { sayAlarms } from './alarms/sayAlarms.ts';
import { makeAnnouncer } from './broker/announcer.ts';
import { openBroker, sayProbeSettings } from './broker/openBroker.ts';
import { watchBroker } from './broker/watchBroker.ts';
import { joinCore } from './core.ts';
import { importFarm } from './farm/farmKept.ts';
import { keepUp } from './keeping/keeping.ts';
import { keptSecret } from './keeping/keptSecret.ts';
import { recordMended, stampOf, watchStore } from './keeping/storeWatch.ts';
import { makeLog } from './log.ts';
import { servePages } from './pages/servePages.ts';
import { bootOf, clockFrom } from './time/clockFrom.ts';
import { inTime } from './time/inTime.ts';
import { startTimers } from './time/startTimers.ts';
import { readText } from './verbs/readText.ts';

/** Readings that cross limits one after another lead to one look. Ours. */
const SETTLE = 1000; // ms
/** With many probes, one commit in so many seconds, unless --gather says otherwise. Ours: a probe
 *  on a battery is not kept awake for longer. */
const GATHER = 2;
/** Single readings are kept for two seasons and some, unless --keep-raw says otherwise. Ours. */
const RAW_DAYS = 800;
/** Commits that may be made at once after a quiet time (hub/intake/pace.ts). Ours. */
const AHEAD = 300;
/** Trials run on a thread of their own. */
const TRIAL = new URL('../trial/trialWorker.js', import.meta.url);
/** The newest backup is older than a night. */
const BACKUP_LATE = 26 * 3_600_000; // ms

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
  const backups = settings.backup ?? null;
  const file = join(settings.data, 'dewpost.db');
  const { store, mended } = openOrMend(file, backups, stampOf(clock.now()));
  if (mended) recordMended(store, log, mended, clock.now());
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
      ...{ store, clock, log },
      boot: given.boot ?? bootOf(settings.clock),
      pace: steadyPace(((settings.gather ?? GATHER) * 1000) / clock.speed, AHEAD),
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
    const trials = makeTrials(runTrial(TRIAL), file, clock.now);
    endings.push(trials.close);
    const parts = {
      ...core,
      trials,
      look: () => core.look(),
      brokerConnected: () => broker?.connected() ?? false,
      open: settings.open,
      keeping: keeping.facts,
      backUpNow: () => void keeping.backUp(),
      photos: photosIn(join(settings.data, 'photos'), wallClock.now),
    };
    const say = makeAnnouncer({
      ...{ store, clock, publish },
      lastLook: core.lastLook,
      tasks: () => openTasks(parts),
    });
    const watch = watchStore({ ...core, log, backups, look: () => core.look() });
    endings.push(watch.stop);
    const alarms = sayAlarms(core, publish);
    /** Retained topics: once at the start, and anew to a broker that may be a new one. */
    const sayEverything = () => {
      say.everything();
      alarms.siren();
      watch.sayAgain();
      sayProbeSettings(core, publish);
    };

    await core.spoken;
    core.look();
    broker = await openBroker(settings, store, core, () => setImmediate(sayEverything));
    endings.push(() => broker?.close(), say.gone);
    core.feed.on('farm', () => sayProbeSettings(core, publish));
    core.feed.on('task', say.tasks);
    sayEverything();
    alarms.begin();
    endings.push(alarms.end, watchBroker(parts.brokerConnected, log));

    const secret = keptSecret(store, 'cookie', () => newSecret(10));
    const pages = await servePages(parts, settings, secret, log);
    endings.push(pages.close);
    const timers = await startTimers(core, keeping, say.heartbeat);
    endings.push(timers.stop);
    onJump = timers.again;
    if (backups !== null && clock.now() - (newestBackupAt(backups) ?? 0) > BACKUP_LATE)
      void keeping.backUp(); // it was off last night
    const http = pages.address;
    log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');
    const stop = () => {
      log.info('the hub stops');
      return close();
    };
    return { http, mqtt: broker.address, claimCode, close: stop };
  }
}
