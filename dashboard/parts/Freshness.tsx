import { now } from '../clock.ts';
import { words } from '../words.ts';

/** The age of a reading in words; an old one is called old. */
export function Freshness({ readAt, stale }: { readAt: string | null; stale: boolean }) {
  if (readAt === null) return <span class="old">{words.state.neverRead}</span>;
  const past = Math.max(0, (now.value ?? Date.parse(readAt)) - Date.parse(readAt));
  if (stale) return <strong class="old">{words.state.oldReading(past)}</strong>;
  return <span class="quiet">{words.state.read(past)}</span>;
}
