import fc from 'fast-check';
import { onTestFinished } from 'vitest';
import { startEmbedded } from '../../../hub/broker/index.ts';
import { MOST_STRANGERS } from '../../../hub/main/keeping/strangers.ts';
import { refusalWords } from '../../../hub/words/index.ts';
import { connected } from '../broker/connected.ts';
import { smallHub } from '../smallFarm.ts';
import { anyMessage } from './anyMessage.ts';

const T = Date.UTC(2026, 4, 10, 9);
const AT_ONCE = 50;
/** A moment no other message speaks of. */
const GOOD_AT = T - 123_457;

/** Sends so many messages of a seed through the broker inside, and tells what became of the hub. */
export async function fuzzed(seed: number, count: number) {
  const hub = smallHub({ now: T });
  const gone: string[] = [];
  const broker = await startEmbedded({
    ...{ host: '127.0.0.1', port: 0 },
    limits: { perSecond: 1e6, atOnce: 1e6 }, // how fast is another test's question
    mayConnect: async () => true,
    mayPublish: () => true,
    receive: (message, acknowledge) => hub.core.receive(message, acknowledge),
    refuse: (source, reason, sentence) => {
      gone.push(sentence);
      hub.core.refuse(source, reason, sentence);
    },
  });
  onTestFinished(() => broker.close());
  const client = await connected(broker.address, { reconnectPeriod: 0 });
  let acknowledged = 0;
  let rssAtHalf = 0;
  let sent = 0;
  for (let part = 0; sent < count; part++) {
    const messages = fc.sample(anyMessage, {
      numRuns: Math.min(1000, count - sent),
      seed: seed + part,
    });
    for (let i = 0; i < messages.length; i += AT_ONCE)
      await Promise.all(
        messages.slice(i, i + AT_ONCE).map(async ({ topic, payload }) => {
          if (topic.startsWith('dewpost/')) return; // refused with the connection: other tests' matter
          await client.publishAsync(topic, payload, { qos: 1 });
          acknowledged++;
        }),
      );
    sent += messages.length;
    hub.clock.set(T + part * 1000);
    hub.core.look();
    await hub.core.tick();
    if (rssAtHalf === 0 && sent >= count / 2) rssAtHalf = process.memoryUsage.rss();
  }
  const grown = process.memoryUsage.rss() - rssAtHalf;
  await client.publishAsync('garden/mast/light', JSON.stringify({ v: 4321, t: GOOD_AT }), {
    qos: 1,
  });
  const rows = hub.store.refusals.since(0);
  return {
    acknowledged,
    alive: client.connected,
    good: hub.store.readings.between('mast', 'light', GOOD_AT, GOOD_AT + 1)[0]?.value,
    failure: hub.core.lastLook()?.failure ?? null,
    probes: hub.store.probes.all().length,
    mostProbes: 3 + MOST_STRANGERS,
    refusalRows: rows.length,
    refused: rows.reduce((sum, { count: n }) => sum + n, 0),
    /** Sentences that do not say what was expected and what came; reasons nobody has words for. */
    unclear: [
      ...rows
        .map(({ last }) => last)
        .filter((last) => !/^Expected [\s\S]+(, got|; forecasts sent)/.test(last)),
      ...gone.filter((sentence) => !/^Expected [\s\S]+, got/.test(sentence)),
      ...rows.map(({ reason }) => reason).filter((reason) => refusalWords(reason) === reason),
    ],
    bodies: rows.every(({ last }) => last.length < 1000),
    megabytesGrown: Math.round(grown / 2 ** 20),
  };
}
