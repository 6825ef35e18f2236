import { useState } from 'preact/hooks';
import type { Strips } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { hours } from './hours.ts';
import { StripAxis } from './StripAxis.tsx';
import type { Frame } from './StripBand.tsx';
import { StripFigure } from './StripFigure.tsx';
import { StripKey } from './StripKey.tsx';
import { StripWords } from './StripWords.tsx';
import { scale } from './scale.ts';
import { useWidth } from './useWidth.ts';

const LEFT = 26; // px for the temperature figures

/** All places under one another on one time axis, fitted to the width there is. */
export function StripStack({ strips, zone }: { strips: Strips; zone: string }) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const [humidity, setHumidity] = useState(false);
  const frame: Frame = {
    window: strips,
    width,
    height: width < 600 ? 92 : 112,
    left: LEFT,
    x: scale([strips.from, strips.to], [LEFT, width]),
    hours: hours(strips.from, strips.to, width < 600 ? 6 : 3, zone),
    zone,
  };
  return (
    <div class="strips" ref={ref}>
      {strips.strips.length === 0 ? (
        <p class="quiet">{words.strips.none}</p>
      ) : (
        <>
          <StripKey />
          <label class="check">
            <input
              type="checkbox"
              checked={humidity}
              onChange={(event) => setHumidity(event.currentTarget.checked)}
            />
            {words.strips.humidity}
          </label>
          <StripAxis frame={frame} />
          {strips.strips.map((strip) => (
            <StripFigure key={strip.place} strip={strip} frame={frame} humidity={humidity} />
          ))}
          <StripWords strips={strips.strips} frame={frame} />
        </>
      )}
    </div>
  );
}
