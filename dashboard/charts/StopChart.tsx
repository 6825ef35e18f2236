import type { CutBack } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { addDays } from '../times.ts';
import { words } from '../words.ts';
import { dayMs, dayScale } from './dayScale.ts';
import { linePath } from './paths.ts';
import { scale, ticks } from './scale.ts';
import { useWidth } from './useWidth.ts';

const HEIGHT = 240;
const LEFT = 52;
const TOP = 14;
const BOTTOM = 30;
const AFTER = 14; // days drawn beyond the days to stop
const LEAST = 28; // days drawn at least

/** The two sides of waiting: money still to gain, money lost by then, and the days to stop between. */
export function StopChart({ plan, label }: { plan: CutBack; label: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const text = words.cutBack;
  const currency = farm.value?.money ?? 'EUR';
  const { window } = plan;
  const until = window === null ? '' : addDays(window.to, AFTER);
  const rows = plan.rows.filter(({ day }, at) => day <= until || at <= LEAST);
  const [first] = rows;
  const last = rows.at(-1);
  if (first === undefined || last === undefined || window === null) return null;
  const base = HEIGHT - BOTTOM;
  const right = width - 12;
  const most = Math.max(1, ...rows.map(({ toGain, lost }) => Math.max(toGain, lost)));
  const y = scale([0, most], [base, TOP]);
  const days = dayScale(first.day, last.day, LEFT, right);
  const x = (ms: number) => days.x(new Date(ms).toISOString().slice(0, 10));
  const t = rows.map(({ day }) => dayMs(day));
  const line = (of: (row: CutBack['rows'][number]) => number) => linePath(t, rows.map(of), x, y);
  const [from, to] = [days.x(window.from), days.x(window.to)];
  return (
    <figure class="odds-figure">
      <div ref={ref}>
        <svg
          class="odds"
          viewBox={`0 0 ${width} ${HEIGHT}`}
          width={width}
          height={HEIGHT}
          role="img"
          aria-label={`${text.picture}. ${label}`}
        >
          <rect
            class="stop-window"
            x={from}
            y={TOP}
            width={Math.max(3, to - from)}
            height={base - TOP}
          />
          {ticks(0, most, 4).map((value) => (
            <g key={value}>
              <path class="tick" d={`M${LEFT} ${y(value)}H${right}`} />
              <text x={LEFT - 6} y={y(value) + 4} text-anchor="end">
                {text.money(value, currency)}
              </text>
            </g>
          ))}
          <path class="lost-line" d={line(({ lost }) => lost)} />
          <path class="odds-line" d={line(({ toGain }) => toGain)} />
          <text class="line-name" x={LEFT + 6} y={Math.min(base - 6, y(first.toGain) + 16)}>
            {text.gainLabel}
          </text>
          <text
            class="line-name"
            x={right}
            y={Math.min(base - 6, y(last.lost) + 28)}
            text-anchor="end"
          >
            {text.lostLabel}
          </text>
          {days.ticks.map(({ day, x: at, label: said }) => (
            <text
              key={day}
              x={at}
              y={HEIGHT - 8}
              text-anchor={at < LEFT + 24 ? 'start' : at > right - 24 ? 'end' : 'middle'}
            >
              {said}
            </text>
          ))}
        </svg>
      </div>
      <figcaption class="quiet">
        {text.picture}. {text.key}
      </figcaption>
    </figure>
  );
}
