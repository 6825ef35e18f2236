import { pooledLoss } from '../../rules/losses/index.ts';
import { type BatchEarnings, batchesToTell, worthItsHours } from '../../rules/money/index.ts';
import { type RatioInterval, ratioInterval } from '../../rules/statistics/index.ts';
import type { WorthGroup } from '../contract/index.ts';
import { sum, type Unit } from './unit.ts';

/** Ours, as in worthItsHours: two in ten wrong is what a season's plan can bear. */
export const CONFIDENCE = 0.8;

/** Batches that were one when they were sown, taken together: parts prove nothing apart. */
type Money = {
  readonly trays: number;
  readonly trayDays: number;
  /** null where the work of any part is not known. */
  readonly minutes: number | null;
  readonly kg: number;
  readonly lost: number;
  readonly price: number;
  readonly seed: number;
  readonly other: number;
  readonly earned: number;
};
type Grouping = WorthGroup['by'];
export type Grouped = Omit<WorthGroup, 'name' | 'words'>;

const groupings: Readonly<Record<Grouping, readonly ('crop' | 'place' | 'season')[]>> = {
  crop: ['crop'],
  place: ['place'],
  season: ['season'],
  'crop-place': ['crop', 'place'],
  'crop-season': ['crop', 'season'],
};

/** Every grouping of batches and of pickings, apart from one another. The order of `units` is no matter. */
export function worthGroups(units: readonly Unit[], wage: number): Grouped[] {
  const inOrder = [...units].sort((a, b) => (a.id < b.id ? -1 : 1));
  return Object.entries(groupings).flatMap(([by, fields]) => {
    const groups = new Map<string, Unit[]>();
    for (const unit of inOrder) {
      const key = [unit.of, ...fields.map((field) => unit[field])].join('\n');
      groups.set(key, [...(groups.get(key) ?? []), unit]);
    }
    return [...groups].map(([, members]) => {
      const [first] = members as [Unit];
      const told = (field: 'crop' | 'place' | 'season') => fields.includes(field);
      return {
        by: by as Grouping,
        of: first.of,
        crop: told('crop') ? first.crop : null,
        place: told('place') ? first.place : null,
        season: told('season') ? first.season : null,
        ...groupFacts(members, wage),
      };
    });
  });
}

function groupFacts(members: readonly Unit[], wage: number) {
  const families = familiesOf(members);
  const money = families.map(moneyOf);
  const known = money.filter((one) => one !== null);
  const hours = known.map((one) => (one.minutes === null ? null : earningsOf(one)));
  const leftOut = Array<null>(money.length - known.length).fill(null);
  const worth = worthItsHours([...hours, ...leftOut], wage, CONFIDENCE);
  const counted = known.filter(({ minutes }) => minutes !== null);
  const over = (got: (one: Money) => number, took: (one: Money) => number, of = known) =>
    ratioInterval(
      of.map((one) => ({ got: got(one), took: took(one) })),
      CONFIDENCE,
    );
  const sold = ({ kg, lost }: Money) => kg - lost;
  const all = (of: (one: Money) => number) => sum(counted.map(of));
  const losses = pooledLoss(
    members.map(({ figures, lost }) => ({ harvested: figures.kg?.value ?? null, lost })),
  );
  return {
    units: families.length,
    counted: worth.counted,
    leftOut: worth.leftOut,
    sums: {
      trays: all(({ trays }) => trays),
      trayDays: all(({ trayDays }) => trayDays),
      minutes: all(({ minutes }) => minutes ?? 0),
      kg: all(({ kg }) => kg),
      lost: all(({ lost }) => lost),
      sold: all(sold),
      revenue: all((one) => sold(one) * one.price),
      seed: all(({ seed }) => seed),
      other: all(({ other }) => other),
      earned: all(({ earned }) => earned),
    },
    perHour: worth.perHour,
    perTray: over(
      ({ earned }) => earned,
      ({ trays }) => trays,
    ),
    perTrayDay: over(
      ({ earned }) => earned,
      ({ trayDays }) => trayDays,
    ),
    perTrayKg: trayYield(members),
    breakEven: over(
      ({ seed, other, minutes }) => seed + other + ((minutes ?? 0) / 60) * wage,
      sold,
      counted,
    ),
    lossShare: losses.perThousand === null ? null : losses.perThousand / 1000,
    verdict: worth.verdict,
    moreNeeded: worth.verdict === 'cannot-tell' ? batchesToTell(worth.perHour, wage) : 0,
  };
}

function familiesOf(members: readonly Unit[]): Unit[][] {
  const families = new Map<string, Unit[]>();
  for (const unit of members) families.set(unit.root, [...(families.get(unit.root) ?? []), unit]);
  return [...families.values()];
}

/** null where the money of any part is not known: a part for the whole would be a guess. */
function moneyOf(family: readonly Unit[]): Money | null {
  if (family.some(({ earnings }) => earnings === null)) return null;
  const value = (of: (unit: Unit) => number | null | undefined) =>
    sum(family.map((unit) => of(unit) ?? 0));
  const kg = value(({ figures }) => figures.kg?.value);
  const lost = value((unit) => unit.lost);
  const revenue = value((unit) => soldKg(unit) * (unit.figures.price?.value ?? 0));
  return {
    trays: value(({ figures }) => figures.trays?.value),
    trayDays: value(({ earnings }) => earnings?.trayDays),
    minutes: family.some(({ minutes }) => minutes === null) ? null : value((one) => one.minutes),
    ...{ kg, lost, price: kg === lost ? 0 : revenue / (kg - lost) },
    seed: value(({ figures }) => figures.seed?.value),
    other: value(({ figures }) => figures.other?.value),
    earned: value(({ earnings }) => earnings?.earned),
  };
}
const soldKg = ({ figures, lost }: Unit) => (figures.kg?.value ?? 0) - (lost ?? 0);

function earningsOf({ trays, trayDays, minutes, earned }: Money): BatchEarnings {
  const hours = (minutes ?? 0) / 60;
  const per = (amount: number) => (amount === 0 ? null : earned / amount);
  return {
    ...{ earned, trayDays, hours },
    ...{ perTray: per(trays), perTrayDay: per(trayDays), perHour: per(hours) },
  };
}

/** kg cut of each tray: weights are always known, so nothing is left out. */
const trayYield = (members: readonly Unit[]): RatioInterval | null =>
  ratioInterval(
    familiesOf(members).map((family) => ({
      got: sum(family.map(({ figures }) => figures.kg?.value ?? 0)),
      took: sum(family.map(({ figures }) => figures.trays?.value ?? 0)),
    })),
    CONFIDENCE,
  );
