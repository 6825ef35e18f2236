import { cardinal } from './cardinal.ts';

// What stands in trays in a made-up season: how it grows, and what hurts it. Other arithmetic than
// the hub's: no band, base, limit or threshold of its rules appears here. Every figure is invented.

export type TrayKind = {
  /** °C at which it grows: least, best, most. */
  readonly grows: readonly [min: number, best: number, max: number];
  /** Days at its best to the cut. */
  readonly days: number;
  /** W/m² inside at which light gives half of what it can. */
  readonly halfLight: number;
  readonly perTray: number;
  readonly price: number;
  /** °C of the leaf at which an hour takes a hundredth, by heat and by cold. */
  readonly scorches: number;
  readonly chills: number;
  /** How readily mould gets in, 1 for basil. */
  readonly mould: number;
};

export const trayKinds = {
  basil: {
    ...{ grows: [9, 26, 37], days: 13, halfLight: 60, perTray: 0.35, price: 30 },
    ...{ scorches: 38, chills: 3.5, mould: 1 },
  },
  'pea-shoots': {
    ...{ grows: [1.5, 20, 32], days: 7, halfLight: 40, perTray: 0.5, price: 18 },
    ...{ scorches: 33, chills: -4, mould: 0.7 },
  },
} as const satisfies Readonly<Record<string, TrayKind>>;
export type TrayCrop = keyof typeof trayKinds;

/** Tenfold for so many K, as heat kills cells and germs alike (the form: Bigelow 1921). Ours. */
const HEAT_Z = 7;
const COLD_Z = 4;
/** °C at which grey mould goes: Botrytis is slow in the cold, best near 20, and stops above 30
 *  (common figures of the trade, no source). */
const MOULD = [0, 20, 31] as const;
const FILM = 4; // g/m² that a spore needs to germinate; ours
const GERMINATES = 7; // h at its best; ours
const DIES = 3; // h after which half of what had begun is dead on a dry leaf; ours
const TAKES = 0.006; // share an hour that it takes once in, at its best, from the air alone; ours
const SPREADS = 6; // times that for all that shows; ours
const BOXES = 4; // days between taking hold and grey fur, one box a day at its best; ours

export type Standing = {
  /** 0 sown, 1 ready. */
  progress: number;
  /** How far spores on it are, 1 when they are in. */
  germ: number;
  /** Shares of it in which mould has hold and does not show. */
  readonly latent: number[];
  /** Share that shows mould. */
  shown: number;
  /** Losses as -ln of the share left. */
  scorch: number;
  chill: number;
};
export const sownNow = (): Standing => ({
  ...{ progress: 0, germ: 0, latent: Array<number>(BOXES).fill(0), shown: 0, scorch: 0, chill: 0 },
});

export type TrayAir = {
  /** °C of air and of leaves, W/m² of light inside, g/m² of water on leaves. */
  readonly temperature: number;
  readonly leaf: number;
  readonly light: number;
  readonly film: number;
};

/** `hours` on (a step of some minutes). `spores`: 1 in an ordinary year. */
export function nextStanding(
  plant: Standing,
  kind: TrayKind,
  air: TrayAir,
  spores: number,
  hours: number,
): void {
  const light = air.light / (air.light + kind.halfLight);
  // Days are half light at most, so the best a day can give is about a half.
  plant.progress += (2 * cardinal(air.temperature, ...kind.grows) * light * hours) / 24 / kind.days;
  plant.scorch += 0.01 * hours * 10 ** ((air.leaf - kind.scorches) / HEAT_Z);
  plant.chill += 0.01 * hours * 10 ** ((kind.chills - air.leaf) / COLD_Z);

  const goes = cardinal(air.leaf, ...MOULD);
  if (air.film > FILM) plant.germ = Math.min(1, plant.germ + (goes * hours) / GERMINATES);
  else plant.germ *= 0.5 ** (hours / DIES);
  const healthy = 1 - plant.shown - plant.latent.reduce((sum, share) => sum + share, 0);
  const pressure = plant.germ >= 1 && air.film > FILM ? spores + SPREADS * plant.shown : 0;
  let moves = healthy * (1 - Math.exp(-kind.mould * TAKES * pressure * goes * hours));
  const share = Math.min(1, ((0.2 + 0.8 * goes) * hours) / 24);
  for (let i = 0; i < plant.latent.length; i++) {
    const on = (plant.latent[i] ?? 0) * share;
    plant.latent[i] = (plant.latent[i] ?? 0) - on + moves;
    moves = on;
  }
  plant.shown += moves;
}

export const losses = ['mould', 'scorch', 'chill'] as const;
export type TrayLoss = (typeof losses)[number];

/** What a tray gives when it is cut, and what it would have given besides, kg by cause. */
export function cutOf(
  plant: Standing,
  kind: TrayKind,
): { kg: number; lost: Record<TrayLoss, number> } {
  const whole = kind.perTray * Math.min(1.1, plant.progress);
  const harm = { mould: -Math.log(1 - Math.min(0.99, plant.shown)), ...plant };
  const sum = harm.mould + harm.scorch + harm.chill;
  const kg = whole * Math.exp(-sum);
  const part = (one: number) => (sum === 0 ? 0 : ((whole - kg) * one) / sum);
  return {
    kg,
    lost: { mould: part(harm.mould), scorch: part(harm.scorch), chill: part(harm.chill) },
  };
}
