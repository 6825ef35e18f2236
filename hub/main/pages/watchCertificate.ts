import { unwatchFile, watchFile } from 'node:fs';
import type { Logger } from 'pino';
import { type Certificate, readCertificate } from './certificate.ts';

/** Files are looked at this often. ms, ours: a certificate is renewed weeks before its end. */
const BETWEEN = 10_000;
/** The two files are seldom written at the same moment. ms, ours. */
const SETTLE = 1000;
const DAY = 86_400_000; // ms
/** From here on each start and change of the files says that the end is near. Ours. */
const NEAR = 14 * DAY;

/**
 * Takes a renewed certificate into use without a restart: when one of its files changes, or at
 * SIGHUP. One that cannot be used is told in the log, and the old one stays.
 *
 * @param between ms between two looks at the files.
 * @returns ends it.
 */
export function watchCertificate(
  files: { readonly cert: string; readonly key: string },
  use: (certificate: Certificate) => void,
  log: Logger,
  now: () => number | null,
  between = BETWEEN,
): () => void {
  let soon: NodeJS.Timeout | undefined;
  const again = () => {
    try {
      const certificate = readCertificate(files, now());
      use(certificate);
      log.info({ until: new Date(certificate.until).toISOString() }, 'the certificate is renewed');
      warnOfItsEnd(certificate, log, now());
    } catch (error) {
      log.error(error, 'the new certificate cannot be used; the old one stays');
    }
  };
  const changed = () => {
    clearTimeout(soon);
    soon = setTimeout(again, SETTLE);
  };
  for (const file of [files.cert, files.key]) watchFile(file, { interval: between }, changed);
  process.on('SIGHUP', again);
  return () => {
    clearTimeout(soon);
    for (const file of [files.cert, files.key]) unwatchFile(file, changed);
    process.off('SIGHUP', again);
  };
}

export function warnOfItsEnd({ until }: Certificate, log: Logger, now: number | null) {
  if (now !== null && until - now < NEAR)
    log.warn({ until: new Date(until).toISOString() }, 'the certificate ends soon');
}
