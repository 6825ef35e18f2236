import type { CropKeeping } from './keepingLife.ts';

type Span = { readonly from: number; readonly to: number };

/** How a crop likes to be stored. A starting point: editable for each variety. */
export type StoredCrop = {
  readonly crop: string;
  /** Best temperature, °C. */
  readonly best: Span;
  /** Best relative humidity, %; null where no source gives one. */
  readonly humidity: Span | null;
  /** Days it keeps at `lifeAt` °C; null where sources do not agree or do not say. */
  readonly life: Span | null;
  readonly lifeAt: number | null;
  readonly freezesAt: CropKeeping['freezesAt'];
  readonly chillMin: CropKeeping['chillMin'];
  readonly source: string;
};

const GUIDE = 'New England vegetable guide, table 16';

function row(
  crop: string,
  best: readonly [number, number],
  humidity: readonly [number, number] | null,
  life: readonly [from: number, to: number, at: number] | null,
  source: string,
  limits: Partial<Pick<StoredCrop, 'freezesAt' | 'chillMin'>> = {},
): StoredCrop {
  return {
    crop,
    best: { from: best[0], to: best[1] },
    humidity: humidity === null ? null : { from: humidity[0], to: humidity[1] },
    life: life === null ? null : { from: life[0], to: life[1] },
    lifeAt: life === null ? null : life[2],
    freezesAt: null,
    chillMin: null,
    ...limits,
    source,
  };
}

const LETTUCE = 'USDA Handbook 66; New England vegetable guide, table 16; UC Davis';
const STRAWBERRY = 'Mitcham in USDA Handbook 66; Cornell report; start cooling within 1 h';
// 1 day at 0 °C, 3 at 5 °C; some injury at 7.5 to 10 °C. One guide says 8 to 10 °C for 4 to 7 days.
const BASIL = 'Lange & Cameron 1994, HortScience 29:102; never in a room near 3 °C';
const EGGPLANT = 'Cantwell & Suslow, UC Davis; injury in 6 to 8 days at 5 °C';
const SHOOTS = 'Johnson, University of Delaware, says 2 days; growers count 5 to 10 (no source)';
const RADISH = 'Xiao et al. 2014, LWT: 1 °C best of those tested, no chilling seen';
const BUCKWHEAT = 'Kou et al. 2012 and 2013; species differ';
const MIX = 'common practice, no source; cut leaf may fall under food-safety rules';

export const storageTable: readonly StoredCrop[] = [
  row('lettuce-leaf', [0, 0], [95, 100], [7, 7, 0], LETTUCE, { freezesAt: -0.2 }),
  row('lettuce-head', [0, 0], [95, 100], [21, 28, 0], LETTUCE, { freezesAt: -0.2 }),
  row('strawberry', [0, 0], [90, 95], [7, 10, 0], STRAWBERRY),
  row('basil', [12, 15], [90, 95], [12, 12, 15], BASIL, { chillMin: 12 }),
  row('eggplant', [10, 12], [90, 95], [14, 14, 10], EGGPLANT, { chillMin: 10 }),
  row('pea-shoots', [0, 1], [98, 100], [2, 2, 0], SHOOTS),
  row('radish-microgreens', [1, 1], null, null, RADISH),
  row('buckwheat-microgreens', [5, 10], null, null, BUCKWHEAT),
  row('salad-mix', [0, 3], [95, 100], [7, 14, 0], MIX),
  row('cucumber', [10, 10], null, [7, 14, 10], GUIDE, { chillMin: 10 }),
  row('pepper', [7, 10], null, [14, 21, 7], GUIDE, { chillMin: 7 }),
  row('snap-bean', [4, 7], null, [7, 10, 4], GUIDE, { chillMin: 4 }),
];

/** The row of a crop; null for one that no source speaks of: test it with one tray in, one out. */
export const storageOf = (crop: string): StoredCrop | null =>
  storageTable.find((each) => each.crop === crop) ?? null;

/** Respiration, mg CO2 / (kg h), at temperatures, °C. */
export const respirationRates: Readonly<
  Record<string, readonly { readonly temperature: number; readonly rate: number }[]>
> = {
  // USDA Handbook 66, leaf lettuce (from memory).
  'lettuce-leaf': [
    { temperature: 0, rate: 23 },
    { temperature: 5, rate: 30 },
    { temperature: 10, rate: 39 },
    { temperature: 15, rate: 63 },
    { temperature: 20, rate: 101 },
  ],
  // Middle of 12 to 20, 50 to 100 and 100 to 200: Mitcham in USDA Handbook 66.
  strawberry: [
    { temperature: 0, rate: 16 },
    { temperature: 10, rate: 75 },
    { temperature: 20, rate: 150 },
  ],
};
