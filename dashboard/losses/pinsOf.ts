import type { LossStrip } from '../../hub/contract/index.ts';

export type LossPin = LossStrip['pins'][number];
export type DayPins = { readonly x: number; readonly pins: readonly LossPin[] };

/** Pins in order of their days, those closer than `apart` pixels to the first of a group with it. */
export function pinsOf(
  pins: readonly LossPin[],
  x: (day: string) => number,
  apart: number,
): DayPins[] {
  const groups: { x: number; pins: LossPin[] }[] = [];
  for (const pin of [...pins].sort((a, b) => a.day.localeCompare(b.day))) {
    const at = x(pin.day);
    const last = groups.at(-1);
    if (last && at - last.x < apart) last.pins.push(pin);
    else groups.push({ x: at, pins: [pin] });
  }
  return groups;
}
