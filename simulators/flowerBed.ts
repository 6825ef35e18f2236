// Strawberries of a made-up patch in their flowering weeks: what frost kills, what covers left on
// by day cost, and what heat under them does. Every figure is invented.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

export type BedKind = {
  /** kg of the season, and the middle and spread of flowering: ms since 1970, days. */
  readonly kg: number;
  readonly peak: number;
  readonly spread: number;
};

/** °C at which half of the open flowers are dead by morning, and how sharp that is, K. Ours: the
 *  published first damage of open flowers, -1.1 °C, is then a loss of a twentieth. */
const HALF_DEAD = -2.5;
const SHARP = 0.48;
const OPEN_DAYS = 9; // flowers and buds that a frost can take, in days of flowering; ours
const UNVISITED = 0.55; // share of a day's flowers that set no fruit when no bee came; ours
const DAYLIGHT = 60; // W/m²; bees fly by day. Ours
const SCORCHES = 38; // °C at which an hour takes a hundredth of the open flowers; ours
const HEAT_Z = 7; // K for tenfold; ours

export type Bed = {
  coldest: number;
  day: number;
  lit: number;
  visited: number;
  heat: number;
  /** Days' flowers, newest first: kg that they will be. */
  readonly open: number[];
  set: number;
  readonly lost: { frost: number; unvisited: number; scorch: number };
};
export const newBed = (): Bed => ({
  ...{ coldest: 99, day: -1, lit: 0, visited: 0, heat: 0, open: [], set: 0 },
  lost: { frost: 0, unvisited: 0, scorch: 0 },
});

/** kg that flower on the day of `t`. */
export const flowersOf = ({ kg, peak, spread }: BedKind, t: number) =>
  (kg / (spread * Math.sqrt(2 * Math.PI))) * Math.exp(-0.5 * ((t - peak) / DAY / spread) ** 2);

export type BedAir = {
  /** °C where the flowers are, under the cover where one is on. */
  readonly temperature: number;
  readonly covered: boolean;
  readonly sun: number;
};

/** On by `hours`; days are counted at noon, when the night is known. */
export function nextBed(bed: Bed, kind: BedKind, air: BedAir, t: number, hours: number): void {
  bed.coldest = Math.min(bed.coldest, air.temperature);
  if (air.sun > DAYLIGHT) {
    bed.lit += hours;
    if (!air.covered) bed.visited += hours;
  }
  bed.heat += 0.01 * hours * 10 ** ((air.temperature - SCORCHES) / HEAT_Z);
  const day = Math.floor((t + DAY / 2) / DAY);
  if (day === bed.day) return;
  const first = bed.day < 0;
  bed.day = day;
  if (!first) {
    const killed = 1 / (1 + Math.exp((bed.coldest - HALF_DEAD) / SHARP));
    const scorched = (1 - killed) * (1 - Math.exp(-bed.heat));
    for (const [i, kg] of bed.open.entries()) {
      bed.lost.frost += kg * killed;
      bed.lost.scorch += kg * scorched;
      bed.open[i] = kg * (1 - killed - scorched);
    }
    const missed = bed.lit === 0 ? 0 : UNVISITED * (1 - bed.visited / bed.lit);
    const [newest = 0] = bed.open;
    bed.lost.unvisited += newest * missed;
    bed.open[0] = newest * (1 - missed);
  }
  bed.open.unshift(flowersOf(kind, t));
  if (bed.open.length > OPEN_DAYS) bed.set += bed.open.pop() ?? 0;
  Object.assign(bed, { coldest: 99, lit: 0, visited: 0, heat: 0 });
}
