import { execFileSync } from 'node:child_process';
import { copyFileSync, utimesSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { connect, type PeerCertificate } from 'node:tls';
import { pino } from 'pino';
import { expect, onTestFinished, test } from 'vitest';
import { readCertificate } from '../../../hub/main/pages/certificate.ts';
import { servePages } from '../../../hub/main/pages/servePages.ts';
import { watchCertificate } from '../../../hub/main/pages/watchCertificate.ts';
import { executable } from '../../endToEnd/processes.ts';
import { quietLog, smallHub } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

const fixtures = new URL('../../fixtures/tls/', import.meta.url).pathname;
const pair = { cert: join(fixtures, 'cert.pem'), key: join(fixtures, 'key.pem') };
const NOW = Date.now();
const openssl = executable('openssl');
const needsOpenssl = openssl ? '' : ' (skipped: openssl is missing)';

/** Another pair, made on the spot. */
function newPair(days = '30', subject = '/CN=localhost') {
  const folder = tempFolder();
  const files = { cert: join(folder, 'cert.pem'), key: join(folder, 'key.pem') };
  execFileSync(openssl ?? '', [
    ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'],
    ...['-keyout', files.key, '-out', files.cert, '-days', days, '-subj', subject],
    ...['-addext', 'subjectAltName=DNS:localhost,IP:127.0.0.1'],
  ]);
  return files;
}

test('the pair for tests counts, and for long', () => {
  const { until } = readCertificate(pair, NOW);
  expect(until).toBeGreaterThan(Date.UTC(2100, 0, 1));
});

test('a file that is missing, or holds something else, is one sentence that names it', () => {
  const odd = join(tempFolder(), 'odd.pem');
  writeFileSync(odd, 'no PEM');
  expect(() => readCertificate({ ...pair, cert: '/no/such/file' }, NOW)).toThrow(
    /^Expected a file that can be read, got "\/no\/such\/file": ENOENT/,
  );
  expect(() => readCertificate({ ...pair, cert: odd }, NOW)).toThrow(
    `Expected a certificate in PEM in ${odd}, got something else`,
  );
  expect(() => readCertificate({ ...pair, key: odd }, NOW)).toThrow(
    `Expected a private key without a password in PEM in ${odd}, got something else`,
  );
});

test('a certificate that has ended, or has not begun, is told with its day', () => {
  const { until } = readCertificate(pair, NOW);
  expect(() => readCertificate(pair, until)).toThrow(
    /^Expected a certificate that counts today in .*cert\.pem, got one that ended on 2\d{3}-\d\d-\d\d$/,
  );
  expect(() => readCertificate(pair, Date.UTC(2020, 0, 1))).toThrow(/got one that begins on 20/);
  expect(readCertificate(pair, null).until).toBe(until); // the machine does not know the day
});

test.skipIf(!openssl)(`the key of another certificate is refused${needsOpenssl}`, () => {
  const other = newPair();
  expect(() => readCertificate({ ...pair, key: other.key }, NOW)).toThrow(
    /^Expected the private key of the certificate .*cert\.pem in .*key\.pem, got another one$/,
  );
});

async function overTls(files = pair) {
  const hub = smallHub({ open: false });
  const lines: string[] = [];
  const log = pino({}, { write: (line: string) => void lines.push(line) });
  const settings = {
    data: '',
    open: false,
    http: { host: '127.0.0.1', port: 0 },
    mqtt: { host: '127.0.0.1', port: 0 },
    ...files,
  };
  hub.core.look();
  const pages = await servePages(hub.parts, settings, 'only-for-tests-only-for-tests-only', log);
  onTestFinished(() => pages.close());
  const port = Number(new URL(pages.address).port);
  const shows = () =>
    new Promise<PeerCertificate>((resolve, reject) => {
      const socket = connect({ port, host: '127.0.0.1', rejectUnauthorized: false }, () => {
        resolve(socket.getPeerCertificate());
        socket.destroy();
      });
      socket.on('error', reject);
    });
  const get = (path: string) =>
    new Promise<{ status: number; headers: NodeJS.Dict<string | string[]> }>((resolve, reject) => {
      const asked = request({ port, path, rejectUnauthorized: false }, (reply) => {
        resolve({ status: reply.statusCode ?? 0, headers: reply.headers });
        reply.resume();
      });
      asked.on('error', reject).end();
    });
  return { ...hub, pages, port, shows, get, lines };
}

test('with a certificate the pages come over TLS, still without asking browsers to insist on it', async () => {
  const { pages, get } = await overTls();
  expect(pages.address).toMatch(/^https:\/\/127\.0\.0\.1:\d+$/);
  const { status, headers } = await get('/api/health');
  expect(status).toBe(200);
  expect(headers['strict-transport-security']).toBeUndefined();
  expect(headers['cross-origin-opener-policy']).toBe('same-origin');
});

test('TLS 1.1 is refused', async () => {
  const { port } = await overTls();
  const failed = await new Promise<string>((resolve) => {
    const socket = connect({
      ...{ port, host: '127.0.0.1', rejectUnauthorized: false },
      ...{ minVersion: 'TLSv1', maxVersion: 'TLSv1.1' },
    });
    socket.on('error', ({ message }) => resolve(message));
    socket.on('secureConnect', () => resolve('connected'));
  });
  expect(failed).not.toBe('connected');
});

test.skipIf(!openssl)(
  `a renewed certificate is used at SIGHUP, without a restart; one that cannot be used is not${needsOpenssl}`,
  async () => {
    const files = newPair('30', '/CN=before');
    const { shows, lines, get } = await overTls(files);
    expect((await shows()).subject.CN).toBe('before');
    const next = newPair('30', '/CN=after');
    copyFileSync(next.cert, files.cert);
    copyFileSync(next.key, files.key);
    process.emit('SIGHUP');
    expect((await shows()).subject.CN).toBe('after');
    expect(lines.join('')).toContain('the certificate is renewed');
    writeFileSync(files.cert, 'half a file');
    process.emit('SIGHUP');
    expect((await shows()).subject.CN).toBe('after');
    expect(lines.join('')).toContain('the new certificate cannot be used; the old one stays');
    expect((await get('/api/health')).status).toBe(200);
    expect(lines.join('')).not.toContain('PRIVATE KEY');
  },
);

test.skipIf(!openssl)(
  `a certificate that ends within two weeks is told in the log${needsOpenssl}`,
  async () => {
    const { lines } = await overTls(newPair('3'));
    expect(lines.join('')).toContain('the certificate ends soon');
  },
);

test.skipIf(!openssl)(
  `a change of the files is seen without any signal${needsOpenssl}`,
  async () => {
    const files = newPair('30', '/CN=before');
    const used: string[] = [];
    const end = watchCertificate(files, ({ cert }) => used.push(cert), quietLog, Date.now, 50);
    onTestFinished(end);
    const next = newPair('30', '/CN=after');
    copyFileSync(next.key, files.key);
    copyFileSync(next.cert, files.cert);
    // The first look at the files may come after this change: then a later one is seen.
    for (let i = 1; i <= 10 && used.length === 0; i++) {
      utimesSync(files.cert, NOW / 1000, NOW / 1000 + 60 * i);
      await wait(2500);
    }
    expect(used.at(-1)).toBe(readCertificate(next, null).cert);
  },
);
