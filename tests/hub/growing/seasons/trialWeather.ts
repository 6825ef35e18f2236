import { createAirMass } from '../../../../simulators/airMass.ts';
import { createChance } from '../../../../simulators/seed.ts';
import { firstWeather, nextWeather, STEP } from '../../../../simulators/weather.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const LAT = 51.9;
const LON = -8.3;
const SETTLE = 20 * DAY;
const HELD = 6; // steps for which one air mass is good
/** Share of the sun's photons that come through film. Invented. */
const THROUGH_FILM = 0.68;
const PHOTONS = 2.06e-6; // mol in 1 J of sunlight: 0.45 × 4.57 µmol/J, as common practice has it

/** One hour outdoors and in two tunnels: °C, and the light in the tunnels, mol m⁻². */
export type TrialHour = {
  readonly t: number;
  readonly outside: number;
  readonly 'long-house': number;
  readonly 'sun-house': number;
  readonly light: number;
};

/**
 * Hours of an invented climate, the air of simulators/ with slow ups and downs of weeks and years
 * laid over it; and two tunnels that follow sun and outdoors with a lag of their own.
 */
export function* trialHours(seed: number, from: number, to: number): Generator<TrialHour> {
  const airMass = createAirMass(seed);
  const spells = createChance(seed, 'spells of weeks');
  const years = createChance(seed, 'years unlike');
  const vents = createChance(seed, 'vents');
  let t = from - SETTLE;
  const airAt = (at: number) => {
    const air = airMass(at);
    const year = new Date(at).getUTCFullYear();
    const off = 1.3 * spells.smooth(at, 24 * DAY) + 0.6 * years.normal(year);
    return { ...air, temperature: air.temperature + off, dewPoint: air.dewPoint + off };
  };
  let air = airAt(t);
  let weather = firstWeather(t, air);
  let [long, sunny] = [weather.temperature, weather.temperature];
  let light = 0;
  for (let step = 1; t < to; step++) {
    if (step % HELD === 0) air = airAt(t);
    weather = nextWeather(weather, air, LAT, LON);
    t += STEP;
    const open = 0.8 + 0.4 * vents.uniform(Math.floor(t / DAY));
    const aim = (gain: number) => weather.temperature + (gain * weather.sun) / open + 0.8;
    long += 0.12 * (aim(0.014) - long);
    sunny += 0.09 * (Math.min(aim(0.026), 36) - sunny);
    light += weather.sun * THROUGH_FILM * PHOTONS * (STEP / 1000);
    if (t % HOUR !== 0) continue;
    if (t >= from)
      yield { t, outside: weather.temperature, 'long-house': long, 'sun-house': sunny, light };
    light = 0;
  }
}
