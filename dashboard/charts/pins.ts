import type { Strip } from '../../hub/contract/index.ts';

export type Pin = Strip['pins'][number];
export type PinGroup = { readonly x: number; readonly pins: readonly Pin[] };

/**
 * Pins in order of time, those closer than `apart` pixels to the first of a group together with it:
 * a thumb needs room. Pins outside the window are left out; the task list has them.
 */
export function groupPins(
  pins: readonly Pin[],
  x: (t: number) => number,
  window: { readonly from: number; readonly to: number },
  apart: number,
): PinGroup[] {
  const groups: { x: number; pins: Pin[] }[] = [];
  const inside = pins
    .filter(({ t }) => t >= window.from && t <= window.to)
    .sort((a, b) => a.t - b.t);
  for (const pin of inside) {
    const last = groups.at(-1);
    if (last && x(pin.t) - last.x < apart) last.pins.push(pin);
    else groups.push({ x: x(pin.t), pins: [pin] });
  }
  return groups;
}
