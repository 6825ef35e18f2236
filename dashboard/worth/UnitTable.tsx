import { useState } from 'preact/hooks';
import type { WorthUnit } from '../../hub/contract/index.ts';
import { shownIn } from '../../hub/words/page.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

const FIRST = 25; // rows; the rest when asked for
const FEW = 5; // with something not known; the rest when asked for

/** Fields that are a weight, or money for one. */
const shownAs: { [Field in keyof WorthUnit['figures']]?: (value: number) => number } = {
  kg: (value) => shownIn(value, 'kg'),
  lost: (value) => shownIn(value, 'kg'),
  price: (value) => shownIn(value, '/kg'),
};

/** Batch by batch and picking by picking: each figure with who says it, and a way to fill in the rest. */
export function UnitTable({ units }: { units: readonly WorthUnit[] }) {
  const text = words.worth;
  const { dash } = words.places;
  const [all, setAll] = useState(false);
  const shown = all ? units : units.slice(0, FIRST);
  const vague = units.filter(({ missing }) => missing.length > 0);
  const figure = ({ figures }: WorthUnit, field: keyof WorthUnit['figures'], digits: number) => {
    const { value, from } = figures[field];
    if (from === 'not-needed') return dash;
    if (value === null) return words.notKnown;
    const mark = text.marks[from];
    return (
      <>
        {words.number(shownAs[field]?.(value) ?? value, digits)}
        {mark !== '' && <abbr title={text.froms[from]}> {mark}</abbr>}
      </>
    );
  };
  const amount = (value: number | null) => (value === null ? dash : text.amount(value));
  return (
    <section>
      <h2>{text.units}</h2>
      {vague.length > 0 && <Vague units={vague.slice(0, FEW)} />}
      {vague.length > FEW && (
        <details>
          <summary>{text.moreVague(vague.length - FEW)}</summary>
          <Vague units={vague.slice(FEW)} />
        </details>
      )}
      <FigureTable
        look="worth-figures"
        label={text.units}
        columns={Object.values(text.unitColumns)}
        rows={shown.map((unit) => [
          text.unitName(unit.name, unit.placeName),
          shortDay(unit.to),
          figure(unit, 'kg', 1),
          figure(unit, 'lost', 1),
          figure(unit, 'price', 1),
          figure(unit, 'seed', 1),
          figure(unit, 'other', 1),
          figure(unit, 'minutes', 0),
          amount(unit.earned),
          amount(unit.perHour),
        ])}
      />
      <p class="quiet">{text.marksKey}</p>
      {units.length > FIRST && !all && (
        <button type="button" onClick={() => setAll(true)}>
          {text.showAll(units.length)}
        </button>
      )}
    </section>
  );
}

/** What is not known, and the way to fill it in. */
function Vague({ units }: { units: readonly WorthUnit[] }) {
  const text = words.worth;
  return (
    <ul class="worth-vague">
      {units.map((unit) => (
        <li key={`${unit.of} ${unit.id}`}>
          <span>
            {text.unitName(unit.name, unit.placeName)}, {shortDay(unit.to)}. {unit.words}
          </span>
          <a
            href={`${unit.of === 'batches' ? '/batches' : '/pickings'}#${unit.id}`}
            aria-label={text.fillWhat(unit.name, shortDay(unit.to))}
          >
            {text.fill}
          </a>
        </li>
      ))}
    </ul>
  );
}
