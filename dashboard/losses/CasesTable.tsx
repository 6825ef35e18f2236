import type { LossComparison, LossFamily } from '../../hub/contract/index.ts';
import { Scrolled } from '../parts/Scrolled.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

/** The weeks, batches or lots behind a sentence, so that anybody can count again. */
export function CasesTable({ one, family }: { one: LossComparison; family: LossFamily }) {
  const text = words.losses;
  const side = (exposed: boolean | null | undefined) =>
    exposed == null ? text.notSaid : exposed ? text.exposed : text.notExposed;
  return (
    <>
      <h5>{text.behind}</h5>
      <Scrolled label={`${text.behind}: ${family.name}, ${one.label}`}>
        <table class="figures loss-cases">
          <thead>
            <tr>
              {Object.values(text.caseColumns).map((name) => (
                <th scope="col" key={name}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {family.cases.map((each, i) => {
              const before = each.exposure[one.what];
              const { share } = each;
              return (
                <tr key={each.id}>
                  <th scope="row">
                    {family.unit === 'batch' || family.unit === 'lot'
                      ? text.caseLot(each.name, shortDay(each.from))
                      : text.caseWeek(each.name, shortDay(each.from))}
                  </th>
                  <td>
                    {before ? text.between(before.least, before.most, one.unit) : words.notKnown},{' '}
                    {side(one.cases[i]?.exposed)}
                  </td>
                  <td>
                    {share
                      ? text.between(100 * share.least, 100 * share.most, '%')
                      : words.notKnown}
                  </td>
                  <td>{text.bases[each.basis]}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scrolled>
    </>
  );
}
