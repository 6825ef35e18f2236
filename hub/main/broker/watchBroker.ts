import type { Logger } from 'pino';

/** ms of a wall clock, ours. */
const BETWEEN = 2000;

/** Writes to the log when the broker is lost, and when it is back. @returns ends it. */
export function watchBroker(connected: () => boolean, log: Logger, between = BETWEEN): () => void {
  let was = connected();
  if (!was) log.warn('the broker cannot be reached');
  const timer = setInterval(() => {
    const is = connected();
    if (is === was) return;
    was = is;
    if (is) log.info('the broker is back');
    else log.warn('the broker is lost');
  }, between);
  timer.unref();
  return () => clearInterval(timer);
}
