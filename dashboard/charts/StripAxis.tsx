import { hourOfDay, timeOfDay, weekday } from '../times.ts';
import { words } from '../words.ts';
import type { Frame } from './StripBand.tsx';

const ROOM = 30; // px that a label needs

/** The hours of the shared time axis, the day's name at each midnight, and where now is. */
export function StripAxis({ frame }: { frame: Frame }) {
  const { width, x, window, zone, left } = frame;
  const now = x(window.now);
  return (
    <svg class="axis" viewBox={`0 0 ${width} 34`} width={width} height="34" aria-hidden="true">
      {frame.hours.map(({ t, hour }) => {
        const at = x(t);
        const inside = at > left + 8 && at < width - 8;
        if (!inside) return null;
        return (
          <g key={t}>
            {Math.abs(at - now) >= ROOM && (
              <text x={at} y="29" text-anchor="middle">
                {hour === 0 ? weekday(t, zone) : hourOfDay(t, zone)}
              </text>
            )}
          </g>
        );
      })}
      <text
        class="axis-now"
        x={Math.min(Math.max(now, left + 34), width - 34)}
        y="12"
        text-anchor="middle"
      >
        {words.strips.now} {timeOfDay(window.now, zone)}
      </text>
      <path class="now-line" d={`M${now} 17V34`} />
    </svg>
  );
}
