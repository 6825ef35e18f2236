import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

// An invented garden, small enough to know by heart. Nobody lives there.
const garden = `
farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, capacity: 40, crop: basil, trays: 30 }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: south-patch, name: South patch, kind: patch, crop: strawberry, covers: cloches, cover: { minutes: 35, value: 900, damage: -1.1 } }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, volume: 12, value: 400 }
probes:
  - { id: leaf, place: long-house, spot: canopy, every: 5m, offset: { temperature: 0.5 } }
  - { id: mast, place: outside, spot: air, every: 5m }
  - { id: bloom, place: south-patch, spot: canopy, every: 5m }
  - { id: cold, place: cool-room, spot: air, every: 2m }
  - { id: unit, place: cool-room, spot: unit, every: 1m }
crops:
  - { id: basil, base: 10, band: [18, 28], heatLimit: 32, chill: 12, disease: [grey-mould], price: 30, perTray: 0.35 }
  - { id: strawberry, base: 3, price: 8 }
deliveries: [ { day: thursday } ]
mappings:
  - topic: shed/+probe/state
    time: /at
    fields:
      - { quantity: temperature, pointer: /climate/celsius, unit: Cel }
      - { quantity: humidity, pointer: /climate/rh, unit: "%RH" }
`;

/** Writes the farm file into a folder. @returns its path. */
export function gardenFile(folder: string): string {
  const file = join(folder, 'farm.yaml');
  writeFileSync(file, garden);
  return file;
}
