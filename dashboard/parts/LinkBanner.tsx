import { now } from '../clock.ts';
import { connect } from '../live.ts';
import { oldestAnswer, showsBefore } from '../queue/index.ts';
import { farm, link, returns, today } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

/** Says plainly that the hub is out of reach, since when, and how old the page is. */
export function LinkBanner() {
  const { value } = link;
  return (
    <div role="status" class="banner-place">
      {value.state === 'lost' && (
        <p class="banner">
          <span>{sentence(value.since)}</span>
          <button type="button" onClick={() => connect()}>
            {words.link.now}
          </button>
        </p>
      )}
      {value.state !== 'lost' && showsBefore() && (
        <p class="banner">
          <span>
            {words.queue.fromBefore((now.value ?? 0) - (oldestAnswer() ?? now.value ?? 0))}
          </span>
          <button type="button" onClick={() => returns.value++}>
            {words.link.now}
          </button>
        </p>
      )}
    </div>
  );
}

function sentence(since: number | null): string {
  const zone = farm.value?.zone;
  const clock = now.value;
  if (since === null || zone === undefined || clock === null) {
    return `${words.state.noAnswer}. ${words.link.again}`;
  }
  // As old as the oldest of what stands on the page: nothing looks fresher than it is.
  const asOf = today.value ? Date.parse(today.value.asOf) : null;
  const ages = [asOf, oldestAnswer()].filter((at) => at !== null);
  const old = ages.length > 0 ? clock - Math.min(...ages) : null;
  return `${words.link.lost(when(since, zone, clock), old)} ${words.link.again}`;
}
