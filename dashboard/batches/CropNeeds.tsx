import './growing.css';
import type { CropGrowing } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { FigureTable } from '../parts/FigureTable.tsx';
import { dayName } from '../times.ts';
import { words } from '../words.ts';
import { NeedDots } from './NeedDots.tsx';
import { YoungOrLater } from './YoungOrLater.tsx';

/** What one crop needs: its base, the heat past batches took, and young against later cut. */
export function CropNeeds({ crop, zone }: { crop: string; zone: string }) {
  const { facts, fault, again } = useFacts<CropGrowing>(
    `/api/crops/${encodeURIComponent(crop)}/growing`,
  );
  if (!facts) return <Fault sentence={fault} again={again} />;
  const text = words.growing;
  const { base, need, past } = facts;
  const degrees = (value: number) => words.temperature(value);
  const lower = degrees(base.lower);
  const said =
    base.from === 'own'
      ? text.base.own(
          lower,
          degrees(base.range?.low ?? base.lower),
          degrees(base.range?.high ?? base.lower),
          base.sowings,
        )
      : text.base[base.from](lower);
  return (
    <section class="crop-needs">
      <h2>{facts.name}</h2>
      <p>
        {need.later === null
          ? text.noNeed
          : text.needs(need.later.mean, need.later.low, need.later.high, need.later.batches)}
      </p>
      <p class="quiet">
        {said} {text.verdict[base.verdict]}
      </p>
      <NeedDots crop={facts} />
      {past.length > 0 && (
        <details>
          <summary>{text.pastTable(facts.name)}</summary>
          <PastTable crop={facts} zone={zone} />
        </details>
      )}
      <YoungOrLater crop={facts} />
    </section>
  );
}

function PastTable({ crop, zone }: { crop: CropGrowing; zone: string }) {
  const text = words.growing;
  const { columns } = text;
  return (
    <FigureTable
      label={text.pastTable(crop.name)}
      columns={[
        columns.batch,
        text.cut,
        columns.place,
        columns.ready,
        columns.days,
        columns.units,
        columns.seen,
      ]}
      rows={crop.past
        .toReversed()
        .map((one) => [
          one.batch,
          text.stage[one.stage],
          one.placeName,
          dayName(Date.parse(one.readyAt), zone),
          text.figure(one.days, null, null, 1),
          words.heat(one.degreeDays, 0),
          text.seen[one.seen],
        ])}
    />
  );
}
