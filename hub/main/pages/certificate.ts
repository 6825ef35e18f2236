import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto';
import { readText } from '../verbs/readText.ts';

export type Certificate = { readonly cert: string; readonly key: string; readonly until: number };

function read<Shape>(what: string, file: string, work: () => Shape): Shape {
  try {
    return work();
  } catch {
    // Why is left out: a message of the library may hold parts of what it read.
    throw new Error(`Expected ${what} in PEM in ${file}, got something else`);
  }
}

/**
 * A certificate (with those it leans on, if any, after it) and its private key, both in PEM.
 *
 * @param now ms since 1970; null while the machine's clock is not set: then no day can be judged.
 * @throws Error in one sentence when a file cannot be read, the two do not belong together, or the
 * certificate does not count yet or any more.
 */
export function readCertificate(
  files: { cert: string; key: string },
  now: number | null,
): Certificate {
  const cert = readText(files.cert);
  const key = readText(files.key);
  const certificate = read('a certificate', files.cert, () => new X509Certificate(cert));
  const secret: KeyObject = read('a private key without a password', files.key, () =>
    createPrivateKey(key),
  );
  if (!certificate.checkPrivateKey(secret))
    throw new Error(
      `Expected the private key of the certificate ${files.cert} in ${files.key}, got another one`,
    );
  const [from, until] = [Date.parse(certificate.validFrom), Date.parse(certificate.validTo)];
  const day = (t: number) => new Date(t).toISOString().slice(0, 10);
  if (now !== null && now >= until)
    throw new Error(
      `Expected a certificate that counts today in ${files.cert}, got one that ended on ${day(until)}`,
    );
  if (now !== null && now < from)
    throw new Error(
      `Expected a certificate that counts today in ${files.cert}, got one that begins on ${day(from)}`,
    );
  return { cert, key, until };
}
