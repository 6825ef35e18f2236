import type { Strip } from '../../hub/contract/index.ts';

type Limit = Strip['limits'][number];
export type LimitLabel = Limit & {
  /** px from the top of the band: the limit's line, and the foot of its name */
  readonly line: number;
  readonly foot: number;
  /** px from the left: where the name begins */
  readonly x: number;
};

const APART = 14; // px between two names, and the most room a name asks for
const LETTER = 6.6; // px; a generous mean for 12 px sans-serif

/**
 * Limits inside the scale, each with its name where the lines leave most room: above or under it, at
 * the right, just after now, or at the left.
 */
export function limitLabels(
  strip: Pick<Strip, 'limits' | 't' | 'temperature' | 'fan'>,
  name: (limit: Limit) => string,
  { x, y, left, now, right, bottom }: Axes,
  [low, high]: readonly [number, number],
): LimitLabel[] {
  const lines = [
    ...strip.t.map((t, i) => ({ x: x(t), value: strip.temperature[i] ?? null })),
    ...strip.fan.flatMap((fan) =>
      [fan.low, fan.middle, fan.high].map((value) => ({ x: x(fan.t), value })),
    ),
  ];
  const placed: { from: number; to: number; foot: number }[] = [];
  return strip.limits
    .filter(({ value }) => value >= low && value <= high)
    .sort((a, b) => b.value - a.value)
    .map((limit) => {
      const line = y(limit.value);
      const width = name(limit).length * LETTER;
      const room = ({ from, foot }: { from: number; foot: number }) => {
        const to = from + width;
        const points = lines.flatMap(({ x: at, value }) =>
          value !== null && at >= from && at <= to ? [Math.abs(y(value) - (foot - 4))] : [],
        );
        const names = placed.flatMap((other) =>
          other.from < to && from < other.to ? [Math.abs(other.foot - foot) - APART] : [],
        );
        return Math.min(APART, ...points, ...names);
      };
      const feet = [line - 4, line + 12].filter((foot) => foot >= 12 && foot < bottom);
      const [first, ...others] = [right - 4 - width, now + 6, left + 4]
        .filter((from) => from >= left && from + width <= right)
        .flatMap((from) => feet.map((foot) => ({ from, foot })));
      const best = others.reduce(
        (kept, other) => (room(other) > room(kept) ? other : kept),
        first ?? { from: left + 4, foot: line - 4 },
      );
      placed.push({ ...best, to: best.from + width });
      return { ...limit, line, foot: best.foot, x: best.from };
    });
}

export type Axes = {
  readonly x: (t: number) => number;
  readonly y: (value: number) => number;
  readonly left: number;
  readonly now: number;
  readonly right: number;
  readonly bottom: number;
};
