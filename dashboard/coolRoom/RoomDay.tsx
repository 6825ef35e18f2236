import type { CoolRoomDay } from '../../hub/contract/index.ts';
import { degreeTicks } from '../charts/degreeTicks.ts';
import { hours } from '../charts/hours.ts';
import { linePath } from '../charts/paths.ts';
import { extent, scale } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';

const LEFT = 34; // px for the temperatures' names
const PLOT = 150; // px
const LANE = 18; // px for each of door, cooling and power
const MARGIN = 10; // px above and below the extremes

type Span = { readonly from: number; readonly to: number };

/** The last day of a room: air, crate, set temperature and limit; beneath, the door and the power. */
export function RoomDay({
  day,
  defrosts,
  zone,
}: {
  day: CoolRoomDay;
  /** When its timer usually defrosts; null where none was learned. */
  defrosts: readonly Span[] | null;
  zone: string;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.room;
  const lanes = (
    [
      ['running', day.running],
      ['noPower', day.noPower],
      ['door', day.doorOpen],
      ['defrost', defrosts],
    ] as const
  ).flatMap(([name, spans]) => (spans === null ? [] : [{ name, spans }]));
  const height = PLOT + lanes.length * LANE + 20;
  const x = scale([day.from, day.to], [LEFT, width - 2]);
  const [low, high] = extent(
    [...day.air.value, ...(day.product?.value ?? []), day.setPoint, day.limit],
    0.5,
  ) ?? [0, 10];
  const y = scale([low, high], [PLOT - MARGIN, MARGIN]);
  const held = [
    { at: day.limit, name: text.lines.limit, kind: 'limit' },
    { at: day.setPoint, name: text.lines.set, kind: 'set' },
  ];
  return (
    <div class="room-day" ref={ref}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={`${text.day}. ${day.words}`}
      >
        {hours(day.from, day.to, width < 600 ? 6 : 3, zone).map(({ t, hour }) => (
          <g key={t}>
            <path class={hour === 0 ? 'midnight' : 'hour'} d={`M${x(t)} 0V${height - 18}`} />
            {x(t) > LEFT + 14 && x(t) < width - 16 && (
              <text class="tick-text" x={x(t)} y={height - 4} text-anchor="middle">
                {timeOfDay(t, zone)}
              </text>
            )}
          </g>
        ))}
        {degreeTicks(low, high, PLOT / 34).map(({ value, label }) => (
          <g key={value}>
            <path class="tick" d={`M${LEFT} ${y(value)}H${width}`} />
            <text class="tick-text" x={LEFT - 5} y={y(value) + 4} text-anchor="end">
              {label}
            </text>
          </g>
        ))}
        {held.map(({ at, kind }) => (
          <path key={kind} class={`room-${kind}`} d={`M${LEFT} ${y(at)}H${width}`} />
        ))}
        {day.product && (
          <path class="room-crate" d={linePath(day.product.t, day.product.value, x, y)} />
        )}
        <path class="room-air" d={linePath(day.air.t, day.air.value, x, y)} />
        {held.map(({ at, name, kind }) => (
          <text key={kind} x={width - 4} y={y(at) - 4} text-anchor="end">
            {`${name} ${words.degrees(at)}`}
          </text>
        ))}
        {lanes.map(({ name, spans }, i) => {
          const top = PLOT + i * LANE;
          return (
            <g key={name} class={`lane lane-${name}`}>
              <path class="tick" d={`M${LEFT} ${top + LANE - 3}H${width}`} />
              {spans.map((span: Span) => (
                <rect
                  key={span.from}
                  x={x(span.from)}
                  width={Math.max(1.5, x(span.to) - x(span.from))}
                  y={top + LANE - 9}
                  height="6"
                />
              ))}
              <text class="tick-text" x={LEFT + 3} y={top + 7}>
                {text.lanes[name]}
              </text>
            </g>
          );
        })}
      </svg>
      <p class="quiet">{text.dayKey}</p>
    </div>
  );
}

/** The same as figures. */
export function RoomDayTable({ day, zone }: { day: CoolRoomDay; zone: string }) {
  const { columns, dayWords } = words.room;
  const cell = (value: number | null) =>
    value === null ? words.places.dash : words.degrees(value);
  return (
    <details>
      <summary>{dayWords}</summary>
      <FigureTable
        look="hour-figures"
        columns={[columns.hour, columns.low, columns.high]}
        rows={day.hours.map(({ t, low, high }) => [timeOfDay(t, zone), cell(low), cell(high)])}
      />
    </details>
  );
}
