import type { LossStrips as Facts, LossStrip } from '../../hub/contract/index.ts';
import { dayScale } from '../charts/dayScale.ts';
import { useWidth } from '../charts/useWidth.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { addDays, shortDay } from '../times.ts';
import { words } from '../words.ts';
import { LossBand } from './LossBand.tsx';
import { type DayPins, pinsOf } from './pinsOf.ts';

const LEFT = 4;
const RIGHT = 4;
const APART = 72; // px between two pins: a word and a thumb

/** Places under one another on one axis of days, with what was lost pinned where it was seen. */
export function LossStrips({
  strips,
  chosen,
  onChoose,
}: {
  strips: Facts;
  /** Losses of the pin that is open. */
  chosen: readonly string[];
  onChoose: (losses: readonly string[]) => void;
}) {
  const text = words.losses;
  const [ref, width] = useWidth<HTMLDivElement>(328);
  // A day is as wide as a day: the axis ends where the last one does.
  const end = addDays(strips.to, 1);
  const { x, ticks } = dayScale(strips.from, end, LEFT, width - RIGHT);
  // At the ends a pin hangs a little beside its day, so that all of it is seen.
  const inside = (at: number) => Math.min(Math.max(at, APART / 2), width - APART / 2);
  return (
    <div class="loss-strips" ref={ref}>
      {strips.places.map((strip) => (
        <figure class="strip loss-strip" key={strip.place}>
          <figcaption>
            <a href={`/places/${encodeURIComponent(strip.place)}`}>{strip.name}</a>
          </figcaption>
          <LossBand strip={strip} range={strips} x={x} width={width} ticks={ticks} />
          <Pins
            pins={pinsOf(strip.pins, (day) => inside((x(day) + x(addDays(day, 1))) / 2), APART)}
            {...{ width, chosen, onChoose }}
          />
        </figure>
      ))}
      <svg class="axis" viewBox={`0 0 ${width} 20`} width={width} height="20" aria-hidden="true">
        {ticks.map(({ day, x: at, label }) => (
          <text key={day} x={Math.min(Math.max(at, 22), width - 24)} y="14" text-anchor="middle">
            {label}
          </text>
        ))}
      </svg>
      <LossKey />
      <details class="strip-words">
        <summary>{text.inWords}</summary>
        {strips.places.map((strip) => (
          <StripTable key={strip.place} strip={strip} />
        ))}
      </details>
    </div>
  );
}

function Pins({
  pins,
  width,
  chosen,
  onChoose,
}: {
  pins: readonly DayPins[];
  width: number;
  chosen: readonly string[];
  onChoose: (losses: readonly string[]) => void;
}) {
  const text = words.losses;
  if (pins.length === 0) return null;
  return (
    <div class="pins loss-pins">
      {pins.map(({ x, pins: here }) => {
        const [first] = here;
        if (!first) return null;
        const ids = here.map(({ id }) => id);
        const open = ids.join() === chosen.join();
        return (
          <button
            type="button"
            key={first.id}
            class="pin"
            style={{
              left: `clamp(${APART / 2}px, ${((100 * x) / width).toFixed(2)}%, 100% - ${APART / 2}px)`,
            }}
            aria-expanded={open}
            aria-label={text.pin(
              shortDay(first.day),
              here.map((one) => one.words),
            )}
            onClick={() => onChoose(open ? [] : ids)}
          >
            <span class="pin-word">
              {first.look === null ? text.thrownOut : text.looks[first.look]}
            </span>
            {here.length > 1 && <span class="pin-count">×{here.length}</span>}
          </button>
        );
      })}
    </div>
  );
}

function LossKey() {
  const text = words.losses;
  const sample = (children: preact.ComponentChildren) => (
    <svg class="sample" viewBox="0 0 30 16" width="30" height="16" aria-hidden="true">
      {children}
    </svg>
  );
  return (
    <details class="key">
      <summary>{text.key}</summary>
      <ul>
        <li>
          {sample(
            <>
              <path class="hatch" d="M2 14L14 2M9 14L21 2M16 14L28 2" />
              <path class="loss-foot" d="M0 15H30" />
            </>,
          )}
          {text.keys.wet}
        </li>
        <li>
          {sample(<path class="loss-hot" d="M15 3L21 13H9Z" />)}
          {text.keys.hot}
        </li>
        <li>
          {sample(<path class="loss-cold" d="M15 13L21 3H9Z" />)}
          {text.keys.cold}
        </li>
        <li>
          {sample(<rect class="loss-unknown" x="4" y="2" width="22" height="12" />)}
          {text.keys.unknown}
        </li>
        <li>
          {sample(<path class="loss-quiet" d="M2 4V12M2 8H28M28 4V12" />)}
          {text.keys.quiet}
        </li>
        <li>
          {sample(<path class="loss-pin-shape" d="M15 1V9M10 9H20L15 15Z" />)}
          {text.keys.pin}
        </li>
      </ul>
      <p>{text.coolKey}</p>
    </details>
  );
}

function StripTable({ strip }: { strip: LossStrip }) {
  const text = words.losses;
  const { columns } = text;
  return (
    <>
      <p>{strip.words}</p>
      <FigureTable
        label={strip.name}
        look="loss-days"
        columns={Object.values(columns)}
        rows={strip.days.map((one) => [
          shortDay(one.day),
          words.number(one.wetHours),
          words.number(one.hotHours, 0),
          words.number(one.coldHours, 0),
          words.number(one.unknownHours),
          strip.pins
            .filter(({ day }) => day === one.day)
            .map((pin) => pin.words)
            .join('; '),
        ])}
      />
    </>
  );
}
