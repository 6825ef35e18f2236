import { connect, lost, refresh } from './live.ts';
import { startWaits, whenStored } from './queue/index.ts';
import { returns } from './state.ts';

/** Shows what waits from before; pages ask again when something that had waited was stored. */
export function startQueue(): void {
  whenStored(() => {
    returns.value += 1;
    refresh();
  });
  startWaits();
  // Told by the browser when the network goes and comes; a hub on this machine is reached all the same.
  addEventListener('offline', () => lost(null));
  addEventListener('online', () => connect());
}
