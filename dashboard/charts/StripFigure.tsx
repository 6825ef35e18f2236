import type { Strip } from '../../hub/contract/index.ts';
import { timeOfDay, when } from '../times.ts';
import { words } from '../words.ts';
import { newest } from './newest.ts';
import { groupPins } from './pins.ts';
import { type Frame, StripBand } from './StripBand.tsx';

const THUMB = 46; // px between two pins: a touch target and a little

/** A place's strip with its name, its newest temperature and its pins. */
export function StripFigure({
  strip,
  frame,
  humidity,
}: {
  strip: Strip;
  frame: Frame;
  humidity: boolean;
}) {
  const pins = groupPins(strip.pins, frame.x, frame.window, THUMB);
  const last = newest(strip);
  return (
    <figure class="strip">
      <figcaption>
        <a href={`/places/${encodeURIComponent(strip.place)}`}>{strip.name}</a>
        <span class={last?.current ? 'strip-now' : 'strip-now strip-old'}>
          {strip.kind === 'cool-room' && <small>{words.strips.ownScale}</small>}{' '}
          {last === null
            ? words.notKnown
            : last.current
              ? words.temperature(last.value)
              : words.strips.lastRead(
                  words.temperature(last.value),
                  when(last.t, frame.zone, frame.window.now),
                )}
        </span>
      </figcaption>
      <StripBand strip={strip} frame={frame} humidity={humidity} />
      {pins.length > 0 && (
        <div class="pins">
          {pins.map(({ x, pins: here }) => {
            const [first] = here;
            if (!first) return null;
            const time = timeOfDay(first.t, frame.zone);
            return (
              <a
                key={first.task}
                class="pin"
                href={`/#${encodeURIComponent(first.task)}`}
                style={{ left: beside(x, frame.width) }}
                aria-label={words.strips.pin(
                  when(first.t, frame.zone, frame.window.now),
                  here.map(({ title }) => title),
                )}
              >
                <span>{time}</span>
                {here.length > 1 && <span class="pin-count">×{here.length}</span>}
              </a>
            );
          })}
        </div>
      )}
    </figure>
  );
}

// As a share of the width, as the bands scale: paper and a turned phone are laid out before
// anything is drawn anew, and a pin left where it was would widen the page.
const beside = (x: number, width: number) =>
  `clamp(${THUMB / 2}px, ${((100 * x) / width).toFixed(2)}%, 100% - ${THUMB / 2}px)`;
