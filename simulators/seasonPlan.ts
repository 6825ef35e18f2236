import type { BedKind } from './flowerBed.ts';
import type { PatchKind } from './patch.ts';
import { createChance } from './seed.ts';
import type { TrayCrop } from './trayCrop.ts';
import type { TunnelKind } from './tunnel.ts';

// Farms that differ by their seed: three tunnels of different climate, two strawberry patches.
// Everything in them is invented.

const DAY = 86_400_000;

export type SeasonHouse = {
  readonly kind: TunnelKind;
  readonly capacity: number;
  /** What the farm file says stands there. */
  readonly crop: TrayCrop;
};
export type SeasonPatch = { readonly kind: PatchKind; readonly bed: BedKind };
export type SeasonPlan = {
  readonly seed: number;
  readonly lat: number;
  readonly lon: number;
  readonly zone: string;
  /** Probes hang from `from` on; work begins at `begins`. ms since 1970. */
  readonly from: number;
  readonly begins: number;
  readonly ends: number;
  readonly houses: Readonly<Record<string, SeasonHouse>>;
  readonly patches: Readonly<Record<string, SeasonPatch>>;
  /** Mould in the air, 1 in an ordinary year. */
  readonly spores: number;
};

const house: TunnelKind = {
  ...{ height: 2.4, film: 1.5, filmU: 6.5, transmission: 0.62, inside: 9000, ground: 320_000 },
  ...{ leak: 0.7, vents: 6, ventsPerWind: 3, damp: 0.0012, dampSun: 0.004 },
};

/** The farm and year of a seed; `days` of work from 1 March on. */
export function seasonPlan(seed: number, days = 260, begins = Date.UTC(2026, 2, 1)): SeasonPlan {
  const chance = createChance(seed, 'season plan');
  /** Between so many parts less and more. */
  const about = (value: number, index: number, part = 0.15) =>
    value * (1 + part * (2 * chance.uniform(index) - 1));
  const peak = Date.UTC(2026, 4, 5) + Math.round(14 * (chance.uniform(30) - 0.5)) * DAY;
  const bed = (index: number): BedKind => ({
    ...{ kg: about(110, index), peak: peak + Math.round(4 * chance.uniform(index + 1)) * DAY },
    spread: 13,
  });
  return {
    ...{ seed, lat: 51.8, lon: -7, zone: 'Europe/Dublin' },
    ...{ from: begins - 30 * DAY, begins, ends: begins + days * DAY },
    houses: {
      // Airy, with water barrels; hot, in full sun; damp, in a hollow under trees.
      airy: {
        kind: {
          ...{ ...house, vents: about(10, 1), ventsPerWind: about(5, 2), leak: about(1, 3) },
          ...{ ground: about(520_000, 4), transmission: about(0.58, 5, 0.1) },
        },
        ...{ capacity: 60, crop: 'basil' },
      },
      hot: {
        kind: {
          ...{ ...house, transmission: about(0.72, 6, 0.06), vents: about(5, 7) },
          ...{ ventsPerWind: about(2, 8), damp: about(0.001, 9, 0.3) },
        },
        ...{ capacity: 60, crop: 'basil' },
      },
      damp: {
        kind: {
          ...{ ...house, transmission: about(0.34, 10, 0.25), leak: about(0.4, 11, 0.3) },
          ...{ damp: about(0.003, 12, 0.4), vents: about(7, 13) },
        },
        ...{ capacity: 60, crop: 'pea-shoots' },
      },
    },
    patches: {
      south: { kind: { low: about(0.5, 20), hollow: about(0.3, 21, 0.5) }, bed: bed(22) },
      hollow: { kind: { low: about(0.6, 24), hollow: about(1, 25, 0.5) }, bed: bed(26) },
    },
    spores: 0.6 + 0.9 * chance.uniform(40),
  };
}
