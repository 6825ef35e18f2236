import type { Probe, RefusedMessages } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

type Refused = Probe['refused'][number] & Partial<Pick<RefusedMessages, 'source'>>;

/** What could not be used, by reason, with the last one as an example. */
export function RefusedList({ refused, now }: { refused: readonly Refused[]; now: number }) {
  const text = words.probes;
  return (
    <ul class="plain-list">
      {refused.map(({ source, reason, count, words: why, last, lastAt }) => (
        <li key={`${source}${reason}`}>
          <span>
            {source !== undefined && <strong>{source}: </strong>}
            {text.refusedLine(count, why, now - Date.parse(lastAt))}
            <br />
            <span class="quiet">
              {text.lastMessage}: <code>{last}</code>
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
}
