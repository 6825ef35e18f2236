// Heat units of a day known by its extremes only, by adding up the drawn curve in small steps: the
// definition itself, against which the closed forms of rules/heat are held.

export type Cutoff = 'horizontal' | 'vertical' | 'intermediate';
export type Shape = 'sine' | 'triangle';

const STEPS = 1440; // of half a wave each: as many as a day has minutes

/** How far the curve has come from its lowest (0) to its highest (1), at each step of a half wave. */
const rises: Readonly<Record<Shape, Float64Array>> = {
  sine: Float64Array.from({ length: STEPS }, (_, i) => {
    const phase = -Math.PI / 2 + (Math.PI * (i + 0.5)) / STEPS;
    return (1 + Math.sin(phase)) / 2;
  }),
  triangle: Float64Array.from({ length: STEPS }, (_, i) => (i + 0.5) / STEPS),
};

type Thresholds = { readonly lower: number; readonly upper: number; readonly cutoff: Cutoff };

/** How fast a plant grows at one moment, in °C above its base. */
function rate(t: number, { lower, upper, cutoff }: Thresholds): number {
  if (t <= lower) return 0;
  if (t <= upper) return t - lower;
  if (cutoff === 'horizontal') return upper - lower;
  if (cutoff === 'vertical') return 0;
  return upper - lower - (t - upper); // falls back as fast as it rose
}

/** Mean rate over the half wave between two extremes; going up or down is the same. */
export function halfWave(shape: Shape, min: number, max: number, thresholds: Thresholds): number {
  let sum = 0;
  for (const rise of rises[shape]) sum += rate(min + (max - min) * rise, thresholds);
  return sum / STEPS;
}
