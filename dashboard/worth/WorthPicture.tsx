import { useState } from 'preact/hooks';
import type { CropsLearned, WorthGroup, WorthRange } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';
import { WorthChart } from './WorthChart.tsx';

const PERS = ['perHour', 'perTray', 'perTrayDay'] as const;
const BYS = ['crop', 'place', 'season', 'crop-place'] as const;
export type Drawn = { readonly group: WorthGroup; readonly range: WorthRange };

/** Earnings as dots and lines on one axis, and the same as a table; for each hour, tray or day of space. */
export function WorthPicture({ facts }: { facts: CropsLearned }) {
  const text = words.worth;
  const [per, setPer] = useState<(typeof PERS)[number]>('perHour');
  const [by, setBy] = useState<(typeof BYS)[number]>('crop');
  const drawn = facts.groups
    .flatMap((group): Drawn[] => {
      const range = group[per];
      return group.by === by && range !== null ? [{ group, range }] : [];
    })
    .sort((a, b) => b.range.ratio - a.range.ratio);
  const label = text.pictureLabel(text.bys[by], text[per], facts.money);
  const choice = <Name extends string>(
    legend: string,
    all: readonly Name[],
    nameOf: (name: Name) => string,
    now: Name,
    put: (name: Name) => void,
  ) => (
    <fieldset class="worth-switch">
      <legend>{legend}</legend>
      {all.map((one) => (
        <button type="button" key={one} aria-pressed={one === now} onClick={() => put(one)}>
          {nameOf(one)}
        </button>
      ))}
    </fieldset>
  );
  const { columns } = text;
  const amount = (value: number | null) => (value === null ? words.notKnown : text.amount(value));
  return (
    <section>
      <h2>{text.picture}</h2>
      {choice(text.per, PERS, (one) => text[one], per, setPer)}
      {choice(text.by, BYS, (one) => text.bys[one], by, setBy)}
      {drawn.length === 0 ? (
        <p>{text.noneToDraw}</p>
      ) : (
        <>
          <WorthChart drawn={drawn} wage={per === 'perHour' ? facts.wage : null} label={label} />
          <p class="quiet">
            {text.key}
            {per === 'perHour' && ` ${text.wageKey}`}
          </p>
          <FigureTable
            look="worth-figures"
            label={label}
            columns={Object.values(columns)}
            rows={drawn.map(({ group, range }) => [
              group.name,
              String(range.n),
              ...[range.ratio, range.low, range.high].map(amount),
              text.verdicts[group.verdict],
            ])}
          />
        </>
      )}
    </section>
  );
}
