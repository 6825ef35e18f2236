import { connect, type Socket } from 'node:net';
import { onTestFinished } from 'vitest';

/** Bytes on a socket, as no decent client would send them. */
export async function rawClient(address: string): Promise<Socket & { readonly got: () => Buffer }> {
  const { hostname, port } = new URL(address);
  const socket = connect(Number(port), hostname);
  onTestFinished(() => {
    socket.destroy();
  });
  socket.on('error', () => {});
  const chunks: Buffer[] = [];
  socket.on('data', (chunk) => chunks.push(chunk));
  await new Promise<void>((resolve) => socket.once('connect', () => resolve()));
  return Object.assign(socket, { got: () => Buffer.concat(chunks) });
}

const text = (words: string) => {
  const bytes = Buffer.from(words);
  return Buffer.concat([Buffer.from([bytes.length >> 8, bytes.length & 0xff]), bytes]);
};
const packet = (first: number, body: Buffer) => {
  const length: number[] = [];
  let rest = body.length;
  do {
    length.push((rest % 128) | (rest >= 128 ? 0x80 : 0));
    rest = Math.floor(rest / 128);
  } while (rest > 0);
  return Buffer.concat([Buffer.from([first, ...length]), body]);
};

/** CONNECT of MQTT 3.1.1 (section 3.1) with a clean session. */
export const connectPacket = (id: string, user?: string, password = '', keepAlive = 0) =>
  packet(
    0x10,
    Buffer.concat([
      text('MQTT'),
      Buffer.from([4, user === undefined ? 0x02 : 0xc2, keepAlive >> 8, keepAlive & 0xff]),
      text(id),
      ...(user === undefined ? [] : [text(user), text(password)]),
    ]),
  );
/** PUBLISH (section 3.3); QoS 1 when it has an id. */
export const publishPacket = (topic: string, message: string | Buffer, id?: number) =>
  packet(
    id === undefined ? 0x30 : 0x32,
    Buffer.concat([
      text(topic),
      ...(id === undefined ? [] : [Buffer.from([id >> 8, id & 0xff])]),
      Buffer.from(message),
    ]),
  );
/** SUBSCRIBE (section 3.8) to several filters at once. */
export const subscribePacket = (filters: readonly string[], id = 1) =>
  packet(
    0x82,
    Buffer.concat([
      Buffer.from([id >> 8, id & 0xff]),
      ...filters.map((filter) => Buffer.concat([text(filter), Buffer.from([0])])),
    ]),
  );
