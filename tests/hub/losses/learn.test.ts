import { expect, test } from 'vitest';
import { addDays } from '../../../hub/losses/index.ts';
import type { Store } from '../../../hub/store/index.ts';
import { tempStore } from '../tempStore.ts';
import { learnSeason, PLACES, weekAt, wetWeeks } from './seasons.ts';

const WEEKS = 20;

/** Any comparison of a season that would be called worth a trial. */
const finds = ({ learned }: ReturnType<typeof learnSeason>, by: 'adjusted' | 'p') =>
  learned.families.some(({ comparisons }) =>
    comparisons.some((one) => {
      const value = one[by];
      return value !== null && value < 0.05;
    }),
  );

/** One store for many seasons: for each it is as if it were begun just then. */
function manySeasons() {
  const { store } = tempStore();
  let newest = 0;
  return (): Store => {
    for (const kind of ['loss', 'no-loss'])
      newest = Math.max(newest, store.journal.after(kind, newest).at(-1)?.id ?? 0);
    const begun = newest;
    const after: Store['journal']['after'] = (what, id) =>
      store.journal.after(what, Math.max(id, begun));
    return { ...store, journal: { ...store.journal, after } };
  };
}

const seasonOf = (
  store: Store,
  seed: number,
  lossAt: (draw: number, wet: boolean, bad: boolean) => number,
) => {
  const weather = wetWeeks(seed, WEEKS);
  // What else goes wrong goes wrong on the whole farm in the same week, and has nothing to do with it.
  const bad = Array.from({ length: WEEKS }, () => weather.random() < 0.35);
  return store.transaction(() =>
    learnSeason(store, {
      weeks: WEEKS,
      wet: weather.wet,
      lost: (week, place) =>
        lossAt(weather.random(), weather.wet(week - 1, place) > 7, bad[week] ?? false),
    }),
  );
};

test('of 400 seasons without any relation at most about 5 in 100 show one', {
  timeout: 300_000,
}, () => {
  const next = manySeasons();
  let [adjusted, naive] = [0, 0];
  for (let seed = 1; seed <= 400; seed++) {
    const season = seasonOf(next(), seed, (draw, _, bad) => (draw < (bad ? 0.8 : 0.1) ? 0.3 : 0));
    if (finds(season, 'adjusted')) adjusted += 1;
    if (finds(season, 'p')) naive += 1;
  }
  // 5 in 100 of 400 are 20; two standard errors of that are 8.7.

  expect(adjusted / 400).toBeLessThanOrEqual(0.07);
  // Taken one by one, as if each place were a witness of its own, it would be far more.
  expect(naive / 400).toBeGreaterThan(0.15);
});

test('a strong relation is found in most seasons, in the right direction', {
  timeout: 120_000,
}, () => {
  const next = manySeasons();
  let found = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const { learned } = seasonOf(next(), seed, (draw, wet) =>
      draw < (wet ? 0.85 : 0.05) ? 0.3 : 0,
    );
    const wet = learned.families
      .flatMap(({ comparisons }) => comparisons)
      .filter(({ what }) => what === 'wet-hours');
    if (
      wet.some(
        ({ adjusted, difference }) => (adjusted ?? 1) < 0.05 && (difference?.difference ?? 0) > 0,
      )
    )
      found += 1;
  }

  expect(found).toBeGreaterThanOrEqual(30);
});

test('a week nobody kept the log in is left out; one without an entry counts where the log was kept', () => {
  const { store } = tempStore();
  const { learned } = learnSeason(store, {
    weeks: 6,
    wet: () => 5,
    // Weeks 0 and 1: a loss in One only; week 2: said to be quiet in Two; weeks 3 to 5: nobody.
    lost: (week, place) =>
      week < 2 ? (place === 'one' ? 0.2 : null) : week === 2 && place === 'two' ? 0 : null,
  });
  const [tunnels] = learned.families;
  const count = (basis: string) => tunnels?.cases.filter((one) => one.basis === basis).length;
  expect(tunnels?.unit).toBe('place-week');
  expect([count('entered'), count('no-entry'), count('said-none'), count('not-kept')]).toEqual([
    2, 4, 1, 11,
  ]);
  const [wet] = tunnels?.comparisons ?? [];
  expect(wet?.facts).toMatchObject({ lots: 7, unknownLots: 11 });
});

test('a week with too much unknown before it is left out, one that is surely wet is not', () => {
  const { store } = tempStore();
  const { learned } = learnSeason(store, {
    weeks: 4,
    wet: (week) => (week === 0 ? 9 : 5),
    unknown: (week) => (week < 2 ? 4 : 0),
    lost: () => 0.2,
  });
  const wet = learned.families[0]?.comparisons.find(({ what }) => what === 'wet-hours');
  const inOne = wet?.cases.filter((_, i) => learned.families[0]?.cases[i]?.slot === 'one');
  // Before week 1: 63 known wet hours; before week 2: 35 and 28 not known, 49 being the limit.
  expect(inOne?.map(({ exposed }) => exposed)).toEqual([null, true, null, false]);
});

test('losses of a crop in a week are added up; a weight of an unknown whole leaves it open', () => {
  const { store } = tempStore();
  const season = { weeks: 3, wet: () => 5, lost: () => null };
  const { losses } = learnSeason(store, season);
  const put = (week: number, amount: number, unit: 'share' | 'kg') => {
    const day = addDays(weekAt(week), 1);
    const facts = {
      ...{ place: 'one', crop: 'basil', amount, unit, of: null },
      ...{ look: 'other' as const, day, batch: null, note: null },
    };
    const event = { event: 'entered' as const, facts, photo: null, another: false };
    losses.add(losses.nextId('basil', day), 'one', event, 'Ada', 0);
  };
  for (const [week, amount, unit] of [
    [0, 6, 'share'],
    [0, 7, 'share'],
    [1, 6, 'share'],
    [1, 2, 'kg'],
    [2, 12, 'share'],
    [2, 2, 'kg'],
  ] as const)
    put(week, amount, unit);
  const { learned } = learnSeason(store, season);
  const shares = learned.families[0]?.cases
    .filter(({ slot }) => slot === 'one')
    .map(({ lost }) => lost?.map((share) => Number(share.toFixed(3))));
  expect(shares).toEqual([
    [0.13, 0.13],
    [0.06, 1],
    [0.12, 1],
  ]);
});

test('batches are compared where somebody keeps them, by what went before their first loss or their end', () => {
  const { store } = tempStore();
  const span = (id: string, week: number) => ({
    ...{ id, name: id, place: 'one', crop: 'basil' },
    ...{ from: weekAt(week), to: addDays(weekAt(week), 20) },
  });
  const season = {
    weeks: 12,
    wet: (week: number) => (week >= 3 ? 9 : 1),
    lost: (week: number, place: string) => (week < 8 && place === 'two' ? 0 : null),
    batches: () => [span('b1', 0), span('b2', 4), { ...span('b3', 6), to: null }],
  };
  const { losses } = learnSeason(store, season);
  const facts = {
    ...{ place: 'one', crop: 'basil', amount: 40, unit: 'share' as const, of: null },
    ...{ look: 'other' as const, day: addDays(weekAt(5), 1), batch: 'b2', note: null },
  };
  const event = { event: 'entered' as const, facts, photo: null, another: false };
  losses.add('loss-basil-x-1', 'one', event, 'Ada', 0);
  const { learned } = learnSeason(store, season);
  const batches = learned.families.find(({ unit }) => unit === 'batch');
  expect(batches?.cases.map(({ id, basis, lost }) => [id, basis, lost])).toEqual([
    ['b1', 'not-kept', null],
    ['b2', 'entered', [0.4, 0.4]],
  ]);
  // b1 ended on a Sunday of week 2, all dry before; b2 lost on a Tuesday of week 5, all wet before.
  const wet = batches?.comparisons.find(({ what }) => what === 'wet-hours');
  expect(wet?.cases.map(({ exposed }) => exposed)).toEqual([false, true]);
});

test('with few weeks it says how many more it takes', () => {
  const { store } = tempStore();
  const { learned } = learnSeason(
    store,
    { weeks: 3, wet: (week) => (week % 2 ? 9 : 3), lost: (week) => (week === 2 ? 0.3 : 0) },
    PLACES,
  );
  const patch = learned.families.find(({ unit }) => unit === 'patch-week');
  const wet = patch?.comparisons.find(({ what }) => what === 'wet-hours');
  expect(wet).toMatchObject({ chance: null, words: 'counts-only' });
  expect(wet?.facts.lots).toBe(3);
  expect(wet?.needed?.more).toBe(9); // twelve at the least, common practice
});
