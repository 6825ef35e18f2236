import { expectRange } from '../expectRange.ts';
import { type FrostHistory, frostHistory } from '../frost/index.ts';
import { studentCdf } from '../statistics/index.ts';
import { bestStop, type FruitPatch, ripeDay, rotChance } from './bestStop.ts';

const WEEK = 7; // days between cohorts
const AHEAD = 70; // days looked ahead; ours
const NEAR = 7; // days before the frost that count as near; ours
const RIPENING = 0.25; // of the way from flower to ripe, in which fruit rots; ours
const DATE_WINDOW = 3; // days either side for the mean units of a date; ours

/** One past autumn as it was. Index 0 of `units` is the season's first day. */
export type PastAutumn = {
  readonly season: number;
  /** Season day of the first killing frost; null for none. */
  readonly frost: number | null;
  /** Heat units of each season day; null where not known. */
  readonly units: readonly (number | null)[];
};

/** A patch as it is tried on every autumn: `mass` kg come into flower each week. */
export type TriedPatch = Pick<
  FruitPatch,
  'rotWet' | 'rotDry' | 'wetChance' | 'margin' | 'perPicking' | 'perDay'
> & {
  readonly mass: number;
  /** Heat units from flower to ripe. */
  readonly flowerUnits: number;
  /** Season days between which it is tried. */
  readonly from: number;
  readonly to: number;
};

export type TriedAutumn = {
  readonly season: number;
  /** Season day on which it said to stop, or the frost came first. */
  readonly stop: number;
  readonly frost: number | null;
  readonly outcome: 'near' | 'early' | 'late' | 'no-frost';
  readonly money: number;
  /** The same for stopping on the mean date of the other years' frosts. */
  readonly average: { readonly outcome: TriedAutumn['outcome']; readonly money: number };
  readonly averageDay: number;
  /** What somebody would have made who knew the frost's date. */
  readonly foresight: number;
};

/**
 * The stopping rule tried on past autumns, one at each turn of the generator, each judged by the
 * other years alone: on every day the expected units and the chances of frost of the other years go
 * into bestStop, and the first day on which no further picking is worth its cost is the stop. A
 * frost that comes first ends the season ("late"); a stop up to seven days before it is near; one
 * sooner is early. Beside it the plain rule: stop on the mean date of the other years' frosts.
 *
 * Source: leave-one-out; the made-up patch, with one cohort flowering a week, is ours.
 * @throws RangeError as bestStop, or for fewer than nine autumns
 */
export function* stopBacktest(
  autumns: readonly PastAutumn[],
  patch: TriedPatch,
): Generator<TriedAutumn> {
  expectRange('number of autumns', autumns.length, 9, 1000, '');
  expectRange('units from flower to ripe', patch.flowerUnits, 1, 10_000, '°C d');
  expectRange('last season day', patch.to, patch.from, 366, '');
  for (const autumn of autumns) {
    const others = autumns.filter(({ season }) => season !== autumn.season);
    const dates = others.flatMap(({ frost }) => (frost === null ? [] : [frost]));
    if (dates.length === 0) continue;
    const history = frostHistory(
      others.map(({ season, frost }) => ({
        season,
        day: frost,
        frost: frost !== null,
        missing: 0,
      })),
    );
    const mean = meanUnits(others, patch.to + AHEAD);
    const left = survival(history, patch.to + AHEAD + 1);
    const season = playOut(autumn, patch, mean);
    const stop = season.stopBy((day, cohorts) => {
      const units = mean.slice(day + 1, day + 1 + AHEAD);
      const killed = units.map((_, at) => {
        const before = left[day + at] ?? 0;
        return before <= 0 ? 1 : Math.max(0, 1 - (left[day + at + 1] ?? 0) / before);
      });
      const waiting = cohorts.map((each) => ({
        ...each,
        rotsFrom: ripeDay(units, each.units - RIPENING * patch.flowerUnits) ?? AHEAD,
      }));
      return bestStop({ ...patch, cohorts: waiting, units, killed }).value <= 0;
    });
    const averageDay = Math.round(dates.reduce((sum, day) => sum + day, 0) / dates.length);
    const average = season.stopBy((day) => day >= averageDay);
    yield {
      ...{ season: autumn.season, stop: stop.day, frost: autumn.frost },
      ...{ outcome: outcomeOf(stop, autumn.frost, patch.to), money: stop.money, averageDay },
      average: { outcome: outcomeOf(average, autumn.frost, patch.to), money: average.money },
      foresight: season.best(),
    };
  }
}

type Stopped = { readonly day: number; readonly money: number; readonly frozen: boolean };

function outcomeOf(
  { day, frozen }: Stopped,
  frost: number | null,
  last: number,
): TriedAutumn['outcome'] {
  if (frozen) return 'late';
  if (frost === null || day >= last) return 'no-frost'; // none before the trial ended
  return frost - day <= NEAR ? 'near' : 'early';
}

/** One autumn as it went: what each way of stopping would have made of it. */
function playOut(autumn: PastAutumn, patch: TriedPatch, mean: readonly number[]) {
  const { from, to, flowerUnits, mass, margin, perPicking, perDay } = patch;
  const sound = 1 - rotChance(patch);
  const at = (day: number) => autumn.units[day] ?? mean[day] ?? 0;
  // Weeks that flowered before the first day, as far back as fruit of theirs may still hang.
  const flowered: number[] = [];
  for (let day = from - 20 * WEEK; day <= to; day += WEEK) flowered.push(day);
  const hang = flowered.map((day) => {
    let sum = 0;
    for (let each = Math.max(0, day + 1); each < from; each += 1) sum += at(each);
    return { day, sum: day < 0 ? sum - day * (mean[0] ?? 0) : sum, mass };
  });

  const walk = (until: (day: number, cohorts: { mass: number; units: number }[]) => boolean) => {
    let money = 0;
    let most = 0;
    let cohorts = hang.filter(({ sum }) => sum < flowerUnits).map((each) => ({ ...each }));
    for (let day = from; day <= to; day += 1) {
      if (autumn.frost !== null && day >= autumn.frost)
        return { stopped: { day: autumn.frost, money, frozen: true }, most };
      const open = cohorts.filter((each) => each.day <= day);
      for (const each of open) {
        if (day > from && each.day < day) {
          each.sum += at(day);
          if (each.sum >= (1 - RIPENING) * flowerUnits) each.mass *= sound;
        }
        if (each.sum >= flowerUnits) money += each.mass * margin - perPicking;
      }
      cohorts = cohorts.filter(({ sum }) => sum < flowerUnits);
      most = Math.max(most, money);
      const waiting = cohorts
        .filter((each) => each.day <= day)
        .map((each) => ({ mass: each.mass, units: flowerUnits - each.sum }));
      if (until(day, waiting)) return { stopped: { day, money, frozen: false }, most };
      money -= perDay;
    }
    return { stopped: { day: to, money, frozen: false }, most };
  };
  return {
    stopBy: (
      until: (day: number, cohorts: { mass: number; units: number }[]) => boolean,
    ): Stopped => walk(until).stopped,
    best: () => walk(() => false).most,
  };
}

function meanUnits(others: readonly PastAutumn[], last: number): number[] {
  return Array.from({ length: last + 1 }, (_, day) => {
    let sum = 0;
    let count = 0;
    for (const { units } of others) {
      for (let near = day - DATE_WINDOW; near <= day + DATE_WINDOW; near += 1) {
        const each = units[near] ?? null;
        if (each === null) continue;
        sum += each;
        count += 1;
      }
    }
    return count === 0 ? 0 : sum / count;
  });
}

/** Chance of no frost by each season day, not held away from nought: ratios of it are wanted. */
function survival({ curve, dates, known, share }: FrostHistory, last: number): number[] {
  return Array.from({ length: last + 1 }, (_, day) => {
    if (curve !== null)
      return 1 - share + share * studentCdf((curve.mean - day) / curve.sd, curve.df);
    return 1 - (dates.filter((date) => date <= day).length + 0.5) / (known + 1);
  });
}
