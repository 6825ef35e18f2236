import type { WorthGroup } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';

/** What each crop in each place took and brought, of those with everything known. */
export function GroupTable({ groups, money }: { groups: readonly WorthGroup[]; money: string }) {
  const text = words.worth;
  const { dash } = words.places;
  const amount = (value: number | null | undefined) => (value == null ? dash : text.amount(value));
  return (
    <section>
      <h2>{text.groupTitle}</h2>
      <FigureTable
        look="worth-figures"
        label={text.groupTitle}
        columns={Object.values(text.groupColumns)}
        rows={groups
          .filter(({ by }) => by === 'crop' || by === 'crop-place' || by === 'crop-season')
          .map(({ name, counted, units, sums, lossShare, perTrayKg, breakEven }) => [
            name,
            text.countedOf(counted, units),
            ...(counted === 0
              ? [dash, dash, dash]
              : [
                  sums.trays === 0 ? dash : words.number(sums.trays, 0),
                  words.number(sums.minutes / 60),
                  words.bareWeight(sums.kg),
                ]),
            lossShare === null ? dash : words.number(100 * lossShare, 0),
            perTrayKg === null ? dash : words.bareWeight(perTrayKg.ratio, 2),
            counted === 0 ? dash : text.amountIn(sums.earned, money),
            amount(breakEven && words.perWeight(breakEven.ratio)),
          ])}
      />
    </section>
  );
}
