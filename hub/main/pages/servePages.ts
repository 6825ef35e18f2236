import { existsSync } from 'node:fs';
import type { Server } from 'node:https';
import type { Logger } from 'pino';
import { type ApiParts, buildServer } from '../../api/index.ts';
import { wallClock } from '../../clock.ts';
import type { Settings } from '../../settings.ts';
import { pagesFolder, version } from '../verbs/package.ts';
import { readCertificate } from './certificate.ts';
import { warnOfItsEnd, watchCertificate } from './watchCertificate.ts';

/**
 * The pages and their JSON, over HTTP or, with a certificate, over TLS.
 *
 * @throws Error in one sentence when the certificate cannot be used, or the port not be had.
 */
export async function servePages(
  parts: ApiParts,
  settings: Settings<'start'>,
  cookieSecret: string,
  log: Logger,
) {
  const { cert, key, host: hosts } = settings;
  const files = cert !== undefined && key !== undefined ? { cert, key } : null;
  const now = () => (wallClock.isSet() ? wallClock.now() : null);
  const certificate = files && readCertificate(files, now());
  if (certificate) warnOfItsEnd(certificate, log, now());
  const app = await buildServer(parts, {
    cookieSecret,
    pages: existsSync(pagesFolder) ? pagesFolder : null,
    version,
    certificate,
    hosts: [...(hosts ?? []), settings.http.host],
    log,
    onFault: (error, request) => {
      parts.store.note(error);
      log.error({ err: error, request }, 'a request failed');
    },
  });
  const address = await app.listen(settings.http);
  const unwatch =
    files &&
    watchCertificate(
      files,
      (renewed) => (app.server as unknown as Server).setSecureContext(renewed),
      log,
      now,
    );
  return {
    address: certificate ? address.replace(/^http:/, 'https:') : address,
    async close() {
      unwatch?.();
      await app.close();
    },
  };
}
