import { connect, type IClientOptions, type MqttClient } from 'mqtt';
import { onTestFinished } from 'vitest';

/** A client of a broker on this machine, gone when the test is over. @throws when it is refused. */
export async function connected(
  address: string,
  options: IClientOptions = {},
): Promise<MqttClient> {
  const client = connect(address, { reconnectPeriod: 50, connectTimeout: 5000, ...options });
  onTestFinished(() => {
    client.end(true);
  });
  await new Promise<void>((resolve, reject) => {
    client.once('connect', () => resolve());
    client.once('error', (error) => {
      if (options.reconnectPeriod === 0) reject(error);
    });
    client.once('close', () => {
      if (options.reconnectPeriod === 0) reject(new Error('closed'));
    });
  });
  client.on('error', () => {});
  return client;
}

/** Waits until `is` is true, for at most five seconds. */
export async function eventually(what: string, is: () => boolean): Promise<void> {
  const until = Date.now() + 5000;
  while (!is()) {
    if (Date.now() > until) throw new Error(`Expected ${what} within 5 s, got nothing of it`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
