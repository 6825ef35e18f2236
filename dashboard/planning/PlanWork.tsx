import type { SowingPlanShown } from '../../hub/contract/index.ts';
import { Scrolled } from '../parts/Scrolled.tsx';
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
          <Scrolled label={text.work}>
            <table class="figures plan-work">
              <thead>
                <tr>
                  {[week, trays, minutes, seed].map((label) => (
                    <th key={label} scope="col">
                      {label}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {plan.work.map((one) => (
                  <tr key={one.from}>
                    <th scope="row">{text.day(one.from)}</th>
                    <td>{one.trays}</td>
                    <td>{one.minutes ?? dash}</td>
                    <td>{one.seed === null ? dash : text.seed(one.seed, money)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scrolled>
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
