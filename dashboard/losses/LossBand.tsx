import type { LossStrip, LossStrips } from '../../hub/contract/index.ts';
import { addDays, shortDay } from '../times.ts';
import { words } from '../words.ts';

const HEIGHT = 64;
const FOOT = 52; // where wet hours stand
const TALLEST = 36; // px for 24 wet hours
const MARK = 3.5; // px, half of a mark
const DIM = 6; // h of a day not known, above which it is drawn so; ours
const DAY_HOURS = 24;

/** One place's days: wet hours hatched, heat and cold as marks, quiet weeks as a rule beneath. */
export function LossBand({
  strip,
  range,
  x,
  width,
  ticks,
}: {
  strip: LossStrip;
  range: Pick<LossStrips, 'from' | 'to'>;
  x: (day: string) => number;
  width: number;
  ticks: readonly { readonly day: string; readonly x: number }[];
}) {
  const id = `losses-${strip.place}`;
  const title = words.losses.stripTitle(strip.name, shortDay(range.from), shortDay(range.to));
  const wide = x(addDays(range.from, 1)) - x(range.from);
  return (
    <svg
      class="band"
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      height={HEIGHT}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{strip.words}</desc>
      <defs>
        <pattern
          id={`${id}-hatch`}
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V5" class="hatch" />
        </pattern>
      </defs>
      {ticks.map(({ day, x: at }) => (
        <path key={day} class="hour" d={`M${at} 0V${HEIGHT}`} />
      ))}
      {strip.days.map(({ day, wetHours, hotHours, coldHours, unknownHours }) => {
        const left = x(day);
        const middle = left + wide / 2;
        const tall = ((wetHours ?? 0) / DAY_HOURS) * TALLEST;
        const mark = Math.min(MARK, wide / 2);
        return (
          <g key={day}>
            {(unknownHours > DIM || (wetHours === null && strip.kind !== 'cool-room')) && (
              <rect
                class="loss-unknown"
                x={left}
                y={FOOT - TALLEST}
                width={wide}
                height={TALLEST}
              />
            )}
            {tall > 0 && (
              <>
                <rect
                  x={left}
                  y={FOOT - tall}
                  width={wide}
                  height={tall}
                  fill={`url(#${id}-hatch)`}
                />
                <path class="loss-foot" d={`M${left} ${FOOT - tall}H${left + wide}`} />
              </>
            )}
            {(hotHours ?? 0) > 0 && (
              <path
                class="loss-hot"
                d={`M${middle} 1L${middle + mark} ${1 + 2 * mark}H${middle - mark}Z`}
              />
            )}
            {(coldHours ?? 0) > 0 && (
              <path
                class="loss-cold"
                d={`M${middle} 16L${middle + mark} ${16 - 2 * mark}H${middle - mark}Z`}
              />
            )}
          </g>
        );
      })}
      <path class="frame" d={`M0 ${FOOT + 0.5}H${width}`} />
      {strip.quiet.map((week) => {
        const [from, to] = [x(week) + 1, x(addDays(week, 7)) - 1];
        return (
          <path
            key={week}
            class="loss-quiet"
            d={`M${from} ${FOOT + 3}V${FOOT + 9}M${from} ${FOOT + 6}H${to}M${to} ${FOOT + 3}V${FOOT + 9}`}
          />
        );
      })}
    </svg>
  );
}
