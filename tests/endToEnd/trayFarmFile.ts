import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

const HOUR = 3_600_000; // ms
const DAY = 24 * HOUR;
/** In the evening, when shade is no longer asked for. */
export const NOW = Date.UTC(2026, 5, 20, 19);

const TEXT = `
farm: { name: Two Houses (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, capacity: 40, crop: basil, trays: 30 }
  - { id: sun-house, name: Sun House, kind: tunnel, capacity: 40 }
  - { id: outside, name: Outside, kind: outdoor }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 30m }
  - { id: p2, place: sun-house, spot: canopy, every: 30m }
  - { id: mast, place: outside, spot: air, every: 30m }
crops:
  - { id: basil, name: Basil, base: 10, band: [18, 28], heatLimit: 32, chill: 11, disease: [grey-mould], price: 30, perTray: 0.35 }
  - { id: cress, name: Cress, band: [10, 20] }
`;

/** An invented farm, and where its readings go. */
export function twoHouses(folder: string) {
  const [farm, readings] = [join(folder, 'farm.yaml'), join(folder, 'readings.ndjson')];
  writeFileSync(farm, TEXT);
  return { farm, readings };
}

/** Twenty-five days: one house far too hot by day, the other mild. */
export function houseReadings(file: string) {
  const swings = { p1: [27, 9, 55], p2: [23, 4, 60], mast: [16, 5, 70] } as const;
  const lines: string[] = [];
  for (let t = NOW - 25 * DAY; t <= NOW; t += HOUR / 2)
    for (const [probe, [middle, by, damp]] of Object.entries(swings)) {
      const hour = (t % DAY) / HOUR;
      const wobble = 0.4 * Math.sin(2.1 * Math.floor(t / DAY));
      const warmth = middle - by * Math.cos(((hour - 3) / 12) * Math.PI) + wobble;
      const at = new Date(t).toISOString();
      for (const [quantity, value] of [
        ['temperature', Math.round(100 * warmth) / 100],
        ['humidity', damp + Math.round(3 * Math.sin(t / HOUR))],
      ] as const)
        lines.push(JSON.stringify({ probe, quantity, t: at, value }));
    }
  writeFileSync(file, `${lines.join('\n')}\n`);
}
