import type { LossComparison, LossFamily } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
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
      <FigureTable
        label={`${text.behind}: ${family.name}, ${one.label}`}
        look="loss-cases"
        columns={Object.values(text.caseColumns)}
        rows={family.cases.map((each, i) => {
          const before = each.exposure[one.what];
          const { share } = each;
          return [
            family.unit === 'batch' || family.unit === 'lot'
              ? text.caseLot(each.name, shortDay(each.from))
              : text.caseWeek(each.name, shortDay(each.from)),
            `${before ? text.between(before.least, before.most, one.unit) : words.notKnown}, ${side(one.cases[i]?.exposed)}`,
            share ? text.between(100 * share.least, 100 * share.most, '%') : words.notKnown,
            text.bases[each.basis],
          ];
        })}
      />
    </>
  );
}
