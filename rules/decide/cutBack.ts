import type { Answer, Evidence } from '../answer.ts';
import { bestStop, type FruitPatch, keepCleanOrCut } from '../batches/index.ts';
import { probabilityBelow } from '../frost/index.ts';
import { IN_THE_OPEN } from './cover.ts';
import { by, put, told } from './how.ts';
import type { Look } from './look.ts';
import { act, fact, leave, unknown } from './say.ts';
import type { NightForecast, PatchNow, PlaceNow } from './snapshot.ts';
import { ENTERED, OURS, TOLD } from './sources.ts';

const HARDINESS =
  'defoliated plants did not harden: Boyce, in Penn State 2015; the four weeks are common practice';
const PICKED =
  'minutes and weights of this season’s pickings, the walk taken off; the rule is ours';
const WORTH = 'expected value of what hangs there: bestStop; the model is ours, from no source';

/** What is asked for: the usual clearing out, or the rare cutting back to the crown. */
export type Clearing = 'clear-out' | 'cut-back';

/**
 * Which of the two a patch would be asked for now: cutting only as mayCutBack allows it, and where
 * it is worth more than leaving the leaves; else clearing out. null where nothing is known.
 */
export function clearingOf(look: Look, place: PlaceNow): Clearing | null {
  const { patch } = place;
  if (patch?.fruit == null || patch.missing.length > 0) return null;
  const { cut } = keepCleanOrCut(withTonight(look, place, patch.fruit), patch.clean, patch.cut);
  const asked = patch.may === 'grower' || (patch.may !== null && cut > 0);
  return asked ? 'cut-back' : 'clear-out';
}

/**
 * A patch of strawberries is to be cleared, or cut back. Clearing out (runners, dead and spotted
 * leaves, rotten fruit) is asked for when no further picking is worth its cost, or when it brings
 * more than it costs; cutting to the crown only in the four weeks after the last picking of a
 * June-bearing crop, after signs of dormancy, or because the grower says so. Nothing is asked from
 * midwinter to midsummer but what the grower insists on, or dormancy allows.
 *
 * Source: expected value; ours, from no source. Keeping green leaves: Boyce, in Penn State 2015.
 */
export function cutBack(look: Look, place: PlaceNow): Answer {
  const { patch } = place;
  if (patch === null || patch === undefined) return leave();
  if (patch.fruit === null || patch.missing.length > 0) return unknown(patch.missing);
  const fruit = withTonight(look, place, patch.fruit);
  const ways = keepCleanOrCut(fruit, patch.clean, patch.cut);
  const because = reasons(patch, fruit, ways);
  if (clearingOf(look, place) === 'cut-back') {
    const minutes = patch.cutMinutes;
    return act(because, { minutes, saves: { amount: null, money: ways.cut } });
  }
  // In spring the patch grows towards its crop: nothing is gained by clearing it.
  if (!patch.autumn) return leave(...because);
  if (ways.keep <= 0 || ways.clean > ways.keep) {
    const minutes = patch.cleanMinutes;
    const gain = Math.max(0, ways.clean - ways.keep);
    return act(because, { minutes, saves: { amount: null, money: gain } });
  }
  return leave(...because);
}

/** The first night by tonight's forecast, where there is one for the patch in the open. */
export function withTonight(
  { forecasts }: Pick<Look, 'forecasts'>,
  place: Pick<PlaceNow, 'id' | 'patch'>,
  fruit: FruitPatch,
): FruitPatch {
  const low = tonightsLow(forecasts, place.id);
  const { damage, through = 1 } = place.patch ?? {};
  if (low === null || damage === undefined) return fruit;
  const first = (nights: readonly number[], limit: number) =>
    nights.map((chance, night) => (night === 0 ? through * probabilityBelow(low, limit) : chance));
  return {
    ...fruit,
    killed: first(fruit.killed, damage),
    cohorts: fruit.cohorts.map((each, at) =>
      each.killed === undefined
        ? each
        : { ...each, killed: first(each.killed, place.patch?.cohortDamage[at] ?? damage) },
    ),
  };
}

function tonightsLow(forecasts: readonly NightForecast[], place: string) {
  let coldest: NightForecast | null = null;
  for (const each of forecasts) {
    // Our own wide guess knows less than the season's odds do.
    if (each.place !== place || each.method === 'wide-default') continue;
    if (!IN_THE_OPEN.includes(each.spot)) continue;
    if (coldest === null || each.low.mean < coldest.low.mean) coldest = each;
  }
  return coldest?.low ?? null;
}

function reasons(
  patch: PatchNow,
  fruit: FruitPatch,
  ways: { readonly keep: number; readonly clean: number; readonly cut: number },
): readonly Evidence[] {
  const { day, value } = bestStop(fruit);
  const mass = fruit.cohorts.reduce((sum, each) => sum + each.mass, 0);
  const spared = fruit.killed.slice(0, 14).reduce((left, chance) => left * (1 - chance), 1);
  const stop = by(
    'bestStop',
    put('fruit-hanging', mass, 'kg'),
    put('margin', fruit.margin, 'money'),
    put('each-picking', fruit.perPicking, 'money'),
    put('each-day', fruit.perDay, 'money'),
    put('rot-wet', fruit.rotWet, 'probability'),
    put('rot-dry', fruit.rotDry, 'probability'),
    put('wet-days', fruit.wetChance, 'probability'),
    put('frost-in-14-days', 1 - spared, 'probability'),
  );
  const cutting = by(
    'keepCleanOrCut',
    put('hygiene', patch.cut.hygiene, 'money'),
    put('cut-cost', patch.cut.cost, 'money'),
    put('next-year', patch.cut.nextYear, 'money'),
    put('lost-share', patch.cut.lostShare, 'probability'),
    put('still-to-gain', ways.keep, 'money'),
  );
  const cleaning = by(
    'keepCleanOrCut',
    put('rot-wet', patch.clean.rotWet, 'probability'),
    put('rot-dry', patch.clean.rotDry, 'probability'),
    put('clean-cost', patch.clean.cost, 'money'),
    put('still-to-gain', ways.keep, 'money'),
  );
  const allowed = by('mayCutBack', ...patch.mayInputs);
  const { speed } = patch;
  return [
    fact('still-to-gain', value, 'money', 0, WORTH, stop, OURS),
    fact('fruit-hanging', mass, 'kg', null, ENTERED, told),
    ...(speed == null
      ? []
      : [
          fact(
            ...(['own-picking-speed', speed.minutesPerKilogram, 'min/kg', null, PICKED] as const),
            by(
              'pickingSpeed',
              put('pickings-counted', speed.pickings),
              put('speed-fastest', speed.low, 'min/kg'),
              put('speed-slowest', speed.high, 'min/kg'),
            ),
          ),
        ]),
    ...(day === null ? [] : [fact('last-picking-in', 24 * day, 'h', null, WORTH, stop)]),
    fact('cleaning-brings', ways.clean - ways.keep, 'money', 0, WORTH, cleaning, OURS),
    ...(patch.may === null
      ? [fact('keep-green-leaves', 'yes', '', null, HARDINESS, allowed)]
      : [
          fact('cutting-allowed', patch.may, '', null, HARDINESS, allowed),
          fact('cutting-brings', ways.cut, 'money', 0, TOLD, cutting, OURS),
        ]),
  ];
}
