import type { NightForecast, PlaceNow, SpotNow } from '../../rules/decide/index.ts';
import { coverGain } from '../../rules/frost/index.ts';
import { sunTimes } from '../../rules/heat/index.ts';
import { studentQuantile } from '../../rules/statistics/index.ts';
import { instant } from '../../rules/units.ts';
import type { FrostCurve, FrostTonight } from '../contract/index.ts';
import { longestGap, nightBounds } from '../snapshot/index.ts';
import { coverWords, curveWords } from '../words/index.ts';
import { newest } from './newest.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf } from './present.ts';

const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
/** The picture begins this long before sunset: the afternoon is what the first forecast rests on. Ours. */
const BEFORE_SUNSET = 5 * HOUR;
const STEP = 10 * MINUTE; // one point in this time is enough for the eye; ours

const rounded = (value: number, digits = 2) => Number(value.toFixed(digits));

/** Readings since `from`, a null in every gap. */
function measured(spot: SpotNow, from: number) {
  const column = spot.columns.temperature ?? { t: [], value: [] };
  const gap = Math.max(STEP, longestGap(spot.every * MINUTE) * MINUTE);
  const t: number[] = [];
  const temperature: (number | null)[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const [i, at] of column.t.entries()) {
    if (at < from || (at - last < STEP && i < column.t.length - 1)) continue;
    if (at - last > gap && t.length > 0) {
      t.push((at + last) / 2);
      temperature.push(null);
    }
    last = at;
    t.push(at);
    temperature.push(column.value[i] ?? null);
  }
  return { t, temperature };
}

/** The limits of what grows there; where nothing is told, the freezing point. */
function limitsOf({ limits, pBelow, crossesAt }: NightForecast): FrostCurve['limits'] {
  if (limits.length > 0) return limits.map((limit) => ({ ...limit, p: rounded(limit.p, 4) }));
  return [{ what: 'freezing', at: pBelow.at, p: rounded(pBelow.p, 4), crossesAt }];
}

function curveOf(parts: ApiParts, place: PlaceNow, night: NightForecast, from: number) {
  // Of two probes at one spot the forecast is the colder one's; so is the line.
  const here = place.spots.filter(({ spot }) => spot === night.spot);
  const lowest = (spot: SpotNow) => spot.columns.temperature?.value.at(-1) ?? 99;
  const spot = here.reduce<SpotNow | undefined>(
    (cold, one) => (cold === undefined || lowest(one) < lowest(cold) ? one : cold),
    undefined,
  );
  const tenth = studentQuantile(0.9, night.low.df) * night.low.sd;
  const { mean, sd, df } = night.low;
  const limits = limitsOf(night);
  const between: [number, number] = [rounded(mean - tenth), rounded(mean + tenth)];
  const name = nameOf(parts, place.id);
  return {
    ...{ place: place.id, name, spot: night.spot },
    ...(spot ? measured(spot, from) : { t: [], temperature: [] }),
    fan: night.fan.map(({ t, low, middle, high }) => ({
      ...{ t, low: rounded(low), middle: rounded(middle), high: rounded(high) },
    })),
    low: { mean: rounded(mean), sd: rounded(sd), df },
    ...{ between, limits, nightsLearned: night.nightsLearned },
    words: curveWords({
      ...{ name, spot: night.spot, mean, between, limits, nights: night.nightsLearned },
      zone: parts.calendar().zone,
    }),
  };
}

/** Tonight at every spot on one axis, and what is covered. */
export function frostTonightOf(parts: ApiParts): FrostTonight {
  const { at, snapshot, outlook } = newest(parts);
  const name = outlook.frost[0]?.night;
  const bounds = name === undefined ? null : nightBounds(parts.farm(), parts.calendar(), name);
  const { lat, lon } = snapshot.farm;
  const dusk = bounds?.sunset ?? sunTimes(instant(at), lat, lon).set ?? at;
  const from = Math.min(dusk - BEFORE_SUNSET, at - HOUR);
  const curves = outlook.frost.flatMap((night) => {
    const place = snapshot.places.find(({ id }) => id === night.place);
    return place ? [curveOf(parts, place, night, from)] : [];
  });
  const covers = snapshot.places
    .filter(({ cover, coverNights }) => cover !== null || (coverNights ?? []).length > 0)
    .map(({ id, covered, coverNights = [] }) => {
      const { planWith, median, nights } = coverGain(coverNights);
      const gain = median === null ? null : rounded(planWith);
      const told = { place: id, name: nameOf(parts, id), covered, nights, gain };
      return { ...told, words: coverWords({ ...told, median }) };
    });
  return {
    ...{ asOf: iso(at), now: parts.clock.now(), from, to: bounds?.to ?? at + 12 * HOUR },
    night: bounds && { from: bounds.sunset, to: bounds.sunrise },
    // The coldest first: that is where to look.
    curves: curves.sort((a, b) => a.low.mean - b.low.mean),
    covers,
  };
}
