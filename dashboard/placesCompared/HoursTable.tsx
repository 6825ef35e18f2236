import type { PlaceForCrop } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { words } from '../words.ts';

/** The bars as figures; least and most where hours are not known. */
export function HoursTable({ places }: { places: readonly PlaceForCrop[] }) {
  const text = words.placesCompared;
  return (
    <FigureTable
      label={text.table}
      caption={text.table}
      look="place-hours"
      columns={Object.values(text.columns)}
      rows={places.map(({ name, tally }) => [
        name,
        ...(['inBand', 'hot', 'cold', 'wet', 'disease'] as const).map((part) =>
          text.bounds(tally?.[part] ?? null),
        ),
        tally === null ? text.dash : words.number(tally.unknown),
        tally === null ? text.dash : tally.days,
      ])}
    />
  );
}

/** What finished batches gave at each place, with ranges where there are enough. */
export function GaveTable({ places }: { places: readonly PlaceForCrop[] }) {
  const text = words.placesCompared;
  const those = places.filter(({ gave }) => gave !== null);
  if (those.length === 0) return <p class="quiet">{text.gaveNone}</p>;
  return (
    <FigureTable
      label={text.gaveTitle}
      look="place-hours"
      columns={Object.values(text.gaveColumns)}
      rows={those.map(({ name, gave }) => [
        name,
        gave?.batches,
        text.mean(gave?.perTray ?? null, 'kg'),
        text.mean(gave?.days ?? null, 'days'),
        text.mean(gave?.lost ?? null, 'share'),
      ])}
    />
  );
}
