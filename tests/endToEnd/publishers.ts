import { connectAsync, type MqttClient } from 'mqtt';

// Probes that send as fast as they are acknowledged, and write down what was.

export type Noted = {
  readonly probe: string;
  readonly quantity: string;
  readonly t: number;
  readonly value: number;
};
export type Publisher = {
  readonly probe: string;
  /** What to send next: any quantity, any value, each time only once. */
  readonly next: () => Omit<Noted, 'probe'>;
};

/** Starts one client that sends for a probe, `inFlight` messages at a time, until it is stopped. */
export async function startPublisher(
  port: number,
  { probe, next }: Publisher,
  acknowledged: Noted[],
  inFlight: number,
) {
  const client: MqttClient = await connectAsync(`mqtt://127.0.0.1:${port}`, {
    clientId: `${probe}-${Math.random().toString(36).slice(2)}`,
    reconnectPeriod: 0, // what was not acknowledged when the hub died is not noted, so not asked for
  });
  client.on('error', () => {}); // the hub is killed under it
  let going = true;
  const sendOn = async () => {
    while (going && client.connected) {
      const { quantity, t, value } = next();
      const payload = JSON.stringify({ v: value, t });
      try {
        await client.publishAsync(`garden/${probe}/${quantity}`, payload, { qos: 1 });
      } catch {
        return; // cut off before it was acknowledged
      }
      acknowledged.push({ probe, quantity, t, value });
    }
  };
  for (let i = 0; i < inFlight; i++) void sendOn();
  return {
    async stop() {
      going = false;
      await client.endAsync(true);
    },
  };
}

/** Numbers from 0 to 1 that are the same each time: a linear congruential generator (Numerical Recipes). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
