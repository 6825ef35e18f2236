import type { PlannedSowing } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { words } from '../words.ts';

/** Sowings in the order of their days, those of one day and place together. */
export function SowingRows({ sowings }: { sowings: readonly PlannedSowing[] }) {
  const text = words.planning;
  const groups = new Map<string, PlannedSowing[]>();
  for (const one of sowings) {
    const key = `${one.day} ${one.place}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return (
    <ul class="sowings">
      {[...groups].map(([key, [first, ...others]]) =>
        first === undefined ? null : (
          <li key={key}>
            <h3>
              {text.day(first.day)} <span class="quiet">{text.inPlace(first.placeName)}</span>
            </h3>
            <ul>
              {[first, ...others].map((one) => (
                <li key={`${one.crop} ${one.delivery}`}>
                  {one.late && (
                    <span class="late-word">
                      <Mark shape="care" /> {text.late}:{' '}
                    </span>
                  )}
                  <strong>{text.trays(one.trays, one.name)}</strong>
                  <span class="sowing-words">{one.words}</span>
                </li>
              ))}
            </ul>
          </li>
        ),
      )}
    </ul>
  );
}
