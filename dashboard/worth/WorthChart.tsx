import { scale, ticks } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { words } from '../words.ts';
import type { Drawn } from './WorthPicture.tsx';

const ROW = 46; // px, a name above its line
const TOP = 26;
const BOTTOM = 26;
const SIDE = 14;

/** One dot and one line for each, on one axis; the wage as an upright line. */
export function WorthChart({
  drawn,
  wage,
  label,
}: {
  drawn: readonly Drawn[];
  wage: number | null;
  label: string;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.worth;
  const values = drawn.flatMap(({ range }) => [range.ratio, range.low ?? 0, range.high ?? 0]);
  const from = Math.min(0, ...values);
  const to = Math.max(wage ?? 0, ...values);
  const x = scale([from, to === from ? from + 1 : to], [SIDE, width - SIDE]);
  const base = TOP + ROW * drawn.length;
  const at = wage === null ? null : x(wage);
  const said = drawn.map(({ group }) => group.words).join(' ');
  return (
    <div ref={ref} class="worth-chart">
      <svg
        viewBox={`0 0 ${width} ${base + BOTTOM}`}
        width={width}
        height={base + BOTTOM}
        role="img"
        aria-label={wage === null ? label : `${label}. ${said}`}
      >
        {ticks(from, to, width < 500 ? 4 : 8).map((value) => (
          <g key={value}>
            <path class="tick" d={`M${x(value)} ${TOP}V${base}`} />
            <text x={x(value)} y={base + 17} text-anchor={anchor(x(value), width)}>
              {text.amount(value)}
            </text>
          </g>
        ))}
        {at !== null && wage !== null && (
          <g>
            <path class="wage-line" d={`M${at} ${TOP - 6}V${base}`} />
            <text class="wage-name" x={at} y="14" text-anchor={anchor(at, width)}>
              {text.wageLine(text.amount(wage))}
            </text>
          </g>
        )}
        {drawn.map(({ group, range }, row) => {
          const y = TOP + ROW * row + 32;
          const { low, high } = range;
          return (
            <g key={`${group.of} ${group.name}`}>
              <text class="row-name" x={SIDE} y={y - 14}>
                {group.name}
              </text>
              {low !== null && high !== null && (
                <path
                  class="whisker"
                  d={`M${x(low)} ${y}H${x(high)}M${x(low)} ${y - 5}v10M${x(high)} ${y - 5}v10`}
                />
              )}
              <Dot
                at={x(range.ratio)}
                y={y}
                square={group.of === 'pickings'}
                hollow={low === null}
              />
            </g>
          );
        })}
      </svg>
    </div>
  );
}

function Dot({
  at,
  y,
  square,
  hollow,
}: {
  at: number;
  y: number;
  square: boolean;
  hollow: boolean;
}) {
  const look = hollow ? 'worth-dot hollow' : 'worth-dot';
  return square ? (
    <rect class={look} x={at - 5} y={y - 5} width="10" height="10" />
  ) : (
    <circle class={look} cx={at} cy={y} r="5.5" />
  );
}

const anchor = (at: number, width: number) =>
  at < 40 ? 'start' : at > width - 40 ? 'end' : 'middle';
