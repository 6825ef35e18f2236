// Spencer 1971, "Fourier series representation of the position of the sun", Search 2 (5), 172:
// declination and equation of time. One year stands for all, so the sun's place is up to a day old:
// below 0.5° in height, plenty for warming a tunnel.

const DAY = 86_400_000;

function yearAngle(t: number): number {
  const begins = Date.UTC(new Date(t).getUTCFullYear(), 0, 1);
  return (2 * Math.PI * (t - begins)) / (365 * DAY);
}

/** Radians north. */
export function declination(t: number): number {
  const g = yearAngle(t);
  return (
    0.006918 -
    0.399912 * Math.cos(g) +
    0.070257 * Math.sin(g) -
    0.006758 * Math.cos(2 * g) +
    0.000907 * Math.sin(2 * g) -
    0.002697 * Math.cos(3 * g) +
    0.00148 * Math.sin(3 * g)
  );
}

/** Minutes a sundial is ahead of a clock. */
export function equationOfTime(t: number): number {
  const g = yearAngle(t);
  return (
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(g) -
      0.032077 * Math.sin(g) -
      0.014615 * Math.cos(2 * g) -
      0.040849 * Math.sin(2 * g))
  );
}

/** Sine of the sun's height over the horizon at `lat`, `lon` degrees (east positive); no refraction. */
export function sunHeight(t: number, lat: number, lon: number): number {
  const minutes = (t % DAY) / 60_000 + 4 * lon + equationOfTime(t);
  const hourAngle = ((minutes / 4 - 180) * Math.PI) / 180;
  const latitude = (lat * Math.PI) / 180;
  const tilt = declination(t);
  return (
    Math.sin(latitude) * Math.sin(tilt) + Math.cos(latitude) * Math.cos(tilt) * Math.cos(hourAngle)
  );
}

/**
 * W/m² on level ground.
 * Clear sky: Haurwitz 1945, J. Meteor. 2, 154-166: 1098 sin h exp(-0.057 / sin h).
 * Cloud, 0..1: Kasten & Czeplak 1980, Solar Energy 24, 177-189: 1 - 0.75 N^3.4.
 */
export function globalRadiation(height: number, cloud: number): number {
  if (height <= 0) return 0;
  return 1098 * height * Math.exp(-0.057 / height) * (1 - 0.75 * cloud ** 3.4);
}

const STEFAN_BOLTZMANN = 5.670374e-8; // W/(m² K⁴), CODATA 2018

/**
 * W/m² that ground at air temperature loses to the sky.
 * Clear sky: Brutsaert 1975, Water Resour. Res. 11, 742-744: emissivity 1.24 (e/T)^(1/7), e in hPa.
 * Cloud, 0..1: Unsworth & Monteith 1975, Q. J. R. Meteorol. Soc. 101, 13-24: the 0.84 form.
 */
export function skyLoss(temperature: number, vapour: number, cloud: number): number {
  const kelvin = temperature + 273.15;
  const clear = 1.24 * (vapour / kelvin) ** (1 / 7);
  const sky = (1 - 0.84 * cloud) * clear + 0.84 * cloud;
  return STEFAN_BOLTZMANN * kelvin ** 4 * (1 - Math.min(1, sky));
}
