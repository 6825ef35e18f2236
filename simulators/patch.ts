import { dewPointOf, humidityOf } from './moistAir.ts';
import type { Weather } from './weather.ts';

/** An outdoor bed of strawberries. Figures are ours, from no source. */
export type PatchKind = {
  /** Where a flower stands between screen (0) and grass (1). */
  readonly low: number;
  /** K colder on a clear calm night, for a hollow where cold air gathers. */
  readonly hollow: number;
};

export type Patch = {
  /** °C at flower height, in the open. */
  readonly flower: number;
  readonly humidity: number;
  /** °C at flower height where the cloches stand, on or off. */
  readonly underCover: number;
  readonly underCoverHumidity: number;
  /** % by volume */
  readonly soilMoisture: number;
  readonly soil: number;
  readonly covered: boolean;
};

const STEP_HOURS = 1 / 12;
const WILTS = 12; // % by volume, sandy loam; ours
const FULL = 32; // % by volume, field capacity of sandy loam; ours
const ROOT_DEPTH = 300; // mm of soil that the probe speaks for

export function nextPatch(
  last: Patch | null,
  kind: PatchKind,
  weather: Weather,
  covered: boolean,
): Patch {
  const { temperature, grass, sun, wind, skyLoss, vapour } = weather;
  const still = 1 / (1 + wind);
  const night = Math.max(0, 1 - sun / 80); // fades with the first sun
  const flower =
    temperature + kind.low * (grass - temperature) - night * kind.hollow * (skyLoss / 90) * still;

  // A cloche keeps ground heat in at night and sun in by day; on a still clear night it gains
  // little, and its own film radiates too.
  const gain = covered ? night * (1.1 + 0.8 * still) + 0.011 * sun : 0;
  const aim = flower + gain;
  const underCover = last ? last.underCover + 0.35 * (aim - last.underCover) : aim;
  const trapped = covered ? vapour + 0.12 * (6.11 + 0.4 * Math.max(0, underCover)) : vapour;

  // Simple bucket: rain in, a share of the sun's heat out as water (2.45 MJ/kg, FAO-56), rest drains.
  const wet = last?.soilMoisture ?? 27;
  const ease = Math.min(1, Math.max(0, (wet - WILTS) / 10));
  const used = ((0.45 * sun * 300) / 2.45e6) * ease; // mm in the step
  const filled = wet + ((weather.rain - used) / ROOT_DEPTH) * 100;
  const soilMoisture = filled > FULL ? filled - 0.05 * STEP_HOURS * (filled - FULL) * 12 : filled;
  return {
    flower,
    humidity: humidityOf(vapour, flower),
    underCover,
    underCoverHumidity: humidityOf(trapped, Math.max(underCover, dewPointOf(vapour) - 0.5)),
    soilMoisture: Math.min(40, soilMoisture),
    soil: weather.soil,
    covered,
  };
}
