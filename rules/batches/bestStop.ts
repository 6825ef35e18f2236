import { expectRange } from '../expectRange.ts';

/** Fruit that ripens together. */
export type Cohort = {
  /** kg */
  readonly mass: number;
  /** Heat units from now to ripe, °C d. */
  readonly units: number;
  /** Chance that each coming night kills it, where its stage bears more or less than the patch's. */
  readonly killed?: readonly number[] | undefined;
  /** Days from now before which it does not rot: green fruit seldom does. 0 when not given. */
  readonly rotsFrom?: number | undefined;
};

/** A patch that could still be picked. Money in one unit; days count from tomorrow as 1. */
export type FruitPatch = {
  /** In the order they ripen. */
  readonly cohorts: readonly Cohort[];
  /** Expected heat units of each coming day: unitsAhead. */
  readonly units: readonly number[];
  /** Chance that each coming night kills the fruit, covers considered; as many as days. */
  readonly killed: readonly number[];
  /** Chance that a fruit rots on a wet day, and on a dry one. */
  readonly rotWet: number;
  readonly rotDry: number;
  /** Chance that a day is wet. */
  readonly wetChance: number;
  /** Price of a kilogram less what picking it costs. */
  readonly margin: number;
  /** Each picking, whatever it yields. */
  readonly perPicking: number;
  /** Each day of holding on: covers, disease carried over. */
  readonly perDay: number;
};

/** What picking on to this cohort, and no further, brings. */
export type Stop = {
  /** Day of its picking; null when the days given do not ripen it. */
  readonly day: number | null;
  /** Chance that the patch survives frost, and that a fruit escapes rot, until then. */
  readonly survives: number;
  readonly sound: number;
  /** Of this cohort alone. */
  readonly worth: number;
  /** Of all up to this one, holding paid. */
  readonly value: number;
};

/** Daily chance of rot: w q_wet + (1 - w) q_dry. */
export function rotChance(patch: Pick<FruitPatch, 'rotWet' | 'rotDry' | 'wetChance'>): number {
  const { rotWet, rotDry, wetChance } = patch;
  expectRange('chance of rot on a wet day', rotWet, 0, 1, '');
  expectRange('chance of rot on a dry day', rotDry, 0, 1, '');
  expectRange('chance of a wet day', wetChance, 0, 1, '');
  return wetChance * rotWet + (1 - wetChance) * rotDry;
}

/**
 * After which picking to stop, by expected value: fruit has to survive the nights and escape rot
 * until it is ripe, a picking costs only if the patch survived, and holding on costs each day.
 * `cohort` is null, and the value 0, when stopping now is best. `stops` shows all of them, as two
 * may be nearly equal. Cohorts that do not ripen in the days given are not reckoned with.
 *
 * Source: expected value; the model is ours, from no source.
 * @throws RangeError for chances outside 0..1, negative mass, or fewer nights than days
 */
export function bestStop(patch: FruitPatch): {
  readonly cohort: number | null;
  readonly day: number | null;
  readonly value: number;
  readonly stops: readonly Stop[];
} {
  const { cohorts, units, killed, margin, perPicking, perDay } = patch;
  const rot = rotChance(patch);
  expectRange('number of nights', killed.length, units.length, Number.POSITIVE_INFINITY, '');
  for (const chance of killed) expectRange('chance of a killing night', chance, 0, 1, '');
  for (const each of units) expectRange('units of a day', each, 0, 60, '°C d');

  let sum = 0;
  const stops = cohorts.map(({ mass, units: needed, killed: own = killed, rotsFrom = 0 }): Stop => {
    expectRange('days before it rots', rotsFrom, 0, 1000, 'd');
    expectRange('number of nights', own.length, units.length, Number.POSITIVE_INFINITY, '');
    for (const chance of own) expectRange('chance of a killing night', chance, 0, 1, '');
    expectRange('mass of a cohort', mass, 0, 1e6, 'kg');
    expectRange('units to ripe', needed, 0, 10_000, '°C d');
    const day = ripeDay(units, needed);
    if (day === null) return { day, survives: 0, sound: 0, worth: 0, value: sum };
    const survives = own.slice(0, day).reduce((left, chance) => left * (1 - chance), 1);
    const sound = (1 - rot) ** Math.max(0, day - rotsFrom);
    const worth = mass * margin * survives * sound - perPicking * survives;
    sum += worth;
    return { day, survives, sound, worth, value: sum - perDay * day };
  });
  let best: { cohort: number | null; day: number | null; value: number } = {
    cohort: null,
    day: null,
    value: 0,
  };
  stops.forEach(({ day, value }, cohort) => {
    if (day !== null && value > best.value) best = { cohort, day, value };
  });
  return { ...best, stops };
}

/** First day on which the expected units are in; 0 for fruit that is ripe now; null when never. */
export function ripeDay(units: readonly number[], needed: number): number | null {
  let sum = 0;
  if (needed <= 0) return 0;
  const at = units.findIndex((each) => {
    sum += each;
    return sum >= needed - 1e-9;
  });
  return at < 0 ? null : at + 1;
}
