import { useRef, useState } from 'preact/hooks';
import { words } from '../words.ts';
import { zoneTowns } from './zoneTowns.ts';

export type Point = { readonly lat: number; readonly lon: number };

/** Degrees from left to right; half of it from top to bottom. Ours. */
const WIDTHS = [360, 90, 24, 6] as const;
/** Between two lines, for each width. */
const LINES = [30, 10, 2, 0.5] as const;
const W = 360;
const H = 180;
const within = (value: number, most: number) => Math.min(most, Math.max(-most, value));
const rounded = (value: number) => Number(value.toFixed(3));

/** The point among lines and towns; moved by a tap, by dragging, or with the arrow keys. */
export function Globe({ at, onMove }: { at: Point; onMove: (point: Point) => void }) {
  const text = words.setUpSteps.globe;
  const [closer, setCloser] = useState(0);
  const [centre, setCentre] = useState<Point>(at);
  const picture = useRef<SVGSVGElement>(null);
  const dragging = useRef(false);
  const width = WIDTHS[closer] ?? 360;
  const step = LINES[closer] ?? 30;
  // The whole world stands still; nearer views follow the point when it comes from elsewhere.
  const near =
    Math.abs(at.lon - centre.lon) < width / 2 && Math.abs(at.lat - centre.lat) < width / 4;
  const middle: Point =
    closer === 0 ? { lat: 0, lon: 0 } : near ? centre : { lat: at.lat, lon: at.lon };
  const scale = W / width;
  const x = (lon: number) => W / 2 + (lon - middle.lon) * scale;
  const y = (lat: number) => H / 2 - (lat - middle.lat) * scale;
  const move = (lat: number, lon: number) =>
    onMove({ lat: rounded(within(lat, 90)), lon: rounded(within(lon, 180)) });
  const toHere = (event: PointerEvent) => {
    const box = picture.current?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    move(
      middle.lat - (((event.clientY - box.top) / box.height) * H - H / 2) / scale,
      middle.lon + (((event.clientX - box.left) / box.width) * W - W / 2) / scale,
    );
  };
  const zoom = (to: number) => {
    setCentre(at);
    setCloser(to);
  };
  const by = (step / 10) * (closer === 0 ? 1 / 3 : 1); // a line is ten keys apart; on the world thirty
  const keys: Readonly<Record<string, () => void>> = {
    ArrowUp: () => move(at.lat + by, at.lon),
    ArrowDown: () => move(at.lat - by, at.lon),
    ArrowLeft: () => move(at.lat, at.lon - by),
    ArrowRight: () => move(at.lat, at.lon + by),
    '+': () => zoom(Math.min(WIDTHS.length - 1, closer + 1)),
    '-': () => zoom(Math.max(0, closer - 1)),
  };
  const lines = (from: number, to: number, most: number) => {
    const first = Math.ceil(Math.max(from, -most) / step);
    const last = Math.floor(Math.min(to, most) / step);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
  };
  const meridians = lines(middle.lon - width / 2, middle.lon + width / 2, 180);
  const parallels = lines(middle.lat - width / 4, middle.lat + width / 4, 90);
  const named = closer === 0 ? [] : zoneTowns.filter(inView);
  function inView({ lat, lon }: Point) {
    return Math.abs(lon - middle.lon) < width / 2 && Math.abs(lat - middle.lat) < width / 4;
  }
  return (
    <div class="globe">
      <div
        role="application"
        aria-label={text.label}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the arrow keys move the point
        tabIndex={0}
        onKeyDown={(event) => {
          const key = keys[event.key];
          if (!key) return;
          event.preventDefault();
          key();
        }}
        onPointerDown={(event) => {
          dragging.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          toHere(event);
        }}
        onPointerMove={(event) => dragging.current && toHere(event)}
        onPointerUp={() => {
          dragging.current = false;
        }}
        onPointerCancel={() => {
          dragging.current = false;
        }}
      >
        <svg ref={picture} viewBox={`0 0 ${W} ${H}`} aria-hidden="true">
          {meridians.map((lon) => (
            <line
              key={`m${lon}`}
              class={lon === 0 ? 'zero' : 'graticule'}
              x1={x(lon)}
              x2={x(lon)}
              y1={0}
              y2={H}
            />
          ))}
          {parallels.map((lat) => (
            <line
              key={`p${lat}`}
              class={lat === 0 ? 'zero' : 'graticule'}
              x1={0}
              x2={W}
              y1={y(lat)}
              y2={y(lat)}
            />
          ))}
          {parallels
            .filter((lat) => y(lat) > 12 && y(lat) < H - 14)
            .map((lat) => (
              <text key={`t${lat}`} x={2} y={y(lat) - 2}>
                {text.degrees(lat)}
              </text>
            ))}
          {meridians
            .filter((_, i) => i % 3 === 1)
            .map((lon) => (
              <text key={`l${lon}`} x={x(lon) + 2} y={H - 2}>
                {text.degrees(lon)}
              </text>
            ))}
          {zoneTowns.filter(inView).map((town) => (
            <circle key={town.zone} class="town" cx={x(town.lon)} cy={y(town.lat)} r={1} />
          ))}
          {named.length <= 12 &&
            named.map(({ zone, lat, lon }) => (
              <text key={zone} class="town-name" x={x(lon) + 3} y={y(lat) - 3}>
                {text.town(zone)}
              </text>
            ))}
          <circle class="ring" cx={x(at.lon)} cy={y(at.lat)} r={8} />
          <circle class="point" cx={x(at.lon)} cy={y(at.lat)} r={2.5} />
        </svg>
      </div>
      <div class="row-buttons">
        <button type="button" aria-disabled={closer === 0} onClick={keys['-']}>
          {text.wider}
        </button>
        <button type="button" aria-disabled={closer === WIDTHS.length - 1} onClick={keys['+']}>
          {text.closer}
        </button>
      </div>
      <p class="quiet">{text.how}</p>
    </div>
  );
}
