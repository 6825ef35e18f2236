import { now } from '../clock.ts';
import { connect } from '../live.ts';
import { farm, link, today } from '../state.ts';
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
    </div>
  );
}

function sentence(since: number | null): string {
  const zone = farm.value?.zone;
  const clock = now.value;
  if (since === null || zone === undefined || clock === null) {
    return `${words.state.noAnswer}. ${words.link.again}`;
  }
  const old = today.value ? clock - Date.parse(today.value.asOf) : null;
  return `${words.link.lost(when(since, zone, clock), old)} ${words.link.again}`;
}
