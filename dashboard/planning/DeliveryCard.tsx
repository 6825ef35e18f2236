import type { PlannedDelivery } from '../../hub/contract/index.ts';
import { Mark } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { WantRow } from './WantRow.tsx';

const SHAPES = { nothing: 'no', covered: 'done', 'to-sow': 'later', short: 'care' } as const;

/** One delivery: what is wanted, whether it is covered, and where it comes from. */
export function DeliveryCard({
  delivery,
  onStored,
}: {
  delivery: PlannedDelivery;
  onStored: (sentence: string) => void;
}) {
  const text = words.planning;
  const { day, wants, parts, state, words: said } = delivery;
  return (
    <article class="delivery">
      <h3>{text.longDay(day)}</h3>
      <p class="delivery-state">
        <Mark shape={SHAPES[state]} /> <strong>{text.states[state]}</strong>
      </p>
      <p>{said}</p>
      <ul class="wants">
        {wants.map((want) => (
          <WantRow key={want.of} day={day} want={want} onStored={onStored} />
        ))}
      </ul>
      {parts.length > 0 && (
        <details>
          <summary>{text.where}</summary>
          <dl class="sources">
            {parts.map(({ crop, name, kg, sources, toSow, shortfalls }) => (
              <div key={crop}>
                <dt>
                  {name}, {text.weight(kg)}
                </dt>
                {sources.map(({ id, words: line }) => (
                  <dd key={id}>{line}</dd>
                ))}
                {toSow > 0 && <dd>{text.toBeSown(toSow)}</dd>}
                {shortfalls.map(({ reason, words: line }) => (
                  <dd key={reason}>{line}</dd>
                ))}
              </div>
            ))}
          </dl>
        </details>
      )}
    </article>
  );
}
