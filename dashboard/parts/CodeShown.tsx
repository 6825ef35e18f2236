import { useEffect, useRef } from 'preact/hooks';
import type { MadeCode, PendingCode } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { dayName, timeOfDay } from '../times.ts';
import { words } from '../words.ts';

/** Until when a code counts, in the farm's time. */
export function codeUntil({ until }: Pick<PendingCode, 'until'>): string {
  const zone = farm.value?.zone ?? 'UTC';
  const t = Date.parse(until);
  return `${dayName(t, zone)}, ${timeOfDay(t, zone)}`;
}

/** A code that was just made: the only time it can be read. */
export function CodeShown({ made, onSeen }: { made: MadeCode; onSeen: () => void }) {
  const text = words.setUp;
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => box.current?.focus(), [made.id]);
  return (
    <div class="code-shown" tabIndex={-1} ref={box}>
      <h3>{text.codeFor(text.roles[made.role], made.name)}</h3>
      <p class="code-itself">{made.code}</p>
      <p>{text.codeWhy(codeUntil(made))}</p>
      <button type="button" onClick={onSeen}>
        {text.codeSeen}
      </button>
    </div>
  );
}
