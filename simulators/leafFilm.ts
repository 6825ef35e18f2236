import { saturationDensity } from './moistAir.ts';

// Water that stands on leaves, by what condenses on them and dries off: leaves colder than the dew
// point gather it, others give it off.

const MINUTE = 60; // s
/** m/s, vapour between leaf and air that hardly moves, and added by open vents. Ours: half of what
 *  a single leaf has, because leaves in trays stand close. */
const EXCHANGE = 0.003;
const EXCHANGE_OPEN = 0.003;
/** Share of what the air lacks that the air between leaves in trays does not: they give off water
 *  themselves, and vents stir it. Ours. */
const AMONG = 0.6;
const AMONG_OPEN = 0.3;
const MOST = 150; // g/m²: more drips off. Ours
/** K that leaves are below the air for each W/m² lost to the sky, through film; above it for each
 *  W/m² of sun that comes in. Ours. */
const SKY = 0.011;
const SUN = 0.006;
const COOLED = 0.7; // share of a wet leaf's warming that is lost to drying; ours

export type FilmAir = {
  readonly temperature: number;
  /** kg/m³ */
  readonly vapour: number;
  /** W/m² that comes in. */
  readonly sun: number;
  /** W/m² */
  readonly skyLoss: number;
  /** Share of the vents open. */
  readonly open: number;
};

/** °C of leaves under this air. */
export const leafTemperature = ({ temperature, sun, skyLoss }: FilmAir, film: number): number =>
  temperature - SKY * skyLoss + SUN * sun * (film > 0 ? 1 - COOLED : 1);

/** g/m² of water on the leaves, `minutes` on. */
export function nextFilm(film: number, air: FilmAir, minutes: number): number {
  const exchange = EXCHANGE + EXCHANGE_OPEN * air.open;
  const full = saturationDensity(air.temperature);
  const among = AMONG + (AMONG_OPEN - AMONG) * air.open;
  const vapour = air.vapour + among * Math.max(0, full - air.vapour);
  const lack = saturationDensity(leafTemperature(air, film)) - vapour; // kg/m³
  const after = film - 1000 * exchange * lack * MINUTE * minutes;
  return Math.min(MOST, Math.max(0, after));
}
