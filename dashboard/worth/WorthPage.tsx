import './worth.css';
import type { CropsLearned } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { Mark, type Shape } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { GroupTable } from './GroupTable.tsx';
import { UnitTable } from './UnitTable.tsx';
import { WorthPicture } from './WorthPicture.tsx';

const shapes: Readonly<Record<CropsLearned['groups'][number]['verdict'], Shape>> = {
  pays: 'done',
  'does-not-pay': 'no',
  'cannot-tell': 'unknown',
};

/** What an hour on each crop brings: first in sentences, then as a picture, then batch by batch. */
export function WorthPage() {
  const text = words.worth;
  const { facts, fault, again } = useFacts<CropsLearned>('/api/learn/crops');
  return (
    <div class="worth-page">
      <Heading title={text.title} />
      {facts === null ? <Fault sentence={fault} again={again} /> : <Learned facts={facts} />}
    </div>
  );
}

function Learned({ facts }: { facts: CropsLearned }) {
  const text = words.worth;
  const { groups, stops, pickOns, units, growing } = facts;
  const links = (
    <p class="worth-links">
      <a href="/batches">{text.toBatches}</a>
      <a href="/pickings">{text.toPicks}</a>
    </p>
  );
  if (units.length === 0 && pickOns.length === 0)
    return (
      <>
        <p class="sentence">{text.empty}</p>
        {growing > 0 && <p>{text.growing(growing)}</p>}
        {links}
        <How facts={facts} />
      </>
    );
  return (
    <>
      <p class="quiet">{text.lead}</p>
      <section>
        <h2>{text.answers}</h2>
        <ul class="worth-sentences">
          {inShort(facts).map((group) => (
            <li key={`${group.of} ${group.name}`}>
              <Mark shape={shapes[group.verdict]} /> {group.words}
            </li>
          ))}
        </ul>
        {growing > 0 && <p class="quiet">{text.growing(growing)}</p>}
        {links}
      </section>
      <WorthPicture facts={facts} />
      <section>
        <h2>{text.pickOns}</h2>
        {pickOns.length === 0 ? (
          <p class="quiet">{text.noPickOn}</p>
        ) : (
          pickOns.map((one) => <Said key={`${one.place} ${one.crop}`} lines={one.words} />)
        )}
      </section>
      <section>
        <h2>{text.stops}</h2>
        {stops.map((one) => (
          <Said key={`${one.of} ${one.crop}`} lines={one.words} />
        ))}
      </section>
      <GroupTable groups={groups} money={facts.money} />
      <UnitTable units={units} />
      <How facts={facts} />
    </>
  );
}

/** Crops in their places; what stands in one place only would say the same twice as its crop. */
const inShort = ({ groups }: CropsLearned) => {
  const order = ['pays', 'cannot-tell', 'does-not-pay'];
  return groups
    .filter(({ by }) => by === 'crop-place')
    .sort(
      (a, b) =>
        order.indexOf(a.verdict) - order.indexOf(b.verdict) ||
        (b.perHour?.ratio ?? 0) - (a.perHour?.ratio ?? 0),
    );
};

function Said({ lines: [first = '', ...rest] }: { lines: readonly string[] }) {
  return (
    <div class="worth-answer">
      <p>
        <strong>{first}</strong>
      </p>
      {rest.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

function How({ facts }: { facts: CropsLearned }) {
  return (
    <details>
      <summary>{words.worth.how}</summary>
      <ul>
        {facts.how.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
