import type { FrostSide } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { dayMs, dayScale } from './dayScale.ts';
import { linePath } from './paths.ts';
import { scale } from './scale.ts';
import { useWidth } from './useWidth.ts';

const HEIGHT = 230;
const LEFT = 50;
const TOP = 22;
const BOTTOM = 48; // marks of past years, and dates

/** The chance of a frost by date, past years as marks beneath, today as an upright line. */
export function OddsCurve({
  side,
  kind,
  today,
  label,
}: {
  side: FrostSide;
  kind: 'first' | 'last';
  today: string;
  /** The same said in words. */
  label: string;
}) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.season;
  const [first] = side.curve;
  const last = side.curve.at(-1);
  if (first === undefined || last === undefined) return null;
  const base = HEIGHT - BOTTOM;
  const days = dayScale(first.day, last.day, LEFT, width - 12);
  const y = scale([0, 1], [base, TOP]);
  const t = side.curve.map(({ day }) => dayMs(day));
  const line = linePath(
    t,
    side.curve.map(({ p }) => p),
    (ms) => days.x(new Date(ms).toISOString().slice(0, 10)),
    y,
  );
  const now = today >= first.day && today <= last.day ? days.x(today) : null;
  const past = side.past.flatMap(({ day }) =>
    day === null || day < first.day || day > last.day ? [] : [days.x(day)],
  );
  return (
    <figure class="odds-figure">
      <div ref={ref}>
        <svg
          class="odds"
          viewBox={`0 0 ${width} ${HEIGHT}`}
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={`${text.picture[kind]}. ${label}`}
        >
          {[0, 0.25, 0.5, 0.75, 1].map((p) => (
            <g key={p}>
              <path class="tick" d={`M${LEFT} ${y(p)}H${width - 12}`} />
              <text x={LEFT - 6} y={y(p) + 4} text-anchor="end">
                {words.withUnit(100 * p, '%', 0)}
              </text>
            </g>
          ))}
          <path class="odds-line" d={line} />
          {past.map((x, index) => (
            <path key={index} class="odds-past" d={`M${x} ${base + 4}v10`} />
          ))}
          {days.ticks.map(({ day, x, label: said }) => (
            <text key={day} x={x} y={HEIGHT - 12} text-anchor={x < LEFT + 24 ? 'start' : 'middle'}>
              {said}
            </text>
          ))}
          {now !== null && (
            <g>
              <path class="now-line" d={`M${now} ${TOP - 4}V${base + 16}`} />
              <text
                class="axis-now"
                x={Math.min(Math.max(now, LEFT + 40), width - 52)}
                y="13"
                text-anchor="middle"
              >
                {text.today(shortDay(today))}
              </text>
            </g>
          )}
        </svg>
      </div>
      <figcaption class="quiet">
        {text.picture[kind]}. {text.key}
      </figcaption>
    </figure>
  );
}
