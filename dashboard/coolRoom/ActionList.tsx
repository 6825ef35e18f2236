import type { CorrectiveAction } from '../../hub/contract/index.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

/** What was seen, what was done, by whom, when; one that was corrected later still stands. */
export function ActionList({
  actions,
  zone,
  now,
}: {
  actions: readonly CorrectiveAction[];
  zone: string;
  now: number;
}) {
  const text = words.record;
  return (
    <>
      <h3>{text.actions}</h3>
      {actions.length === 0 ? (
        <p class="quiet">{text.noActions}</p>
      ) : (
        <ul class="plain-list actions">
          {actions.map((action) => {
            const said = text.action(action.saw, action.did);
            return (
              <li key={action.entry}>
                <span>
                  {when(Date.parse(action.at), zone, now)}, {action.by}:{' '}
                  {action.corrected ? <s>{said}</s> : said}{' '}
                  {action.core !== null && text.core(action.core)}{' '}
                  {action.corrected && <em>{text.correctedLater}</em>}
                  {action.corrects !== null && <em>{text.correctsEarlier}</em>}
                </span>
              </li>
            );
          })}
        </ul>
      )}
    </>
  );
}
