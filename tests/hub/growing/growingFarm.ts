import type { BatchEvent, BatchFacts } from '../../../hub/batches/index.ts';
import type { StoredReading } from '../../../hub/store/index.ts';
import { HOUR, MINUTE, smallHub } from '../smallFarm.ts';

export const DAY = 24 * HOUR;
/** Made up: two tunnels, a mast, a crop whose days the grower knows. Midnight there is UTC's. */
export const growingText = (crop = 'base: 10') => `
farm: { name: Test Garden (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel }
  - { id: sun-house, name: Sun House, kind: tunnel }
  - { id: outside, name: Outside, kind: outdoor }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 30m }
  - { id: p2, place: sun-house, spot: canopy, every: 30m }
  - { id: mast, place: outside, spot: air, every: 30m }
crops:
  - { id: basil, name: Basil, ${crop}, price: 30, perTray: 0.35 }
`;

/** A hub of that farm, whose readings are put into the store as they come from the intake. */
export function growingHub({ now = Date.UTC(2026, 4, 10), farm = growingText() } = {}) {
  const hub = smallHub({ now, farm });
  /** Readings every half hour from `from` to `to`, as a curve of the time tells. */
  const measure = (
    probe: string,
    from: number,
    to: number,
    curve: (t: number) => number | null,
    quantity = 'temperature',
  ) => {
    const readings: StoredReading[] = [];
    for (let t = from; t <= to; t += 30 * MINUTE) {
      const value = curve(t);
      if (value !== null) readings.push({ probe, quantity, t, value, raw: null, flag: null });
    }
    hub.store.transaction(() => hub.store.readings.add(readings));
    hub.core.snapshots.fold(true);
  };
  const tell = (id: string, event: BatchEvent, t = hub.clock.now()) =>
    hub.core.batches.add(id, null, event, 'Ann', t);
  const sow = (id: string, facts: Partial<BatchFacts> = {}) =>
    tell(id, {
      event: 'sown',
      facts: {
        ...{ crop: 'basil', variety: null, trays: 10, sownAt: hub.clock.now() },
        ...{ place: 'long-house', seedCost: null, otherCost: null, meantFor: null },
        ...facts,
      },
      partOf: null,
    });
  return { ...hub, growing: hub.core.growing, measure, tell, sow };
}

export const noted = (at: number): BatchEvent => ({
  ...{ event: 'noted', at, look: 'ready', note: null, photo: null },
});
export const cutOf = (at: number, trays: number, kg: number, more: object = {}): BatchEvent => ({
  ...{ event: 'cut', at, kg, trays, stage: 'later', clears: true },
  ...{ minutes: null, price: null, lostKg: null, note: null },
  ...more,
});
