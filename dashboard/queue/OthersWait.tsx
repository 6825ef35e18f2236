import { words } from '../words.ts';
import { ofOthers } from './waits.ts';

/** Entries of people who are not here: how many, and whose; never what they say. */
export function OthersWait() {
  if (ofOthers.value.length === 0) return null;
  return (
    <div class="banner-place">
      {ofOthers.value.map(([name, n]) => (
        <p key={name} class="quiet">
          {words.queue.others(n, name)}
        </p>
      ))}
    </div>
  );
}
