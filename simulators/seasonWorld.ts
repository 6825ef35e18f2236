import { createAirMass } from './airMass.ts';
import { type Bed, newBed, nextBed } from './flowerBed.ts';
import { leafTemperature, nextFilm } from './leafFilm.ts';
import { nextPatch, type Patch } from './patch.ts';
import type { SeasonPlan } from './seasonPlan.ts';
import { nextStanding, type Standing, type TrayCrop, trayKinds } from './trayCrop.ts';
import { firstTunnel, nextTunnel, type Tunnel } from './tunnel.ts';
import { firstWeather, nextWeather, STEP, type Weather } from './weather.ts';

// A made-up season in steps of five minutes, in which somebody else opens, shuts, covers and carries.

const HOURS = STEP / 3_600_000;

/** Trays of one sowing, in one house. */
export type Stand = {
  readonly id: string;
  readonly crop: TrayCrop;
  readonly sownAt: number;
  house: string;
  trays: number;
  readonly plant: Standing;
};
export type SeasonNow = {
  t: number;
  weather: Weather;
  readonly tunnels: Record<string, Tunnel>;
  readonly patches: Record<string, Patch>;
  readonly beds: Record<string, Bed>;
  /** g/m² of water on the leaves of each house. */
  readonly films: Record<string, number>;
  readonly stands: Map<string, Stand>;
  /** What people have opened and covered. */
  readonly open: Record<string, boolean>;
  readonly covered: Record<string, boolean>;
};

/** The season of a plan: `now` is changed by each step, and by the people in it. */
export function createSeasonWorld(plan: SeasonPlan) {
  const airMass = createAirMass(plan.seed);
  const weather = firstWeather(plan.from, airMass(plan.from));
  const now: SeasonNow = {
    ...{ t: plan.from, weather, tunnels: {}, patches: {}, beds: {}, films: {} },
    ...{ stands: new Map(), open: {}, covered: {} },
  };
  for (const name of Object.keys(plan.houses)) now.tunnels[name] = firstTunnel(weather);
  for (const name of Object.keys(plan.patches)) now.beds[name] = newBed();

  function step(): SeasonNow {
    now.weather = nextWeather(now.weather, airMass(now.t), plan.lat, plan.lon);
    now.t += STEP;
    for (const [name, { kind }] of Object.entries(plan.houses)) {
      const open = now.open[name] ? 1 : 0;
      const tunnel = nextTunnel(now.tunnels[name] ?? firstTunnel(weather), kind, now.weather, open);
      now.tunnels[name] = tunnel;
      const sun = kind.transmission * now.weather.sun;
      const { temperature, vapour } = tunnel;
      const air = { temperature, vapour, sun, skyLoss: now.weather.skyLoss, open };
      const film = nextFilm(now.films[name] ?? 0, air, STEP / 60_000);
      now.films[name] = film;
      const trays = { temperature, leaf: leafTemperature(air, film), light: sun, film };
      for (const stand of now.stands.values())
        if (stand.house === name)
          nextStanding(stand.plant, trayKinds[stand.crop], trays, plan.spores, HOURS);
    }
    for (const [name, { kind, bed }] of Object.entries(plan.patches)) {
      const covered = now.covered[name] === true;
      const patch = nextPatch(now.patches[name] ?? null, kind, now.weather, covered);
      now.patches[name] = patch;
      const temperature = covered ? patch.underCover : patch.flower;
      const own = now.beds[name];
      const air = { temperature, covered, sun: now.weather.sun };
      if (own) nextBed(own, bed, air, now.t, HOURS);
    }
    return now;
  }
  return { now, step };
}
