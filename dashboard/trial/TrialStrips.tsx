import type { Trial } from '../../hub/contract/index.ts';
import { dayScale } from '../charts/dayScale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { addDays } from '../times.ts';
import { words } from '../words.ts';

const LEFT = 40; // px for the names of the rows
const RIGHT = 4;
const HEIGHT = 54;
const TICK = 16;
const UPPER = 2;
const LOWER = HEIGHT - TICK - 2;
const MIDDLE = HEIGHT / 2;
const MARK = 4; // px, half of a loss

type Result = NonNullable<Trial['result']>;

/** One strip a place and task: days under the limit as it stands above, under the one tried below, losses between. */
export function TrialStrips({ trial, result }: { trial: Trial; result: Result }) {
  const text = words.trial;
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const { x, ticks } = dayScale(trial.from, addDays(trial.to, 1), LEFT, width - RIGHT);
  const wide = Math.max(1, x(addDays(trial.from, 1)) - x(trial.from) - 0.5);
  return (
    <div class="trial-strips" ref={ref}>
      {result.rows.map(({ place, kind, name, kindName, before, after }) => {
        const id = `trial-${place}-${kind}`;
        const lost = result.losses.filter((loss) => loss.place === place);
        return (
          <figure class="strip" key={id}>
            <figcaption>{text.stripTitle(name, kindName)}</figcaption>
            <svg
              class="band"
              viewBox={`0 0 ${width} ${HEIGHT}`}
              width={width}
              height={HEIGHT}
              role="img"
              aria-labelledby={`${id}-title`}
              aria-describedby={`${id}-desc`}
            >
              <title id={`${id}-title`}>{text.stripTitle(name, kindName)}</title>
              <desc id={`${id}-desc`}>
                {text.stripWords(before.days.length, after.days.length, lost.length)}
              </desc>
              <text x="0" y={UPPER + TICK - 3}>
                {text.upper}
              </text>
              <text x="0" y={LOWER + TICK - 3}>
                {text.lower}
              </text>
              <path class="trial-line" d={`M${LEFT} ${MIDDLE}H${width - RIGHT}`} />
              {before.days.map((day) => (
                <rect
                  key={day}
                  class="trial-before"
                  x={x(day)}
                  y={UPPER}
                  width={wide}
                  height={TICK}
                />
              ))}
              {after.days.map((day) => (
                <rect
                  key={day}
                  class="trial-after"
                  x={x(day)}
                  y={LOWER}
                  width={wide}
                  height={TICK}
                />
              ))}
              {lost.map(({ day }, i) => {
                const at = x(day) + wide / 2;
                return (
                  <path
                    key={`${day} ${i}`}
                    class="trial-loss"
                    d={`M${at - MARK} ${MIDDLE - MARK}l${2 * MARK} ${2 * MARK}m0 ${-2 * MARK}l${-2 * MARK} ${2 * MARK}`}
                  />
                );
              })}
            </svg>
            <p class="quiet">
              {text.stripWords(before.days.length, after.days.length, lost.length)}
            </p>
          </figure>
        );
      })}
      <svg class="axis" viewBox={`0 0 ${width} 20`} width={width} height="20" aria-hidden="true">
        {ticks.map(({ day, x: at, label }) => (
          <text key={day} x={Math.min(Math.max(at, 22), width - 24)} y="14" text-anchor="middle">
            {label}
          </text>
        ))}
      </svg>
    </div>
  );
}
