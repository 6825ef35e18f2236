import type { PlaceForCrop } from '../../hub/contract/index.ts';
import { Scrolled } from '../parts/Scrolled.tsx';
import { words } from '../words.ts';

const text = words.placesCompared;

/** The bars as figures; least and most where hours are not known. */
export function HoursTable({ places }: { places: readonly PlaceForCrop[] }) {
  return (
    <Scrolled label={text.table}>
      <table class="figures place-hours">
        <caption class="quiet">{text.table}</caption>
        <thead>
          <tr>
            {Object.values(text.columns).map((label) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {places.map(({ place, name, tally }) => (
            <tr key={place}>
              <th scope="row">{name}</th>
              {(['inBand', 'hot', 'cold', 'wet', 'disease'] as const).map((part) => (
                <td key={part}>{text.bounds(tally?.[part] ?? null)}</td>
              ))}
              <td>{tally === null ? text.dash : words.number(tally.unknown)}</td>
              <td>{tally === null ? text.dash : tally.days}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}

/** What finished batches gave at each place, with ranges where there are enough. */
export function GaveTable({ places }: { places: readonly PlaceForCrop[] }) {
  const those = places.filter(({ gave }) => gave !== null);
  if (those.length === 0) return <p class="quiet">{text.gaveNone}</p>;
  return (
    <Scrolled label={text.gaveTitle}>
      <table class="figures place-hours">
        <thead>
          <tr>
            {Object.values(text.gaveColumns).map((label) => (
              <th key={label} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {those.map(({ place, name, gave }) => (
            <tr key={place}>
              <th scope="row">{name}</th>
              <td>{gave?.batches}</td>
              <td>{text.mean(gave?.perTray ?? null, 'kg')}</td>
              <td>{text.mean(gave?.days ?? null, 'days')}</td>
              <td>{text.mean(gave?.lost ?? null, 'share')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}
