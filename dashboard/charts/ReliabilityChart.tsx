import type { MethodScores } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { scale } from './scale.ts';

const [WIDTH, HEIGHT, LEFT, FOOT, TOP] = [300, 190, 34, 22, 8]; // px
const DOT = 4; // px

/** What was said against what came: the band said, the share that came, and how surely it is known. */
export function ReliabilityChart({ bands }: { bands: MethodScores['bands'] }) {
  const x = scale([0, bands.length], [LEFT, WIDTH - 4]);
  const y = scale([0, 1], [HEIGHT - FOOT, TOP]);
  return (
    <svg
      class="band reliability"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH}
      height={HEIGHT}
      role="img"
      aria-label={words.frost.reliability}
    >
      <desc>
        {bands
          .map(({ from, to, n, happened }) => words.frost.bandWords(from, to, n, happened))
          .join(' ')}
      </desc>
      {[0, 0.5, 1].map((value) => (
        <g key={value}>
          <path class="tick" d={`M${LEFT} ${y(value)}H${WIDTH}`} />
          <text class="tick-text" x={LEFT - 4} y={y(value) + 4} text-anchor="end">
            {words.number(100 * value, 0)}
          </text>
        </g>
      ))}
      {bands.map(({ from, to, n, happened, between }, i) => {
        const middle = (x(i) + x(i + 1)) / 2;
        return (
          <g key={from}>
            <rect
              class="said"
              x={x(i) + 6}
              y={y(to)}
              width={x(1) - x(0) - 12}
              height={y(from) - y(to)}
            />
            {between && (
              <>
                <path class="between" d={`M${middle} ${y(between[0])}V${y(between[1])}`} />
                <circle class="share" cx={middle} cy={y(happened / n)} r={DOT} />
              </>
            )}
            <text x={middle} y={HEIGHT - 6} text-anchor="middle">
              {words.number(100 * from, 0)}–{words.number(100 * to, 0)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
