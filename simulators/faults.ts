import type { Quantity, Reading } from './reading.ts';

/** What can go wrong with one probe between two instants; tests and scenarios list them. */
export type Fault = { readonly probe: string; readonly from: number; readonly to: number } & (
  | { readonly kind: 'silent' }
  /** Repeats one value: the first it meets, or the one given. */
  | { readonly kind: 'stuck'; readonly quantity: Quantity; readonly value?: number }
  /** Now and then a value that was never measured; `share` of readings, 0..1. */
  | {
      readonly kind: 'nonsense';
      readonly quantity: Quantity;
      readonly value: number;
      readonly share: number;
    }
  /** Wanders off by `perDay` from `from` on. */
  | { readonly kind: 'drift'; readonly quantity: Quantity; readonly perDay: number }
  /** Its clock is wrong by `seconds` (ahead is positive). */
  | { readonly kind: 'clock'; readonly seconds: number }
);

const DAY = 86_400_000;

/** One probe's faults at work. `draw` gives 0..1 for a reading; null is a reading never sent. */
export function createFaults(
  probe: string,
  faults: readonly Fault[],
  draw: (t: number, quantity: Quantity) => number,
) {
  const own = faults.filter((fault) => fault.probe === probe);
  const held = new Map<Fault, number>();
  return (reading: Reading): Reading | null => {
    let { t, value } = reading;
    for (const fault of own) {
      if (reading.t < fault.from || reading.t >= fault.to) continue;
      if (fault.kind === 'silent') return null;
      if (fault.kind === 'clock') {
        t += fault.seconds * 1000;
        continue;
      }
      if (fault.quantity !== reading.quantity) continue;
      if (fault.kind === 'drift') value += (fault.perDay * (reading.t - fault.from)) / DAY;
      if (fault.kind === 'nonsense' && draw(reading.t, reading.quantity) < fault.share) {
        value = fault.value;
      }
      if (fault.kind === 'stuck') {
        const kept = fault.value ?? held.get(fault) ?? value;
        held.set(fault, kept);
        value = kept;
      }
    }
    return { ...reading, t, value: Math.round(value * 1e4) / 1e4 };
  };
}
