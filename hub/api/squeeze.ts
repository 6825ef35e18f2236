import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import type { App } from './app.ts';

const squeezed = promisify(gzip);
const LEAST = 1500; // bytes; ours: what fits one packet gains nothing
const LEVEL = 4; // of 9; ours: a board's core spends little, and a phone at the edge of the radio gains most of it

/** Sends long JSON as gzip (RFC 9110, 8.4.1.3) to whoever takes it: a sixth of the bytes for a phone far off. */
export function squeezeJson(app: App) {
  app.addHook('onSend', async (request, reply, payload) => {
    if (typeof payload !== 'string' || payload.length < LEAST) return payload;
    if (!/^application\/json\b/.test(String(reply.getHeader('content-type')))) return payload;
    if (reply.hasHeader('content-encoding')) return payload;
    reply.header('vary', 'accept-encoding');
    if (request.method === 'HEAD' || !takesGzip(request.headers['accept-encoding'])) return payload;
    const bytes = await squeezed(payload, { level: LEVEL });
    reply.header('content-encoding', 'gzip');
    reply.header('content-length', bytes.length);
    return bytes;
  });
}

/** Whether it is named and not refused with a weight of nought (RFC 9110, 12.5.3). */
const takesGzip = (header: string | string[] | undefined) =>
  String(header ?? '')
    .split(',')
    .some((one) => {
      const [name = '', ...rest] = one.split(';').map((text) => text.trim().toLowerCase());
      return name === 'gzip' && !rest.some((text) => /^q=0(\.0*)?$/.test(text));
    });
