import { farm } from '../state.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { changes } from './description.ts';

/** The newest change of the farm, for somebody whose own came too late for it. */
export function WhoWasQuicker() {
  const text = words.setUpSteps;
  const [newest] = changes.value;
  if (!newest) return null;
  const at = timeOfDay(Date.parse(newest.t), farm.value?.zone ?? 'UTC');
  return (
    <div>
      <p class="quiet">{text.theirs(newest.who, at)}</p>
      <ul>
        {newest.words.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}
