import type { CoolRoom } from '../../hub/contract/index.ts';
import { shownValue } from '../parts/shownValue.ts';
import { words } from '../words.ts';

/** Said as a sentence above; the rest are figures. */
const SAID = 'may-be';

/** What was measured of the trouble, what is usual, and where that comes from. */
export function RoomWhy({ room, zone, now }: { room: CoolRoom; zone: string; now: number }) {
  const text = words.room;
  const facts = room.evidence.filter(({ what }) => what !== SAID);
  if (facts.length === 0) return null;
  const held = { zone, now };
  return (
    <details>
      <summary>{text.why}</summary>
      <dl class="evidence">
        {facts.map((fact) => (
          <div key={fact.what}>
            <dt>{words.evidence(fact.what)}</dt>
            <dd class="evidence-value">{shownValue(fact.value, fact.unit, held)}</dd>
            {fact.limit !== null && <dd>{text.held(shownValue(fact.limit, fact.unit, held))}</dd>}
            <dd class="quiet">{text.source(fact.source)}</dd>
            {fact.method != null && (
              <dd>
                <a class="how-link" href={`/how/${fact.method}`}>
                  {words.how.link}
                  <span class="unseen">: {words.evidence(fact.what)}</span>
                </a>
              </dd>
            )}
          </div>
        ))}
      </dl>
    </details>
  );
}
