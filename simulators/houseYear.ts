import { createAirMass } from './airMass.ts';
import { createLocalTime } from './localTime.ts';
import type { Scenario } from './scenario.ts';
import { firstTunnel, nextTunnel, type Tunnel } from './tunnel.ts';
import { createVents } from './vents.ts';
import { firstWeather, nextWeather, STEP } from './weather.ts';

// A year inside the made-up tunnels, hour by hour: the same weather, vents and balance as the world
// steps, without its patches and its cool room.

const HOUR = 3_600_000;
const SETTLE = 8 * 24 * HOUR; // until nothing of the first guess is left

// Photons of the sun's light that plants use, µmol per J of global radiation: 0.45 of it is 400 to
// 700 nm, at 4.57 µmol/J. Common values of the trade, from memory.
const PHOTONS = 0.45 * 4.57;

/** One hour inside a house: °C, %RH, and mol/m² of light that came in during it. */
export type HouseHour = {
  readonly temperature: number;
  readonly humidity: number;
  readonly light: number;
};
export type HouseYear = {
  /** Start of the first hour, ms since 1970. */
  readonly from: number;
  readonly houses: Readonly<Record<string, readonly HouseHour[]>>;
};

/** Every hour in each tunnel from `from` to `to` (ms since 1970). */
export function houseYear({ plan, seed }: Scenario, from: number, to: number): HouseYear {
  const airMass = createAirMass(seed, plan.weather);
  const local = createLocalTime(plan.zone);
  const first = Math.floor(from / HOUR) * HOUR;
  let t = first - SETTLE;
  let weather = firstWeather(t, airMass(t));
  const houses = Object.entries(plan.tunnels).map(([name, { kind, habit, vents }]) => ({
    ...{ name, kind, hours: [] as HouseHour[] },
    vents: createVents(seed, name, habit, local, vents),
    now: firstTunnel(weather) as Tunnel,
    sum: { temperature: 0, humidity: 0, light: 0, steps: 0 },
  }));
  while (t < to) {
    weather = nextWeather(weather, airMass(t), plan.lat, plan.lon);
    t += STEP;
    for (const house of houses) {
      const open = house.vents(t, house.now.temperature);
      house.now = nextTunnel(house.now, house.kind, weather, open);
      const { sum } = house;
      sum.temperature += house.now.temperature;
      sum.humidity += house.now.humidity;
      sum.light += (weather.sun * house.kind.transmission * PHOTONS * STEP) / 1000 / 1e6;
      sum.steps++;
      if (t % HOUR !== 0) continue;
      const { temperature, humidity, light, steps } = sum;
      house.sum = { temperature: 0, humidity: 0, light: 0, steps: 0 };
      if (t <= first) continue;
      house.hours.push({ temperature: temperature / steps, humidity: humidity / steps, light });
    }
  }
  return {
    from: first,
    houses: Object.fromEntries(houses.map(({ name, hours }) => [name, hours])),
  };
}
