import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import cron from 'node-cron';
import { pino } from 'pino';
import { sendAlarm } from '../alarms/index.ts';
import { buildServer, CLAIM_CODE, openTasks } from '../api/index.ts';
import { type Broker, connectExisting, HEARTBEAT, startEmbedded } from '../broker/index.ts';
import { fastClock, wallClock } from '../clock.ts';
import { filterOf } from '../intake/index.ts';
import { hashPassword, newSecret, passwordFits } from '../passwords.ts';
import type { Settings } from '../settings.ts';
import { joinCore, openStore } from './core.ts';
import { everySoOften } from './everySoOften.ts';
import { importFarm } from './farmKept.ts';
import { pagesFolder, version } from './package.ts';

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
  const log = pino({ level: process.env.DEWPOST_LOG ?? 'info' }, pino.destination(2));
  const clock = settings.clock
    ? fastClock(settings.clock.start, settings.clock.real, settings.clock.speed)
    : wallClock;
  const store = openStore(join(settings.data, 'dewpost.db'));
  if (settings.farm !== undefined && store.farm() === undefined)
    importFarm(store, readFileSync(settings.farm, 'utf8'), clock.now());

  let soon: NodeJS.Timeout | undefined;
  const lookSoon = () => {
    soon ??= setTimeout(() => {
      soon = undefined;
      core.look();
    }, SETTLE / clock.speed);
  };
  const core = joinCore({ store, clock, log, onCrossing: lookSoon });

  const claimCode = settings.open || store.people.claimed() ? null : newSecret(3);
  if (claimCode) store.people.putSecret(CLAIM_CODE, await hashPassword(claimCode));

  let broker: Broker | undefined;
  const publish = (topic: string, payload: string, options: { retain: boolean }) =>
    broker
      ?.publish(topic, payload, options)
      .catch((error) => log.error(error, 'publishing failed')) ?? Promise.resolve();

  const parts = {
    ...core,
    look: () => core.look(),
    refarmed: () => core.refarmed(),
    brokerConnected: () => broker?.connected() ?? false,
    open: settings.open,
  };
  const sayTasks = () =>
    publish('dewpost/task', JSON.stringify(openTasks(parts)), { retain: true });
  const sayHeartbeat = () => {
    const at = core.lastLook()?.at;
    const beat = {
      t: new Date(clock.now()).toISOString(),
      evaluatedAt: at === undefined ? null : new Date(at).toISOString(),
    };
    return publish(HEARTBEAT, JSON.stringify(beat), { retain: true });
  };
  // A broker keeps retained messages in its memory, or may be a new one: say again what stands.
  const sayAll = () => {
    for (const alarm of store.alarms.raised()) void sendAlarm(publish, alarm);
    void sayTasks();
    void sayHeartbeat();
  };

  core.look();
  const receive: Parameters<typeof startEmbedded>[0]['receive'] = (message, acknowledge) =>
    core.intake.receive({ ...message, receivedAt: clock.now() }, acknowledge);
  broker = settings.broker
    ? await connectExisting({
        url: settings.broker,
        filters: ['garden/#', ...core.farm().mappings.map(filterOf)],
        clientId: hubId(store),
        receive,
        onConnect: () => setImmediate(sayAll),
      })
    : await startEmbedded({ ...settings.mqtt, receive, ...admission(store, settings.open) });

  core.feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
  core.feed.on('task', () => void sayTasks());
  sayAll();

  const app = await buildServer(parts, {
    cookieSecret: cookieSecret(store),
    pages: existsSync(pagesFolder) ? pagesFolder : null,
    version,
    onFault: (error) => log.error(error, 'a request failed'),
  });
  const http = await app.listen(settings.http);

  const timers = [
    cron.schedule(everySoOften(5 * MINUTE, clock.speed), () => core.look()),
    cron.schedule(everySoOften(MINUTE, clock.speed), () => void sayHeartbeat()),
  ];
  log.info({ http, mqtt: broker.address, farm: core.farm().file.farm.name }, 'the hub runs');

  return {
    http,
    mqtt: broker.address,
    claimCode,
    async close() {
      for (const timer of timers) await timer.destroy();
      clearTimeout(soon);
      await app.close();
      core.intake.flush();
      await publish(HEARTBEAT, '{"gone":true}', { retain: true });
      await broker?.close();
      core.close();
    },
  };
}

/** Stays the same for this store, so that an existing broker knows the hub again. */
function hubId(store: ReturnType<typeof openStore>) {
  const kept = store.people.secret('hub-id') ?? `dewpost-${newSecret(2)}`;
  store.people.putSecret('hub-id', kept);
  return kept;
}

function cookieSecret(store: ReturnType<typeof openStore>) {
  const kept = store.people.secret('cookie') ?? newSecret(10);
  store.people.putSecret('cookie', kept);
  return kept;
}

/** Who may connect and publish where: a probe under its own name only; anybody on an open hub. */
function admission(store: ReturnType<typeof openStore>, open: boolean) {
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
