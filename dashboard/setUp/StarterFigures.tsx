import type { StarterCrop } from '../../hub/contract/index.ts';
import { Scrolled } from '../parts/Scrolled.tsx';
import { words } from '../words.ts';

/** What a crop of the list begins with, each figure with who says it. */
export function StarterFigures({ crop }: { crop: StarterCrop }) {
  const text = words.setUpSteps;
  const names = words.farmFieldNames.crop;
  const degrees = words.temperature;
  const rows: (readonly [string | undefined, string, string])[] = [
    [names.base, degrees(crop.base.value), crop.base.source],
    [names.band, crop.band.value.map(degrees).join(' – '), crop.band.source],
    [names.heatLimit, degrees(crop.heatLimit.value), crop.heatLimit.source],
  ];
  if (crop.chill) rows.push([names.chill, degrees(crop.chill.value), crop.chill.source]);
  if (crop.days) rows.push([names.days, crop.days.value.join(' – '), crop.days.source]);
  if (crop.minutes)
    rows.push([names.minutes, text.minutesLine(crop.minutes.value), crop.minutes.source]);
  return (
    <details class="starter-figures">
      <summary>{text.figures}</summary>
      <Scrolled label={text.figures}>
        <table>
          <caption class="unseen">{text.figures}</caption>
          <thead>
            <tr>
              <th scope="col">{text.figure}</th>
              <th scope="col">{text.value}</th>
              <th scope="col">{text.source}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, value, source]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{value}</td>
                <td>{source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scrolled>
    </details>
  );
}
