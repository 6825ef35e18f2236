import { mayChange } from '../state.ts';
import { words } from '../words.ts';

/** What stands where the farm would, before anybody has told where it lies. */
export function NoFarm() {
  const text = words.setUpSteps;
  if (!mayChange.value) return <p>{text.waits}</p>;
  return (
    <>
      <p class="sentence">{text.begin}</p>
      <p>
        <a href="/set-up">{text.beginNow}</a>
      </p>
    </>
  );
}
