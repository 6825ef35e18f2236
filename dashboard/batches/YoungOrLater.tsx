import './growing.css';
import type { CropGrowing } from '../../hub/contract/index.ts';
import { shownIn, shownUnit } from '../../hub/words/page.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';

const grams = (...told: (number | null)[]) => {
  const [value = null, low = null, high = null] = told.map((one) => one && shownIn(one, 'gram'));
  return words.growing.figure(value, low, high, shownUnit('gram') === 'g' ? 0 : 1);
};

/** Grams, days and money of a young and a later cut, side by side. */
export function YoungOrLater({ crop }: { crop: CropGrowing }) {
  const text = words.growing;
  // The stages are the columns: two of them fit a phone, where their figures would not side by side.
  const lines = [
    { label: text.grams, of: 'grams', digits: 0 },
    { label: text.days, of: 'days', digits: 0 },
    { label: text.moneyPerTray(crop.money), of: 'moneyPerTray', digits: 2 },
    { label: text.moneyPerTrayDay(crop.money), of: 'moneyPerTrayDay', digits: 2 },
  ] as const;
  return (
    <section class="young-or-later">
      <h3>{text.youngOrLater}</h3>
      <FigureTable
        label={`${text.youngOrLater}: ${crop.name}`}
        columns={[text.cut, ...crop.stages.map(({ stage }) => text.stage[stage])]}
        rows={[
          ...lines.map(({ label, of, digits }) => [
            label,
            ...crop.stages.map((stage) => {
              const { value = null, low = null, high = null } = stage[of] ?? {};
              if (of === 'grams') return grams(value, low, high);
              return text.figure(value, low, high, digits);
            }),
          ]),
          [text.fromLabel, ...crop.stages.map(({ batches }) => text.from(batches))],
        ]}
      />
      <p class="quiet">{text.intervals}</p>
    </section>
  );
}
