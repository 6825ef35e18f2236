import { flowersOf } from '../../simulators/flowerBed.ts';
import type { SeasonPlan } from '../../simulators/seasonPlan.ts';
import { trayKinds } from '../../simulators/trayCrop.ts';

// What the grower of a made-up season told the hub: usual figures, not those the simulator reckons
// with. Nobody tells it the truth of its farm.

export const WAGE = 16; // money an hour; invented
export const FRUIT_PRICE = 8; // money a kg; invented
/** Minutes of work, the same whoever had the idea. Invented. */
export const MINUTES = { vents: 5, cover: 25, uncover: 20, walk: 5, perTray: 1, answer: 0.5 };
/** When somebody opens, as the farm file is told; shut an hour before sunset. */
const OPENS = '08:30';
const OPEN_FLOWERS = 9; // days' flowers that a frost can take

/** Money that a killing frost takes of a patch at the height of flowering, to the nearest ten. */
const frostTakes = (plan: SeasonPlan, name: string) => {
  const bed = plan.patches[name]?.bed;
  if (!bed) return 0;
  return Math.round((flowersOf(bed, bed.peak) * OPEN_FLOWERS * FRUIT_PRICE) / 10) * 10;
};

/** The farm's description; patches have covers to be laid only while they flower. */
export const farmText = (plan: SeasonPlan, flowering: boolean) => `farm:
  { name: Seasons (invented), zone: ${plan.zone}, lat: ${plan.lat}, lon: ${plan.lon}, money: EUR, wage: ${WAGE} }
places:
${Object.entries(plan.houses)
  .map(
    ([id, { capacity, crop }]) =>
      `  - { id: ${id}, name: ${id} house, kind: tunnel, vents: true, airing: { opens: '${OPENS}' }, capacity: ${capacity}, crop: ${crop} }`,
  )
  .join('\n')}
${Object.keys(plan.patches)
  .map(
    (id) =>
      `  - { id: ${id}, name: ${id} patch, kind: patch, crop: strawberry${
        flowering
          ? `, covers: cloches, cover: { minutes: ${MINUTES.cover + MINUTES.uncover}, value: ${frostTakes(plan, id)}, damage: -1.1 }`
          : ''
      } }`,
  )
  .join('\n')}
  - { id: outside, name: Outside, kind: outdoor }
probes:
${Object.keys(plan.houses)
  .map((id) => `  - { id: ${id}-canopy, place: ${id}, spot: canopy, every: 15m }`)
  .join('\n')}
${Object.keys(plan.patches)
  .flatMap((id) => [
    `  - { id: ${id}-flower, place: ${id}, spot: canopy, every: 15m }`,
    `  - { id: ${id}-under, place: ${id}, spot: under-cover, every: 15m }`,
  ])
  .join('\n')}
  - { id: mast, place: outside, spot: air, every: 15m }
crops:
  - { id: basil, base: 10, band: [18, 28], heatLimit: 32, chill: 12, disease: [grey-mould, basil-downy-mildew],
      price: ${trayKinds.basil.price}, perTray: ${trayKinds.basil.perTray}, days: [22, 45], minutes: { move: 1 } }
  - { id: pea-shoots, base: 4, band: [12, 20], heatLimit: 26, disease: [grey-mould],
      price: ${trayKinds['pea-shoots'].price}, perTray: ${trayKinds['pea-shoots'].perTray}, days: [12, 30], minutes: { move: 1 } }
  - { id: strawberry, base: 5, heatLimit: 30, price: ${FRUIT_PRICE} }
`;
