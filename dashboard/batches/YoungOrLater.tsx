import './growing.css';
import type { CropGrowing } from '../../hub/contract/index.ts';
import { Scrolled } from '../parts/Scrolled.tsx';
import { words } from '../words.ts';

/** Grams, days and money of a young and a later cut, side by side. */
export function YoungOrLater({ crop }: { crop: CropGrowing }) {
  const text = words.growing;
  const columns = [
    { label: text.grams, of: 'grams', digits: 0 },
    { label: text.days, of: 'days', digits: 0 },
    { label: text.moneyPerTray(crop.money), of: 'moneyPerTray', digits: 2 },
    { label: text.moneyPerTrayDay(crop.money), of: 'moneyPerTrayDay', digits: 2 },
  ] as const;
  return (
    <section class="young-or-later">
      <h3>{text.youngOrLater}</h3>
      <Scrolled label={`${text.youngOrLater}: ${crop.name}`}>
        <table>
          <thead>
            <tr>
              <th scope="col">{text.cut}</th>
              {columns.map(({ label, of }) => (
                <th key={of} scope="col" class="tally">
                  {label}
                </th>
              ))}
              <th scope="col">{text.fromLabel}</th>
            </tr>
          </thead>
          <tbody>
            {crop.stages.map((stage) => (
              <tr key={stage.stage}>
                <th scope="row">{text.stage[stage.stage]}</th>
                {columns.map(({ of, digits }) => {
                  const figure = stage[of];
                  return (
                    <td key={of} class="tally">
                      {text.figure(
                        figure?.value ?? null,
                        figure?.low ?? null,
                        figure?.high ?? null,
                        digits,
                      )}
                    </td>
                  );
                })}
                <td>{text.from(stage.batches)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
      <p class="quiet">{text.intervals}</p>
    </section>
  );
}
