import {
  dewPointOf,
  humidityOf,
  saturationDensity,
  vapourDensity,
  vapourPressure,
} from './moistAir.ts';
import type { Weather } from './weather.ts';

// An unheated plastic tunnel per square metre of floor: one node for air, plants and frame, one for
// the ground; vapour in the air. Heat and water are stepped by the minute with every flow counted,
// so that the books can be checked. Form of the balance: Boulard & Baille 1993, "A simple
// greenhouse climate control model incorporating effects of ventilation and evaporative cooling",
// Agric. For. Meteorol. 65, 145-157, made time-stepping by storing heat and vapour.

const MINUTE = 60; // s
const AIR_HEAT = 1210; // J/(m³ K), dry air at 15 °C and sea level: 1.204 kg/m³ × 1005 J/(kg K)
const EVAPORATION = 2.466e6; // J/kg at 15 °C: Harrison 1963, 2.501 - 0.002361 t MJ/kg
// W/(m² K) between film and air inside divided by the heat held in air gives m/s of vapour
// (Lewis relation); 3 W/(m² K) is ours, for air that hardly moves.
const TO_FILM = 3 / AIR_HEAT;

export type TunnelKind = {
  /** m³ of air per m² of floor. */
  readonly height: number;
  /** m² of film per m² of floor. */
  readonly film: number;
  /** W/(m² K) of film: single polythene is about 6 to 8 (common practice, no source). */
  readonly filmU: number;
  /** Share of the sun's heat that comes in. */
  readonly transmission: number;
  /** J/(m² K) of plants, trays and frame. */
  readonly inside: number;
  /** J/(m² K) of ground (and water barrels) that follows within a day. */
  readonly ground: number;
  /** Air changes per hour: shut, and added by open vents in still air and per m/s of wind. */
  readonly leak: number;
  readonly vents: number;
  readonly ventsPerWind: number;
  /** m/s: how readily plants and floor give off water in the dark, and added in full sun. */
  readonly damp: number;
  readonly dampSun: number;
};

/** kg/m² and J/m² that moved in one step; into the tunnel is positive. */
export type TunnelFlows = {
  readonly transpired: number;
  readonly vented: number;
  readonly onFilm: number;
  readonly onLeaves: number;
  readonly sunHeat: number;
  readonly filmHeat: number;
  readonly ventHeat: number;
  readonly skyHeat: number;
  readonly latentHeat: number;
  readonly deepHeat: number;
};

export type Tunnel = {
  readonly temperature: number;
  readonly ground: number;
  /** kg/m³ */
  readonly vapour: number;
  readonly humidity: number;
  readonly dewPoint: number;
  /** Share of the vents open, 0..1. */
  readonly open: number;
  /** J/m² set free on leaves by the last condensation, on its way into the air. */
  readonly onItsWay: number;
  readonly flows: TunnelFlows;
};

const GROUND_LINK = 7; // W/(m² K) between air and ground surface; ours
const DEEP_LINK = 1.2; // W/(m² K) from the ground node to soil below it; ours
const nothing: TunnelFlows = {
  ...{ transpired: 0, vented: 0, onFilm: 0, onLeaves: 0, sunHeat: 0 },
  ...{ filmHeat: 0, ventHeat: 0, skyHeat: 0, latentHeat: 0, deepHeat: 0 },
};

export function firstTunnel({ temperature, vapour, humidity, dewPoint, soil }: Weather): Tunnel {
  const air = { temperature, vapour: vapourDensity(vapour, temperature), humidity, dewPoint };
  return { ...air, ground: soil, open: 0, onItsWay: 0, flows: nothing };
}

/** J/(m² K) held by the air node. */
export const airNodeHeat = (kind: TunnelKind) => kind.inside + kind.height * AIR_HEAT;

/** `minutes` on under the weather outside, with `open` of the vents open. */
export function nextTunnel(
  last: Tunnel,
  kind: TunnelKind,
  weather: Weather,
  open: number,
  minutes = 5,
): Tunnel {
  const outside = vapourDensity(weather.vapour, weather.temperature);
  const changes = kind.leak + open * (kind.vents + kind.ventsPerWind * weather.wind);
  const air = (kind.height * changes) / 3600; // m³/s per m²
  const filmLink = kind.film * kind.filmU;
  const ventLink = air * AIR_HEAT;
  const airHeat = airNodeHeat(kind);
  const sun = kind.transmission * weather.sun;
  const give = kind.damp + (kind.dampSun * sun) / 500;
  const filmTake = kind.film * TO_FILM;
  // Polythene lets much of the heat radiation through; the shares are ours.
  const skyAir = -0.22 * weather.skyLoss;
  const skyGround = -0.12 * weather.skyLoss;

  let { temperature, ground, vapour, onItsWay } = last;
  const sum = { ...nothing } as { -readonly [Key in keyof TunnelFlows]: number };
  let latent = 0;
  for (let minute = 0; minute < minutes; minute++) {
    // Vapour first, implicit, at the temperature of the minute before.
    const atLeaves = saturationDensity(temperature);
    const filmTemperature = (temperature + weather.temperature) / 2 - 0.015 * weather.skyLoss;
    const atFilm = saturationDensity(filmTemperature);
    const step = MINUTE / kind.height;
    const solve = (film: number) =>
      (vapour + step * (give * atLeaves + air * outside + film * atFilm)) /
      (1 + step * (give + air + film));
    let after = solve(filmTake);
    const condenses = after > atFilm; // a dry film gives nothing back
    if (!condenses) after = solve(0);
    const transpired = MINUTE * give * (atLeaves - after);
    const vented = MINUTE * air * (outside - after);
    const onFilm = condenses ? MINUTE * filmTake * (atFilm - after) : 0;
    vapour = after;
    // Half of what the film sets free goes back to the air inside, half out through it.
    latent = -EVAPORATION * transpired - 0.5 * EVAPORATION * onFilm + onItsWay;

    // Heat, implicit in both nodes: two equations, two unknowns.
    const a = airHeat / MINUTE + filmLink + ventLink + GROUND_LINK;
    const b = kind.ground / MINUTE + GROUND_LINK + DEEP_LINK;
    const toAir =
      (airHeat / MINUTE) * temperature +
      (filmLink + ventLink) * weather.temperature +
      0.45 * sun +
      skyAir +
      latent / MINUTE;
    const toGround =
      (kind.ground / MINUTE) * ground + DEEP_LINK * weather.soil + 0.55 * sun + skyGround;
    const determinant = a * b - GROUND_LINK * GROUND_LINK;
    temperature = (toAir * b + GROUND_LINK * toGround) / determinant;
    ground = (toGround * a + GROUND_LINK * toAir) / determinant;

    const excess = Math.max(0, vapour - saturationDensity(temperature));
    vapour -= excess;
    const onLeaves = -excess * kind.height;
    onItsWay = EVAPORATION * excess * kind.height;

    sum.transpired += transpired;
    sum.vented += vented;
    sum.onFilm += onFilm;
    sum.onLeaves += onLeaves;
    sum.sunHeat += MINUTE * sun;
    sum.filmHeat += MINUTE * filmLink * (weather.temperature - temperature);
    sum.ventHeat += MINUTE * ventLink * (weather.temperature - temperature);
    sum.skyHeat += MINUTE * (skyAir + skyGround);
    sum.latentHeat += latent;
    sum.deepHeat += MINUTE * DEEP_LINK * (weather.soil - ground);
  }
  const pressure = vapourPressure(vapour, temperature);
  return {
    temperature,
    ground,
    vapour,
    humidity: humidityOf(pressure, temperature),
    dewPoint: dewPointOf(pressure),
    open,
    onItsWay,
    flows: sum,
  };
}
