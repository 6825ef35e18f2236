import type { CoolRoom } from '../../hub/contract/index.ts';
import { hours } from '../charts/hours.ts';
import { scale } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';

const MINUTE = 60_000; // ms
const LEFT = 58; // px for the names of the rows
const ROW = 26; // px
const TOP = 4; // px
const MOST = 24 * 60; // minutes drawn at the most
const AFTER = 1.15; // of the last end

/** Two rows on one axis from now on: sure to be cold, then the span in which the limit is reached. */
export function HoldClock({ room, zone }: { room: CoolRoom; zone: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.room;
  const { shortest, longest, produceShortest, produceLongest } = room.holdOver;
  const rows = [
    { name: text.rows.air, from: shortest, to: longest },
    { name: text.rows.crates, from: produceShortest, to: produceLongest },
  ].flatMap(({ name, from, to }) =>
    from === null ? [] : [{ name, from: Math.max(0, from), to: Math.min(MOST, to ?? MOST) }],
  );
  const start = Date.parse(room.asOf ?? '');
  const last = Math.min(MOST, Math.max(60, ...rows.map(({ to }) => to)) * AFTER);
  const end = start + last * MINUTE;
  const height = TOP + rows.length * ROW + 20;
  const x = scale([start, end], [LEFT, width - 2]);
  const at = (minutes: number) => x(Math.min(end, start + minutes * MINUTE));
  const step = last > 12 * 60 ? 6 : last > 5 * 60 ? 2 : 1;
  return (
    <div class="room-day hold-clock" ref={ref}>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={`${text.holdPicture}. ${rows
          .map(
            ({ name, from, to }) =>
              `${name}: ${words.span(from * MINUTE)}–${words.span(to * MINUTE)}`,
          )
          .join('. ')}`}
      >
        {hours(start, end, step, zone).map(({ t }) => (
          <g key={t}>
            <path class="hour" d={`M${x(t)} 0V${height - 18}`} />
            {x(t) > LEFT + 14 && x(t) < width - 16 && (
              <text class="tick-text" x={x(t)} y={height - 4} text-anchor="middle">
                {timeOfDay(t, zone)}
              </text>
            )}
          </g>
        ))}
        {rows.map(({ name, from, to }, i) => {
          const y = TOP + i * ROW;
          return (
            <g key={name}>
              <text x={0} y={y + 15}>
                {name}
              </text>
              <rect
                class="hold-cold"
                x={LEFT}
                y={y + 4}
                width={Math.max(0, at(from) - LEFT)}
                height={14}
              />
              <rect
                class="hold-limit"
                x={at(from)}
                y={y + 4}
                width={Math.max(2, at(to) - at(from))}
                height={14}
              />
            </g>
          );
        })}
      </svg>
      <p class="quiet">{text.holdKey(room.limit)}</p>
    </div>
  );
}
