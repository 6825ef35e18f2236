import type { CutBack } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { shownFigure } from './shownFigure.ts';

/** What would change the day, the ways compared, and the figures all of it rests on. */
export function CutBackChanges({ plan }: { plan: CutBack }) {
  const text = words.cutBack;
  const currency = farm.value?.money ?? 'EUR';
  const said = ({ value, unit }: CutBack['changes'][number]) =>
    unit === 'money'
      ? words.withUnit(words.perWeight(value), currency, 2)
      : unit === 'probability'
        ? words.chance(value)
        : words.number(value, 0);
  return (
    <>
      <h3>{text.changes}</h3>
      <ul class="plain-list changes">
        {plan.advice !== 'wait' && <li>{text.frostFirst(words.temperature(plan.damage))}</li>}
        {plan.changes.map((change) => (
          <li key={change.what}>{text.change[change.what](said(change), shortDay(change.best))}</li>
        ))}
        {plan.changes.length === 0 && <li>{text.unchanged}</li>}
      </ul>
      {plan.ways && (
        <>
          <h3>{text.ways}</h3>
          <dl class="facts">
            {(['keep', 'clean', 'cut'] as const).map((way) => {
              const value = plan.ways?.[way] ?? null;
              return (
                <div key={way}>
                  <dt>{text.way[way]}</dt>
                  <dd>{value === null ? words.notKnown : text.money(value, currency)}</dd>
                </div>
              );
            })}
          </dl>
          {(['clean', 'cut'] as const).map(
            (way) =>
              plan.ways?.[way] === null && (
                <p key={way} class="quiet">
                  {text.wayUnknown[way]}
                </p>
              ),
          )}
        </>
      )}
      <details>
        <summary>{text.assumed}</summary>
        <dl class="facts">
          {plan.assumed.map(({ what, value, unit, from }) => (
            <div key={what}>
              <dt>
                {text.figure(what)} <span class="quiet">({text.figureFrom[from]})</span>
              </dt>
              <dd>{shownFigure(value, unit)}</dd>
            </div>
          ))}
        </dl>
      </details>
    </>
  );
}
