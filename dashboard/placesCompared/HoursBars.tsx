import { useId } from 'preact/hooks';
import type { PlaceForCrop } from '../../hub/contract/index.ts';
import { scale } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { words } from '../words.ts';

const ROW = 68; // name above, bar and thin bar below
const BAR = 24;
const THIN = 8;
const TOP = 4;
const FOOT = 24; // hours
const HOURS = [0, 6, 12, 18, 24];

/** What a day is made of, in the order of the bar. Each has its own pattern, and its word in the key. */
const PARTS = ['inBand', 'wetInBand', 'hot', 'cold', 'unknown'] as const;
type Part = (typeof PARTS)[number];

/** Places as rows on one axis of 24 hours: what an average day there was made of. */
export function HoursBars({ places, label }: { places: readonly PlaceForCrop[]; label: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const id = useId().replaceAll(':', '');
  const text = words.placesCompared;
  const known = places.filter(({ tally }) => tally !== null);
  const height = TOP + known.length * ROW + FOOT;
  const x = scale([0, 24], [1, width - 1]);
  return (
    <figure class="hours-figure">
      <div ref={ref}>
        <svg
          class="hours-bars"
          viewBox={`0 0 ${width} ${height}`}
          width={width}
          height={height}
          role="img"
          aria-label={`${text.picture}. ${label}`}
        >
          <Patterns id={id} />
          {HOURS.map((hour) => (
            <g key={hour}>
              <path class="tick" d={`M${x(hour)} ${TOP}V${height - FOOT}`} />
              <text
                x={x(hour)}
                y={height - 7}
                text-anchor={hour === 0 ? 'start' : hour === 24 ? 'end' : 'middle'}
              >
                {text.axis(hour)}
              </text>
            </g>
          ))}
          {known.map((place, row) => (
            <g key={place.place} transform={`translate(0 ${TOP + row * ROW})`}>
              <text class="bar-name" x="2" y="18">
                {place.name}
              </text>
              {stacked(place).map(({ part, from, to }) => (
                <rect
                  key={part}
                  class={`bar-edge bar-${part}`}
                  x={x(from)}
                  y="25"
                  width={Math.max(0, x(to) - x(from))}
                  height={BAR}
                  fill={`url(#${id}-${part})`}
                />
              ))}
              <rect
                class="bar-edge bar-wetInBand"
                x={x(0)}
                y={27 + BAR}
                width={x(place.tally?.wet[0] ?? 0) - x(0)}
                height={THIN}
                fill={`url(#${id}-wetInBand)`}
              />
            </g>
          ))}
        </svg>
      </div>
      <figcaption class="quiet">
        <span>{text.picture}.</span>
        <ul class="bar-key">
          {PARTS.map((part) => (
            <li key={part}>
              <svg width="34" height="18" aria-hidden="true">
                <rect
                  class={`bar-edge bar-${part}`}
                  x="1"
                  y="1"
                  width="32"
                  height="16"
                  fill={`url(#${id}-${part})`}
                />
              </svg>{' '}
              {text.parts[part]}
            </li>
          ))}
          <li>
            <svg width="34" height="10" aria-hidden="true">
              <rect
                class="bar-edge"
                x="1"
                y="1"
                width="32"
                height={THIN}
                fill={`url(#${id}-wetInBand)`}
              />
            </svg>{' '}
            {text.wet}
          </li>
        </ul>
      </figcaption>
    </figure>
  );
}

/** Hours from midnight to midnight, laid end to end; what nobody knows comes last. */
function stacked({ tally }: PlaceForCrop) {
  if (tally === null) return [];
  const hours: Record<Part, number> = {
    inBand: tally.inBand[0],
    wetInBand: tally.wetInBand[0],
    hot: tally.hot[0],
    cold: tally.cold[0],
    unknown: tally.unknown,
  };
  let from = 0;
  return PARTS.map((part) => {
    const start = from;
    from += hours[part];
    return { part, from: start, to: from };
  }).filter(({ from: start, to }) => to - start > 0.02);
}

/** Plain, rising lines, crossed lines, level lines, dots: told apart without colour. */
function Patterns({ id }: { id: string }) {
  const pattern = (part: Part, d: string, size = 7) => (
    <pattern id={`${id}-${part}`} width={size} height={size} patternUnits="userSpaceOnUse">
      <rect class={`bar-ground bar-ground-${part}`} width={size} height={size} />
      {d !== '' && <path class={`bar-line bar-line-${part}`} d={d} />}
    </pattern>
  );
  return (
    <defs>
      {pattern('inBand', '')}
      {pattern('wetInBand', 'M-1 8L8 -1M-1 1L1 -1M6 8L8 6')}
      {pattern('hot', 'M0 0L7 7M7 0L0 7')}
      {pattern('cold', 'M0 2H7M0 5.5H7')}
      {pattern('unknown', 'M3 3.5H4.2', 7)}
    </defs>
  );
}
