import type { Batch } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

const DAY = 86_400_000; // ms

/** Where a batch stood over time: a thin bar with the places written in it, and all of it in words. */
export function StayStrip({ batch, now }: { batch: Batch; now: number }) {
  const text = words.batches;
  const end = batch.endedAt === null ? now : Date.parse(batch.endedAt);
  const stays = batch.stays.map(({ placeName, from, to }) => {
    const days = Math.max(0, (to === null ? end : Date.parse(to)) - Date.parse(from)) / DAY;
    return { name: placeName, days };
  });
  if (stays.length < 2) return null;
  return (
    <>
      <div class="stay-strip" aria-hidden="true">
        {stays.map(({ name, days }, i) => (
          // A short stay keeps a width that can be seen.
          <span key={i} style={{ flexGrow: Math.max(days, 0.5) }}>
            {name}
          </span>
        ))}
      </div>
      <p class="quiet stay-words">
        {text.strip(stays.map(({ name, days }) => text.stripStay(name, days)))}
      </p>
    </>
  );
}
