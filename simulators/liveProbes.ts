import { setTimeout as pause } from 'node:timers/promises';
import mqtt, { type MqttClient } from 'mqtt';
import { toMessages } from './messages.ts';
import { createProbe, type Probe } from './probe.ts';
import type { Reading } from './reading.ts';
import type { Scenario } from './scenario.ts';
import type { SimulatedClock } from './simulatedClock.ts';
import { createWorld, type World } from './world.ts';

const MINUTE = 60_000;
// What a probe keeps while nobody answers: half a day of five-minute readings; ours.
const MOST_KEPT = 800;
const GOODBYE = 1000; // ms

export type LiveOptions = {
  /** Such as mqtt://127.0.0.1:1893. */
  readonly broker: string;
  readonly seed: number;
  readonly clock: SimulatedClock;
  readonly username?: string | undefined;
  readonly password?: string | undefined;
  /** A world not past `clock.start`: one made and stepped there beforehand saves a second. */
  readonly world?: World;
  /** Told once for each probe and reason when a probe can't reach the broker. */
  readonly complain?: (sentence: string) => void;
};

type Link = { readonly probe: Probe; readonly client: MqttClient; kept: Reading[]; busy: boolean };

/**
 * Starts one client per probe. Each reports when its own interval of simulated time is over, at
 * QoS 1, from the same world and seed as history, beginning right after `clock.start`.
 */
export function startLiveProbes(scenario: Scenario, options: LiveOptions) {
  const { broker, seed, clock, username, password } = options;
  const world = options.world ?? createWorld(scenario.plan, seed);
  const probes = scenario.probes.map((plan) => createProbe(plan, seed, scenario.faults));
  // History ends just before the start: take that minute's tips and door as the last ones known.
  const begins = Math.ceil(clock.start / MINUTE) * MINUTE;
  const before = world.advanceTo(begins - MINUTE);
  for (const probe of probes) probe.rememberFrom(before);

  const said = new Set<string>();
  const links = probes.map((probe): Link => {
    const clientId = probe.plan.id;
    const who = username === undefined ? {} : { username, password: password ?? '' };
    const client = mqtt.connect(broker, { clientId, clean: true, reconnectPeriod: 1000, ...who });
    client.on('error', (error) => {
      const sentence = `Expected ${broker} to take probe ${clientId}, got: ${error.message}`;
      if (!said.has(sentence)) options.complain?.(sentence);
      said.add(sentence);
    });
    return { probe, client, kept: [], busy: false };
  });

  async function send(link: Link): Promise<void> {
    const { probe, client } = link;
    if (link.busy || link.kept.length === 0 || !client.connected) return;
    link.busy = true;
    const readings = link.kept;
    link.kept = [];
    const { form, battery } = probe.plan;
    try {
      for (const { topic, payload } of toMessages(form, readings, clock.now(), battery?.unit)) {
        await client.publishAsync(topic, payload, { qos: 1 });
      }
    } catch {
      // Not acknowledged: said again when the link is back; the hub knows readings by their time.
      link.kept = [...readings, ...link.kept].slice(-MOST_KEPT);
    }
    link.busy = false;
  }

  let timer: NodeJS.Timeout | undefined;
  let next = begins;
  const tick = () => {
    while (next <= clock.now()) {
      const now = world.advanceTo(next);
      for (const link of links) {
        const readings = link.probe.read(now);
        if (readings.length > 0) link.kept = [...link.kept, ...readings].slice(-MOST_KEPT);
      }
      next += MINUTE;
    }
    for (const link of links) void send(link);
    timer = setTimeout(tick, Math.min(60_000, clock.waitFor(next) + 1));
  };
  tick();
  for (const link of links) link.client.on('connect', () => void send(link));

  return {
    /** Says goodbye on every socket; cuts those that nobody answers within a moment. */
    async stop(): Promise<void> {
      clearTimeout(timer);
      const bye = links.map(({ client }) => client.endAsync(!client.connected));
      const late = setTimeout(() => {
        for (const { client } of links) client.end(true);
      }, GOODBYE);
      await Promise.race([Promise.all(bye), pause(2 * GOODBYE, undefined, { ref: false })]);
      clearTimeout(late);
    },
  };
}

export type LiveProbes = ReturnType<typeof startLiveProbes>;
