import type { Strip, Strips } from '../../hub/contract/index.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { degreeTicks } from './degreeTicks.ts';
import type { Hour } from './hours.ts';
import { limitLabels } from './limitLabels.ts';
import { clip, fanPath, linePath } from './paths.ts';
import { extent, scale } from './scale.ts';

export type Frame = {
  readonly window: Strips;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly x: (t: number) => number;
  readonly hours: readonly Hour[];
  readonly zone: string;
};

const MARGIN = 7; // px kept free above and below the extreme values

/** One place's band: night, wet spells, limits, forecast and the measured line, in that order. */
export function StripBand({
  strip,
  frame,
  humidity,
}: {
  strip: Strip;
  frame: Frame;
  humidity: boolean;
}) {
  const { window, width, height, left, x, zone } = frame;
  const [low, high] = domain(strip, window);
  const y = scale([low, high], [height - MARGIN, MARGIN]);
  const rh = scale([0, 100], [height - 2, 2]);
  const id = `strip-${strip.place}`;
  const title = words.strips.title(
    strip.name,
    timeOfDay(window.from, zone),
    timeOfDay(window.to, zone),
  );
  const across = (span: { from: number; to: number }) => {
    const part = clip(span, window);
    return part && { x: x(part.from), width: x(part.to) - x(part.from) };
  };
  return (
    <svg
      class="band"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-labelledby={`${id}-title`}
      aria-describedby={`${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>{strip.words}</desc>
      <defs>
        <pattern
          id={`${id}-hatch`}
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V6" class="hatch" />
        </pattern>
        <clipPath id={`${id}-clip`}>
          <rect x={left} y="0" width={width - left} height={height} />
        </clipPath>
      </defs>
      {window.nights.map((night) => {
        const part = across(night);
        return part && <rect key={night.from} class="night" y="0" height={height} {...part} />;
      })}
      {frame.hours.map(({ t, hour }) => (
        <path key={t} class={hour === 0 ? 'midnight' : 'hour'} d={`M${x(t)} 0V${height}`} />
      ))}
      {strip.wetSpells.map((spell) => {
        const part = across(spell);
        return (
          part && (
            <g key={spell.from}>
              <rect y="0" height={height} fill={`url(#${id}-hatch)`} {...part} />
              <rect class="wet-foot" y={height - 3} height="3" {...part} />
            </g>
          )
        );
      })}
      {degreeTicks(low, high, height / 34).map(({ value, label }) => (
        <g key={value}>
          <path class="tick" d={`M${left} ${y(value)}H${width}`} />
          <text class="tick-text" x={left - 5} y={y(value) + 4} text-anchor="end">
            {label}
          </text>
        </g>
      ))}
      <g clip-path={`url(#${id}-clip)`}>
        <path class="fan" d={fanPath(strip.fan, x, y)} />
        <path
          class="fan-middle"
          d={linePath(
            strip.fan.map(({ t }) => t),
            strip.fan.map(({ middle }) => middle),
            x,
            y,
          )}
        />
        <Limits strip={strip} frame={frame} y={y} inside={[low, high]} />
        {humidity && <path class="humidity" d={linePath(strip.t, strip.humidity, x, rh)} />}
        <path class="measured-halo" d={linePath(strip.t, strip.temperature, x, y)} />
        <path class="measured" d={linePath(strip.t, strip.temperature, x, y)} />
      </g>
      <path class="now-line" d={`M${x(window.now)} 0V${height}`} />
      <path class="frame" d={`M${left} .5H${width}M${left} ${height - 0.5}H${width}`} />
      {strip.temperature.every((value) => value === null) && (
        <text class="no-readings" x={left + 10} y={height / 2 + 5}>
          {words.strips.noReadings}
        </text>
      )}
    </svg>
  );
}

function Limits({
  strip,
  frame: { left, width, height, x, window },
  y,
  inside,
}: {
  strip: Strip;
  frame: Frame;
  y: (value: number) => number;
  inside: readonly [number, number];
}) {
  const name = ({ what, value }: Strip['limits'][number]) =>
    `${words.limits[what]} ${words.degrees(value)}`;
  const axes = { x, y, left, now: x(window.now), right: width, bottom: height };
  return limitLabels(strip, name, axes, inside).map((label) => (
    <g key={label.what} class={`limit limit-${label.what}`}>
      <path d={`M${left} ${label.line}H${width}`} />
      <text x={label.x} y={label.foot}>
        {name(label)}
      </text>
    </g>
  ));
}

const ownScale = ({ kind }: Strip) => kind === 'cool-room';

// Tunnels, patches and outdoors share one scale so that heights compare; a cool room would be a flat
// line on it.
function domain(strip: Strip, { scale: shared }: Strips): readonly [number, number] {
  if (!ownScale(strip)) return [shared.min, shared.max];
  const values = [
    ...strip.temperature,
    ...strip.limits.map(({ value }) => value),
    ...strip.fan.flatMap(({ low, high }) => [low, high]),
  ];
  return extent(values, 1) ?? [0, 10];
}
