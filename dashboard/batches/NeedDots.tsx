import type { CropGrowing } from '../../hub/contract/index.ts';
import { scale } from '../charts/scale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { words } from '../words.ts';

const HEIGHT = 64;
const SIDE = 14;
const MIDDLE = 24;
const STEP = 5; // px up or down, so that dots do not hide one another

/** Heat units that past batches took, a dot each; those known only by their cut are open. */
export function NeedDots({ crop }: { crop: CropGrowing }) {
  const [ref, width] = useWidth<HTMLDivElement>(300);
  const text = words.growing;
  const dots = crop.past.flatMap(({ batch, stage, degreeDays, seen }) =>
    degreeDays === null || stage !== 'later' ? [] : [{ batch, degreeDays, seen }],
  );
  if (dots.length === 0) return null;
  const need = crop.need.later;
  const all = [...dots.map(({ degreeDays }) => degreeDays), ...(need ? [need.low, need.high] : [])];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const x = scale([low, high === low ? low + 1 : high], [SIDE, width - SIDE]);
  return (
    <div ref={ref} class="heat-picture">
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={text.dots(crop.name)}
      >
        {need && (
          <rect
            class="heat-need"
            x={x(need.low)}
            width={Math.max(2, x(need.high) - x(need.low))}
            y="4"
            height={2 * MIDDLE - 8}
          />
        )}
        {dots.map(({ batch, degreeDays, seen }, i) => (
          <circle
            key={batch}
            class={seen === 'noted' ? 'need-dot' : 'need-dot open'}
            cx={x(degreeDays)}
            cy={MIDDLE + STEP * ((i % 3) - 1)}
            r="4"
          />
        ))}
        <text x={SIDE} y={HEIGHT - 4}>
          {words.heat(low, 0)}
        </text>
        <text x={width - SIDE} y={HEIGHT - 4} text-anchor="end">
          {words.heat(high, 0)}
        </text>
      </svg>
    </div>
  );
}
