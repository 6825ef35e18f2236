import type { SowingPlanShown } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';

/** What sowing takes each week, and how full the houses are. */
export function PlanWork({ plan, money }: { plan: SowingPlanShown; money: string }) {
  const text = words.planning;
  const { week, trays, minutes, seed } = text.workColumns;
  const dash = words.places.dash;
  return (
    <>
      {plan.work.length > 0 && (
        <section>
          <h2>{text.work}</h2>
          <FigureTable
            label={text.work}
            look="plan-work"
            columns={[week, trays, minutes, seed]}
            rows={plan.work.map((one) => [
              text.day(one.from),
              one.trays,
              one.minutes ?? dash,
              one.seed === null ? dash : text.seed(one.seed, money),
            ])}
          />
          <p class="quiet">{text.workNote}</p>
        </section>
      )}
      {plan.rooms.length > 0 && (
        <section>
          <h2>{text.rooms}</h2>
          <dl class="rooms-free">
            {plan.rooms.map(({ place, name, words: said }) => (
              <div key={place}>
                <dt>{name}</dt>
                <dd>{said}</dd>
              </div>
            ))}
          </dl>
          <p class="quiet">{text.order}</p>
        </section>
      )}
    </>
  );
}
