import type { CoolRoom } from '../../hub/contract/index.ts';
import { linePath } from '../charts/paths.ts';
import { scale, ticks } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { calendarDay, shortDay } from '../times.ts';
import { words } from '../words.ts';

const LEFT = 34; // px for the kilowatt-hours' names
const HEIGHT = 150; // px
const BASE = HEIGHT - 20; // px
const GAP = 0.25; // of a day's width
const DAY = 86_400_000; // ms

/** A bar a day; the line is what the first weeks' days say of such weather. */
export function EnergyChart({
  days,
  compared,
  zone,
}: {
  days: CoolRoom['energyDays'];
  compared: boolean;
  zone: string;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.room;
  const first = days[0];
  const last = days.at(-1);
  if (first === undefined || last === undefined) return null;
  const start = Date.parse(first.from);
  const x = scale([start, Date.parse(last.from) + DAY], [LEFT, width - 2]);
  const usual = days.map((day) => (compared ? day.usual : null));
  const most = Math.max(
    1,
    ...days.map(({ kilowattHours }) => kilowattHours ?? 0),
    ...usual.map((value) => value ?? 0),
  );
  const y = scale([0, most], [BASE, 8]);
  const wide = x(start + DAY) - x(start);
  const middles = days.map(({ from }) => Date.parse(from) + DAY / 2);
  const every = Math.ceil(days.length / (width < 500 ? 4 : 8));
  return (
    <div class="room-day energy-chart" ref={ref}>
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={`${text.energyPicture}. ${text.energyKey}`}
      >
        {ticks(0, most, 4).map((value) => (
          <g key={value}>
            <path class="tick" d={`M${LEFT} ${y(value)}H${width}`} />
            <text class="tick-text" x={LEFT - 5} y={y(value) + 4} text-anchor="end">
              {words.number(value, Number.isInteger(value) ? 0 : 1)}
            </text>
          </g>
        ))}
        {days.map(({ from, kilowattHours }, i) => (
          <g key={from}>
            {kilowattHours !== null && (
              <rect
                class="energy-bar"
                x={x(Date.parse(from)) + (wide * GAP) / 2}
                width={Math.max(1, wide * (1 - GAP))}
                y={y(kilowattHours)}
                height={BASE - y(kilowattHours)}
              />
            )}
            {i % every === 0 && x(Date.parse(from)) < width - 30 && (
              <text class="tick-text" x={x(Date.parse(from))} y={HEIGHT - 4}>
                {shortDay(calendarDay(Date.parse(from), zone))}
              </text>
            )}
          </g>
        ))}
        {compared && <path class="energy-usual" d={linePath(middles, usual, x, y)} />}
      </svg>
      <p class="quiet">{text.energyKey}</p>
    </div>
  );
}
