import { type Logger, pino } from 'pino';

const LEVELS = ['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'];

/** Never written, wherever they stand in what is logged. */
const SECRETS = ['password', 'newPassword', 'claimCode', 'cookie', 'authorization'];

/**
 * JSON lines on standard error, one thing that happened each: `level` (10 trace … 60 fatal), `time`
 * in ms since 1970, `msg`. How much, by DEWPOST_LOG.
 *
 * @throws Error for a level that there is not.
 */
export function makeLog(): Logger {
  const level = process.env.DEWPOST_LOG ?? 'info';
  if (!LEVELS.includes(level))
    throw new Error(`Expected one of ${LEVELS.join(', ')} in DEWPOST_LOG, got ${level}`);
  const redact = SECRETS.flatMap((name) => [name, `*.${name}`, `*.*.${name}`]);
  return pino({ level, redact }, pino.destination(2));
}
