import type { FarmPreview } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** What would change, or what keeps it from being stored, as the hub said it. */
export function Preview({
  seen,
  beside,
}: {
  seen: FarmPreview | null;
  beside: (field: string) => boolean;
}) {
  const text = words.setUpSteps;
  const { faults = [], changes = [], lost = [] } = seen ?? {};
  const elsewhere = faults.filter(({ field }) => !beside(field));
  return (
    <div class="would-change" aria-live="polite">
      {faults.length > elsewhere.length && <p class="failed-line">{text.seeAbove}</p>}
      {elsewhere.length > 0 && (
        <ul class="failed-line">
          {elsewhere.map(({ field, sentence }) => (
            <li key={field + sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {faults.length === 0 && changes.length > 0 && (
        <>
          <p class="quiet">{text.preview}</p>
          <ul>
            {changes.map((line) => (
              <li key={line}>{line}</li>
            ))}
            {lost.map((line) => (
              <li key={`lost ${line}`}>{text.lost(line)}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
