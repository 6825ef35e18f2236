import type { HouseHour } from './houseYear.ts';

// How the made-up crops grow in trays. Every figure here is invented, so that a learner of base
// temperatures, places and yields has something true to find; none is advice.

export type GrowthKind = {
  /** °C below which it stands still, and above which more warmth does nothing. */
  readonly base: number;
  readonly upper: number;
  /** Heat to the later cut, °C d above the base, and the share of it for young leaves. */
  readonly needs: number;
  readonly young: number;
  /** mol/m² a day under which it grows slower, thinner and longer. */
  readonly light: number;
  /** kg a tray at the later cut in good light. */
  readonly perTray: number;
  /** Leaves are hurt below this, °C. */
  readonly chill: number;
};

export const growthKinds: Readonly<Record<string, GrowthKind>> = {
  basil: { base: 8.6, upper: 27, needs: 165, young: 0.7, light: 7, perTray: 0.36, chill: 1.5 },
  'pea-shoots': {
    base: 2.8,
    upper: 22,
    needs: 165,
    young: 0.75,
    light: 3.5,
    perTray: 0.52,
    chill: -4,
  },
  'radish-shoots': {
    base: 3.6,
    upper: 24,
    needs: 105,
    young: 0.8,
    light: 3,
    perTray: 0.31,
    chill: -3,
  },
  'salad-leaves': {
    base: 3.2,
    upper: 22,
    needs: 300,
    young: 0.6,
    light: 4,
    perTray: 0.62,
    chill: -4,
  },
};

const DAMP = 92; // %RH from which mould gets on
const DULLEST = 0.45; // share of its speed a crop keeps in the dark

export type Growing = {
  /** °C d of growth, lack of light taken off. */
  heat: number;
  /** Days' light, mol/m², summed. */
  light: number;
  hours: number;
  /** Hours so damp and mild that mould gets on. */
  damp: number;
  coldest: number;
};
export const seedling = (): Growing => ({
  ...{ heat: 0, light: 0, hours: 0, damp: 0, coldest: Number.POSITIVE_INFINITY },
});

/** One hour on. `daylight`: mol/m² of the 24 hours before. */
export function grow(plant: Growing, kind: GrowthKind, hour: HouseHour, daylight: number): void {
  const warmth = Math.min(kind.upper, hour.temperature) - kind.base;
  const lit = DULLEST + (1 - DULLEST) * Math.min(1, daylight / kind.light);
  plant.heat += (Math.max(0, warmth) * lit) / 24;
  plant.light += hour.light;
  plant.hours++;
  if (hour.humidity >= DAMP && hour.temperature > 6) plant.damp++;
  plant.coldest = Math.min(plant.coldest, hour.temperature);
}

/** Mean light of its days, mol/m². */
export const meanLight = ({ light, hours }: Growing) => (hours === 0 ? 0 : (24 * light) / hours);

/** kg a tray when it is cut now: thinner for lack of light, heavier with age up to a tenth. */
export function yieldOf(plant: Growing, kind: GrowthKind): number {
  const grown = Math.min(1.1, plant.heat / kind.needs);
  const lit = Math.min(1, 0.55 + (0.45 * meanLight(plant)) / (1.5 * kind.light));
  return kind.perTray * grown ** 1.4 * lit;
}
