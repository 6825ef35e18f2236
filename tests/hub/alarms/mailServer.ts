import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { onTestFinished } from 'vitest';
import type { Email, MailServer } from '../../../hub/alarms/index.ts';

// A real mail server on this machine. Its certificate is for tests only and signs itself.

const tls = new URL('../../fixtures/tls/', import.meta.url).pathname;
export const certificate = readFileSync(`${tls}cert.pem`, 'utf8');
const key = readFileSync(`${tls}key.pem`, 'utf8');

export type Received = { readonly from: string; readonly to: string[]; readonly raw: string };

export type MailListener = Awaited<ReturnType<typeof openMailServer>>;

/** The same until the test is over. */
export async function startMailServer(options: SMTPServerOptions = {}): Promise<MailListener> {
  const opened = await openMailServer(options);
  onTestFinished(opened.close);
  return opened;
}

/** A mail server that keeps what it takes. */
export async function openMailServer(options: SMTPServerOptions = {}) {
  const received: Received[] = [];
  const server = new SMTPServer({
    cert: certificate,
    key,
    authOptional: true,
    disableReverseLookup: true,
    onData(stream, session, callback) {
      let raw = '';
      stream.setEncoding('utf8');
      stream.on('data', (text: string) => {
        raw += text;
      });
      stream.on('end', () => {
        const { mailFrom, rcptTo } = session.envelope;
        const to = rcptTo.map(({ address }) => address);
        received.push({ from: mailFrom ? mailFrom.address : '', to, raw });
        callback(null, 'queued as 7F3A');
      });
    },
    ...options,
  });
  server.on('error', () => {}); // clients that refuse the certificate hang up
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  const close = () => new Promise<void>((resolve) => server.close(() => resolve()));
  return { port, received, close };
}

export const mailTo = (port: number, more: Partial<MailServer> = {}): MailServer => ({
  host: 'localhost',
  port,
  security: 'starttls',
  user: null,
  password: null,
  from: 'hub@garden.example.org',
  certificate,
  ...more,
});
export const anEmail = (more: Partial<Email> = {}): Email => ({
  id: 'raised|a|b|ann|email',
  to: 'ann@example.org',
  subject: 'Alarm: Shut the door',
  text: 'Shut the door.\n',
  urgent: true,
  answers: null,
  ...more,
});

/** A port of this machine on which nobody listens. */
export async function deadPort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  await new Promise((resolve) => server.close(resolve));
  return port;
}
