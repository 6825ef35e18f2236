import type { AirMass } from './airMass.ts';
import { dewPointOf, humidityOf, saturationPressure } from './moistAir.ts';
import { globalRadiation, skyLoss, sunHeight } from './sun.ts';

// Ground and the air at screen height, stepped from one five minutes to the next. Sun warms, the
// sky cools, wind mixes both away towards the air mass. The rates are ours, from no source: set so
// that clear calm nights fall 6-9 K below the mean and grass another 2-4 K (the usual figure for
// grass on clear nights: common practice, no source).

export const STEP = 300_000; // ms
const STEP_HOURS = 1 / 12;

const SUN_WARMS = 0.0066; // K/h per W/m²
const SKY_COOLS = 0.0115; // K/h per W/m²
const MIX_STILL = 0.1; // 1/h, exchange with the air mass in still air
const MIX_WIND = 0.055; // 1/h per m/s
const MIX_SUN = 0.0004; // 1/h per W/m²: warm ground stirs the air
const MOISTURE_MIX = 0.2; // 1/h
const DEW_FALLS = 0.25; // 1/h, vapour lost towards grass that is below the dew point
const GRASS_LAG = 0.4; // share of the way per step: blades follow within a quarter of an hour
const SOIL_FOLLOWS = 0.02; // 1/h, ground at 10 cm

export type Weather = {
  readonly t: number;
  /** °C at screen height. */
  readonly temperature: number;
  /** °C at the blades. */
  readonly grass: number;
  /** °C at 10 cm depth. */
  readonly soil: number;
  /** hPa of vapour. */
  readonly vapour: number;
  readonly dewPoint: number;
  /** %RH */
  readonly humidity: number;
  /** m/s */
  readonly wind: number;
  readonly cloud: number;
  /** mm in this step. */
  readonly rain: number;
  /** W/m² on level ground. */
  readonly sun: number;
  /** W/m² lost to the sky. */
  readonly skyLoss: number;
};

/** Weather at a fixed beginning; a few days on, nothing of this guess is left. */
export function firstWeather(t: number, air: AirMass): Weather {
  const { temperature, dewPoint, wind, cloud } = air;
  const vapour = saturationPressure(dewPoint);
  const humidity = humidityOf(vapour, temperature);
  const loss = skyLoss(temperature, vapour, cloud);
  const none = { rain: 0, sun: 0, skyLoss: loss };
  const ground = { grass: temperature, soil: temperature };
  return { t, temperature, ...ground, vapour, dewPoint, humidity, wind, cloud, ...none };
}

/** Five minutes on. */
export function nextWeather(last: Weather, air: AirMass, lat: number, lon: number): Weather {
  const t = last.t + STEP;
  // Fog closes the sky like cloud does.
  const fog = last.humidity > 98.5 && air.wind < 2 ? 0.6 : 0;
  const cloud = Math.max(air.cloud, fog);
  const sun = globalRadiation(sunHeight(t, lat, lon), cloud);
  const loss = skyLoss(last.temperature, last.vapour, cloud);
  // Nights decouple: still air under a clear sky mixes least.
  const wind = Math.max(0.2, air.wind * (sun > 20 ? 1 : 0.55 + 0.3 * cloud));

  const mix = MIX_STILL + MIX_WIND * wind + MIX_SUN * sun;
  const push = SUN_WARMS * sun - SKY_COOLS * loss + mix * air.temperature;
  // Implicit in the temperature, so no wind can make the step overshoot.
  const temperature = (last.temperature + STEP_HOURS * push) / (1 + STEP_HOURS * mix);

  const grassAim = temperature + (0.35 * sun - loss) / (20 + 9 * wind);
  const grass = last.grass + GRASS_LAG * (grassAim - last.grass);

  const moistureMix = MOISTURE_MIX * (0.5 + wind / 4);
  let vapour =
    (last.vapour + STEP_HOURS * moistureMix * saturationPressure(air.dewPoint)) /
    (1 + STEP_HOURS * moistureMix);
  const overDew = vapour - saturationPressure(grass);
  if (overDew > 0) vapour -= STEP_HOURS * DEW_FALLS * overDew;
  if (air.rain > 0) vapour += STEP_HOURS * 0.3 * (saturationPressure(temperature) - vapour);
  vapour = Math.min(vapour, saturationPressure(temperature));

  const soilAim = temperature + 0.006 * sun;
  const soil = last.soil + STEP_HOURS * SOIL_FOLLOWS * (soilAim - last.soil);
  return {
    t,
    temperature,
    grass,
    soil,
    vapour,
    dewPoint: dewPointOf(vapour),
    humidity: humidityOf(vapour, temperature),
    wind,
    cloud,
    rain: air.rain * STEP_HOURS,
    sun,
    skyLoss: loss,
  };
}
