import type { Logger } from 'pino';

/** One part's share of the two seconds in which the hub stops. ms, ours. */
const PATIENCE = 400;

/** Ends one part; one that does not end in time, or fails to, keeps the others from nothing. */
export async function inTime(end: () => unknown, log: Logger): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(() => {
      log.warn({ ms: PATIENCE }, 'a part of the hub did not end in time');
      resolve();
    }, PATIENCE);
  });
  try {
    await Promise.race([end(), late]);
  } catch (error) {
    log.error(error, 'a part of the hub failed to end');
  } finally {
    clearTimeout(timer);
  }
}
