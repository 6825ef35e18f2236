import { connect } from 'node:net';
import { oddText } from './odd.ts';
import type { Random } from './random.ts';

const LINES = [
  'GET /api/who HTTP/1.1',
  'GET  /api/who HTTP/1.1',
  'get /api/who HTTP/1.1',
  'GET /api/who HTTP/9.9',
  'GET /api/who',
  'GET http://127.0.0.1/api/today HTTP/1.1',
  'GET //api/today HTTP/1.1',
  'GET /api/who\u0000 HTTP/1.1',
  'GET * HTTP/1.1',
  'OPTIONS * HTTP/1.1',
  'CONNECT 127.0.0.1:22 HTTP/1.1',
  'TRACE /api/who HTTP/1.1',
  'POST /api/sign-in HTTP/1.1',
  'PRI * HTTP/2.0',
  `GET /${'a'.repeat(17_000)} HTTP/1.1`,
  '\u0016\u0003\u0001\u0002', // the beginning of a TLS handshake
];
const HEADERS = [
  'Host: 127.0.0.1',
  'Host: evil.example',
  'Host: a\r\nHost: b',
  'Content-Length: 5',
  'Content-Length: 99999999999999999999',
  'Content-Length: -1',
  'Content-Length: 0x5',
  'Transfer-Encoding: chunked',
  'Transfer-Encoding: gzip, chunked',
  'Transfer-Encoding : chunked',
  'Content-Type: application/json',
  'Expect: 100-continue',
  'Expect: 200-ok',
  'Upgrade: websocket\r\nConnection: upgrade',
  'Upgrade: h2c\r\nConnection: Upgrade, HTTP2-Settings\r\nHTTP2-Settings: AAMAAABk',
  'Connection: close, keep-alive',
  ' folded: line',
  'No colon here',
  `X: ${'y'.repeat(17_000)}`,
  'X: \u0000\u0001',
  'Cookie: dewpost=a; dewpost=b; dewpost',
];
const BODIES = [
  '',
  '{}',
  '5\r\n{"a":\r\n',
  'zz\r\n',
  '0\r\n\r\nGET /api/today HTTP/1.1\r\n\r\n',
  '\0\0',
];

/** A request that no library would send. */
export function bareRequest(random: Random): string {
  const headers = Array.from({ length: random.below(5) }, () =>
    random.chance(0.9) ? random.pick(HEADERS) : `${oddText(random)}: ${oddText(random)}`,
  );
  if (random.chance(0.7)) headers.unshift('Host: 127.0.0.1');
  return `${random.pick(LINES)}\r\n${headers.join('\r\n')}\r\n\r\n${random.pick(BODIES)}`;
}

/** Sends it, and says how the hub ended it: with an answer, or without; never, when it hangs. */
export const sendBare = (port: number, text: string, patience = 30_000) =>
  new Promise<string>((resolve, reject) => {
    let reply = '';
    const socket = connect(port, '127.0.0.1', () => {
      socket.end(text, 'latin1');
    });
    socket.setTimeout(patience, () => {
      socket.destroy();
      reject(new Error(`Expected an end, got silence after ${JSON.stringify(text.slice(0, 300))}`));
    });
    socket.setEncoding('latin1').on('data', (part) => {
      reply += part;
    });
    socket.on('error', () => {});
    socket.on('close', () => resolve(reply));
  });
