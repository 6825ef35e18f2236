import { createChance } from './seed.ts';

// The invented climate of a mild, windy coast near 52° N. All figures here are ours, from no
// source: chosen to look like such a coast, not to repeat any station.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** What the wind brings, before ground, sun and night work on it. */
export type AirMass = {
  /** °C at screen height, mean of day and night. */
  readonly temperature: number;
  /** °C */
  readonly dewPoint: number;
  /** Share of sky covered, 0..1. */
  readonly cloud: number;
  /** m/s at 2 m */
  readonly wind: number;
  /** mm/h */
  readonly rain: number;
};

/** A stretch whose weather the scenario says; what it leaves out stays as invented. */
export type WeatherPiece = Partial<Omit<AirMass, 'dewPoint'>> & {
  readonly from: number;
  readonly to: number;
  /** K of dew point below the air's temperature. */
  readonly depression?: number;
  /** Hours to fade in and out; 3 when left out. */
  readonly fade?: number;
};

const MEAN = 10.2; // °C over the year
const SWING = 4.4; // K; the sea keeps it small
const COLDEST = 42; // day of the year
const SLOT = 38 * HOUR; // one chance of a front in each

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
/** 0 before `a`, 1 after `b`, level at both ends. */
function rise(x: number, a: number, b: number): number {
  const share = clamp((x - a) / (b - a), 0, 1);
  return share * share * (3 - 2 * share);
}
const between = (x: number, a: number, b: number, edge: number) =>
  rise(x, a - edge, a) * (1 - rise(x, b, b + edge));

function seasonMean(t: number): number {
  const begins = Date.UTC(new Date(t).getUTCFullYear(), 0, 1);
  const day = (t - begins) / DAY;
  return MEAN - SWING * Math.cos((2 * Math.PI * (day - COLDEST)) / 365.25);
}

/** Air mass at any instant of `seed`'s climate, with the scenario's pieces laid over it. */
export function createAirMass(seed: number, pieces: readonly WeatherPiece[] = []) {
  const high = createChance(seed, 'high pressure');
  const origin = createChance(seed, 'origin of the air');
  const breaks = createChance(seed, 'breaks in the cloud');
  const gusts = createChance(seed, 'gusts');
  const dryness = createChance(seed, 'dryness');
  const frontChance = createChance(seed, 'fronts');
  const showers = createChance(seed, 'showers');

  const pressureAt = (t: number) => high.smooth(t, 4.5 * DAY);

  // A slot's front depends on its own index only, so it may be kept once worked out.
  const fronts = new Map<number, { passes: number; strength: number }>();
  const frontOf = (slot: number) => {
    let front = fronts.get(slot);
    if (front === undefined) {
      const passes = (slot + 0.1 + 0.8 * frontChance.uniform(3 * slot)) * SLOT;
      const comes = frontChance.uniform(3 * slot + 1) < 0.62 - 0.4 * pressureAt(passes);
      const strength = comes ? 0.5 + 0.8 * frontChance.uniform(3 * slot + 2) : 0;
      front = { passes, strength };
      fronts.set(slot, front);
    }
    return front;
  };

  function invented(
    t: number,
  ): { -readonly [Key in keyof AirMass]: number } & { depression: number } {
    const pressure = pressureAt(t);
    const south = origin.smooth(t, 5 * DAY);
    let temperature = seasonMean(t) + 2.6 * south - 0.8 * pressure;
    let cloud = 0.6 - 0.33 * pressure + 0.22 * breaks.smooth(t, 5 * HOUR);
    let wind = 4.8 - 2.3 * pressure + 1.3 * gusts.smooth(t, 2 * HOUR);
    let depression = 3.4 + 1.1 * pressure - 1.3 * south + 0.8 * dryness.smooth(t, 9 * HOUR);
    let rain = 0;

    const slot = Math.floor(t / SLOT);
    for (let index = slot - 1; index <= slot + 1; index++) {
      const { passes, strength } = frontOf(index);
      if (strength === 0) continue;
      const h = (t - passes) / HOUR; // hours since the cold front
      const warmFront = between(h, -12, -6, 2) * strength;
      const warmSector = between(h, -6, -0.5, 1.5) * strength;
      const coldFront = between(h, -0.7, 0.7, 0.4) * strength;
      const behind = rise(h, 0, 1.5) * Math.exp(-Math.max(0, h) / 16) * strength;
      temperature += 2.2 * warmSector - 2.6 * behind;
      depression += -1.6 * warmFront - 2.6 * warmSector + 1.6 * behind;
      cloud += 0.55 * warmFront + 0.5 * warmSector + 0.5 * coldFront - 0.2 * behind;
      wind += 2.5 * warmFront + 3 * warmSector + 4 * coldFront + 1.2 * behind;
      rain += 1.1 * warmFront + 0.15 * warmSector + 3.2 * coldFront;
      // Showers behind: some half hours, none once the air has settled.
      if (behind > 0.25 && showers.uniform(Math.floor(t / (30 * 60_000))) < 0.12) rain += 1.4;
    }
    return { temperature, cloud, wind, depression, rain, dewPoint: 0 };
  }

  return (t: number): AirMass => {
    const air = invented(t);
    for (const piece of pieces) {
      const fade = (piece.fade ?? 3) * HOUR;
      const weight = between(t, piece.from, piece.to, fade);
      if (weight === 0) continue;
      for (const key of ['temperature', 'cloud', 'wind', 'depression', 'rain'] as const) {
        const value = piece[key];
        if (value !== undefined) air[key] += (value - air[key]) * weight;
      }
    }
    return {
      temperature: air.temperature,
      dewPoint: air.temperature - clamp(air.depression, 0.3, 12),
      cloud: clamp(air.cloud, 0, 1),
      wind: clamp(air.wind, 0.3, 22),
      rain: air.rain < 0.05 ? 0 : air.rain,
    };
  };
}
