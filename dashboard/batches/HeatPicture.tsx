import type { BatchCourse, ReadyStage } from '../../hub/contract/index.ts';
import { scale } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

const DAY = 86_400_000; // ms
const HEIGHT = 96;
const TOP = 8;
const BOTTOM = 22; // dates
const LEFT = 4;

/** Heat lived through as a filled line, the need as a band across, and when the two may meet. */
export function HeatPicture({ course, stage }: { course: BatchCourse; stage: ReadyStage }) {
  const [ref, width] = useWidth<HTMLDivElement>(300);
  const { need, at } = stage;
  const from = Date.parse(course.sownAt);
  const now = Date.parse(course.asOf);
  if (need === null) return null;
  const points = course.lived.flatMap(({ day, degreeDays }) =>
    degreeDays === null
      ? []
      : [{ t: Math.min(now, Date.parse(`${day}T00:00:00Z`) + DAY), degreeDays }],
  );
  const ends = Date.parse(at.late ?? at.expected ?? course.asOf);
  const to = Math.max(ends, now + DAY) + DAY;
  const most = Math.max(need.high, ...points.map(({ degreeDays }) => degreeDays)) * 1.08;
  const x = scale([from, to], [LEFT, width - LEFT]);
  const y = scale([0, most], [HEIGHT - BOTTOM, TOP]);
  const line = points.map(({ t, degreeDays }) => `L${x(t)} ${y(degreeDays)}`).join('');
  const last = points.at(-1);
  const base = y(0);
  const early = at.early === null ? null : x(Date.parse(at.early));
  const late = at.late === null ? width - LEFT : x(Date.parse(at.late));
  const expected = at.expected === null ? null : x(Date.parse(at.expected));
  const isoDay = (ms: number) => new Date(ms).toISOString().slice(0, 10);
  const text = words.growing;
  return (
    <div ref={ref} class="heat-picture">
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={text.picture(course.name, stage.words)}
      >
        <rect
          class="heat-need"
          x={LEFT}
          width={width - 2 * LEFT}
          y={y(need.high)}
          height={Math.max(2, y(need.low) - y(need.high))}
        />
        <path class="heat-need-line" d={`M${LEFT} ${y(need.mean)}H${width - LEFT}`} />
        {last && (
          <>
            <path class="heat-lived" d={`M${x(from)} ${base}${line}L${x(last.t)} ${base}Z`} />
            <path class="heat-line" d={`M${x(from)} ${base}${line}`} />
          </>
        )}
        {last && expected !== null && (
          <path
            class="heat-ahead"
            d={`M${x(last.t)} ${y(last.degreeDays)}L${Math.max(expected, x(last.t))} ${y(Math.max(need.mean, last.degreeDays))}`}
          />
        )}
        {early !== null && (
          <path class="heat-window" d={`M${early} ${base}H${Math.max(early + 2, late)}`} />
        )}
        <text x={LEFT} y={HEIGHT - 6}>
          {shortDay(isoDay(from))}
        </text>
        <text x={width - LEFT} y={HEIGHT - 6} text-anchor="end">
          {shortDay(isoDay(to))}
        </text>
      </svg>
    </div>
  );
}
