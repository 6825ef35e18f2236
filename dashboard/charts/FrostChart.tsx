import type { FrostTonight } from '../../hub/contract/index.ts';
import { hourOfDay, timeOfDay, weekday } from '../times.ts';
import { words } from '../words.ts';
import { degreeTicks } from './degreeTicks.ts';
import { hours } from './hours.ts';
import { fanPath, linePath } from './paths.ts';
import { extent, scale } from './scale.ts';
import { spread } from './spread.ts';
import { useWidth } from './useWidth.ts';

const LEFT = 26; // px for the temperature figures
const RIGHT = 22; // px for the numbers of the lines
const TOP = 8;
const FOOT = 24; // px for the hours
const NUMBER = 13; // px between two numbers

/** Tonight at every spot on one axis: measured, expected, and the range of the spots chosen. */
export function FrostChart({
  tonight,
  zone,
  shown,
}: {
  tonight: FrostTonight;
  zone: string;
  /** Which curve's range is drawn; null for all. */
  shown: number | null;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const height = width < 600 ? 280 : 360;
  const { curves, from, to, night, now } = tonight;
  const ranged = curves.filter((_, i) => shown === null || i === shown);
  const limits = new Map(
    curves.flatMap((curve) => curve.limits).map((one) => [`${one.what} ${one.at}`, one]),
  );
  const values = [
    ...curves.flatMap(({ temperature, fan }) => [
      ...temperature,
      ...fan.map(({ middle }) => middle),
    ]),
    ...ranged.flatMap(({ fan }) => fan.flatMap(({ low, high }) => [low, high])),
  ];
  const [low, high] = extent(values, 1) ?? [-5, 10];
  const x = scale([from, to], [LEFT, width - RIGHT]);
  const y = scale([low, high], [height - FOOT, TOP]);
  const ends = curves.map(({ fan, temperature }) => {
    const last = fan.at(-1)?.middle ?? temperature.findLast((value) => value !== null) ?? low;
    return y(last);
  });
  const feet = spread(ends, NUMBER, [TOP + 6, height - FOOT - 4]);
  const lines = [...limits.values()].filter(({ at }) => at > low && at < high);
  const names = spread(
    lines.map(({ at }) => y(at) - 4),
    NUMBER,
    [TOP + 6, height - FOOT - 4],
  );
  const chosen = shown === null ? undefined : curves[shown];
  const name = chosen ? `${chosen.name}, ${words.spots[chosen.spot]}` : null;
  return (
    <div class="frost-chart" ref={ref}>
      <svg
        class="band"
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={words.frost.picture(name)}
        aria-describedby="frost-words"
      >
        {night && (
          <rect
            class="night"
            x={x(Math.max(from, night.from))}
            y="0"
            width={x(Math.min(to, night.to)) - x(Math.max(from, night.from))}
            height={height - FOOT}
          />
        )}
        {hours(from, to, width < 600 ? 4 : 2, zone).map(({ t, hour }) => (
          <g key={t}>
            <path class={hour === 0 ? 'midnight' : 'hour'} d={`M${x(t)} 0V${height - FOOT}`} />
            {x(t) > LEFT + 8 && x(t) < width - RIGHT - 8 && (
              <text x={x(t)} y={height - 8} text-anchor="middle">
                {hour === 0 ? weekday(t, zone) : hourOfDay(t, zone)}
              </text>
            )}
          </g>
        ))}
        {degreeTicks(low, high, height / 50).map(({ value, label }) => (
          <g key={value}>
            <path class="tick" d={`M${LEFT} ${y(value)}H${width - RIGHT}`} />
            <text class="tick-text" x={LEFT - 5} y={y(value) + 4} text-anchor="end">
              {label}
            </text>
          </g>
        ))}
        {ranged.map((curve) => (
          <path
            key={`${curve.place} ${curve.spot}`}
            class={shown === null ? 'fan fan-many' : 'fan'}
            d={fanPath(curve.fan, x, y)}
          />
        ))}
        {lines.map(({ what, at }, i) => (
          <g key={`${what} ${at}`} class={`limit limit-${what}`}>
            <path d={`M${LEFT} ${y(at)}H${width - RIGHT}`} />
            <text x={LEFT + 4} y={names[i] ?? 0}>
              {words.frost.limit(what, at)}
            </text>
          </g>
        ))}
        {curves.map((curve, i) => (
          <g
            key={`${curve.place} ${curve.spot}`}
            class={shown === null || i === shown ? 'curve' : 'curve curve-other'}
          >
            <path
              class="fan-middle"
              d={linePath(
                curve.fan.map(({ t }) => t),
                curve.fan.map(({ middle }) => middle),
                x,
                y,
              )}
            />
            <path class="measured" d={linePath(curve.t, curve.temperature, x, y)} />
            <text class="curve-number" x={width - RIGHT + 6} y={(feet[i] ?? 0) + 4}>
              {i + 1}
            </text>
          </g>
        ))}
        <path class="now-line" d={`M${x(now)} 0V${height - FOOT}`} />
        <text class="axis-now" x={Math.min(x(now) + 4, width - 70)} y="12">
          {words.strips.now} {timeOfDay(now, zone)}
        </text>
      </svg>
    </div>
  );
}
