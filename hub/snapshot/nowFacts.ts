import { absoluteHumidity, dewPoint } from '../../rules/air/index.ts';
import type { PlaceNow, Snapshot, SpotNow } from '../../rules/decide/index.ts';
import { celsius, hours, instant, percent } from '../../rules/units.ts';
import { leavesWet } from '../../rules/wetness/index.ts';
import { longestGap } from './days.ts';
import { SPOT_ORDER } from './spots.ts';

const MINUTE = 60_000;
/** Drier breaks than this end a wet spell. Between the 3 and 12 h in use; ours. */
export const SPELL_GAP = hours(4);
/** Below this a humidity probe says nothing of dew (methods of the air rules). */
const DRIEST = 5; // %

export type SpotFacts = {
  readonly spot: SpotNow['spot'];
  readonly probe: string;
  readonly temperature: number | null;
  readonly humidity: number | null;
  readonly dewPoint: number | null;
  readonly absoluteHumidity: number | null;
  readonly readAt: number | null;
  readonly stale: boolean;
};
export type PlaceFacts = Omit<SpotFacts, 'spot' | 'probe'> & {
  readonly wet: boolean | null;
  readonly wetSince: number | null;
  readonly spots: readonly SpotFacts[];
};

const round = (value: number, digits: number) => Number(value.toFixed(digits));

function spotFacts(spot: SpotNow, now: number): SpotFacts {
  const temperature = spot.columns.temperature;
  const humidity = spot.columns.humidity;
  const readAt = Math.max(temperature?.t.at(-1) ?? 0, humidity?.t.at(-1) ?? 0) || null;
  const t = temperature?.value.at(-1) ?? null;
  const rh = humidity?.value.at(-1) ?? null;
  const together =
    t !== null &&
    rh !== null &&
    rh >= DRIEST &&
    Math.abs((temperature?.t.at(-1) ?? 0) - (humidity?.t.at(-1) ?? 0)) <= spot.every * MINUTE;
  return {
    spot: spot.spot,
    probe: spot.probe,
    temperature: t,
    humidity: rh,
    dewPoint: together ? round(dewPoint(celsius(t), percent(rh)), 2) : null,
    absoluteHumidity: together ? round(absoluteHumidity(celsius(t), percent(rh)), 2) : null,
    readAt,
    stale: readAt === null || now - readAt > longestGap(spot.every * MINUTE) * MINUTE,
  };
}

/** The spot that speaks for the place: nearest to the crop among those with a temperature. */
export function speaker(place: PlaceNow): SpotNow | undefined {
  for (const name of SPOT_ORDER) {
    const found = place.spots.find(({ spot, columns }) => spot === name && columns.temperature);
    if (found) return found;
  }
  return place.spots[0];
}

/** What a screen shows of a place now. Old readings are said to be old, never left out. */
export function placeFacts(snapshot: Snapshot, place: PlaceNow): PlaceFacts {
  const spots = place.spots.map((spot) => spotFacts(spot, snapshot.now));
  const main = speaker(place);
  const facts = main && spots.find(({ spot, probe }) => spot === main.spot && probe === main.probe);
  const leaves =
    main && main.air.length > 0 && place.kind !== 'cool-room'
      ? leavesWet(
          main.air,
          {
            ...place.wet,
            mergeGapHours: SPELL_GAP,
            maxGapMinutes: longestGap(main.every * MINUTE),
          },
          instant(snapshot.now),
        )
      : null;
  const nothing = {
    temperature: null,
    humidity: null,
    dewPoint: null,
    absoluteHumidity: null,
    readAt: null,
    stale: true,
  };
  const {
    temperature,
    humidity,
    dewPoint: dew,
    absoluteHumidity: vapour,
    readAt,
    stale,
  } = facts ?? nothing;
  return {
    temperature,
    humidity,
    dewPoint: dew,
    absoluteHumidity: vapour,
    readAt,
    stale,
    wet: leaves?.wet ?? null,
    wetSince: leaves?.wet ? leaves.since : null,
    spots,
  };
}
