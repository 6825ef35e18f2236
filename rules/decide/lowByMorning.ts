import { type ChosenModel, fitChosen, predictChosen } from '../frost/index.ts';
import type { Beforehand } from './lowBeforehand.ts';
import { NIGHTS_TO_FIT } from './lowByRegression.ts';
import type { NightRecord, Predictor } from './snapshot.ts';

// What a morning knows of the night to come: the night just past, the one before it, yesterday's
// afternoon and evening, and the air an hour after sunrise.

const CLUES = ['last', 'change', 'morning', 'morningDew', 'eveningDew', 'afternoon'] as const;
type Clue = (typeof CLUES)[number];
type Clues = Readonly<Record<Clue, number | null>>;

const LEAST_SPREAD = 0.5; // K, ours
// By more than 2 %, as for each clue: a line through nights without memory looks a little better
// than the last of them, even with each night left out. Ours.
const WORTH_A_LINE = 0.98;

function cluesBefore(
  last: NightRecord | undefined,
  before: NightRecord | undefined,
  morning: Predictor | null,
): Clues {
  const low = last?.low ?? null;
  const earlier = before?.low ?? null;
  return {
    last: low,
    change: low === null || earlier === null ? null : low - earlier,
    morning: morning?.temperature ?? null,
    morningDew: morning?.dewPoint ?? null,
    eveningDew: last?.evening?.dewPoint ?? null,
    afternoon: last?.afternoon?.temperature ?? null,
  };
}

type Learned = { readonly model: ChosenModel<Clue> } | null;
const learned = new WeakMap<readonly NightRecord[], Learned>();

function learn(nights: readonly NightRecord[]): Learned {
  const known = nights.flatMap(({ low, morning }, i) =>
    low === null
      ? []
      : [{ clues: cluesBefore(nights[i - 1], nights[i - 2], morning ?? null), y: low }],
  );
  const model = fitChosen(known, { base: ['last'], pool: CLUES, fewest: NIGHTS_TO_FIT });
  if (model === null) return null;
  // A line has to be worth more than saying last night's low again, on the nights it learned from.
  const same = known.filter(({ clues }) => model.chosen.every((clue) => clues[clue] !== null));
  const squares = same.reduce((sum, { clues, y }) => sum + (y - (clues.last ?? y)) ** 2, 0);
  const again = Math.sqrt(squares / same.length);
  return model.leaveOneOutRmse < WORTH_A_LINE * again ? { model } : null;
}

/**
 * The low from what is known in the morning, by a line in last night's low and whatever else has
 * lowered the leave-one-out error on past nights here. null with fewer than ten nights, without
 * last night's low, or while no line does better than last night's low again.
 *
 * Source: ours; the rule of admission is that of fitChosen.
 */
export function lowByMorning(
  nights: readonly NightRecord[],
  morning: Predictor | null,
): Beforehand | null {
  if (!learned.has(nights)) learned.set(nights, learn(nights));
  const found = learned.get(nights);
  if (!found) return null;
  const { model } = found;
  const low = predictChosen(model, cluesBefore(nights.at(-1), nights.at(-2), morning));
  if (low === null) return null;
  return {
    low: { ...low, sd: Math.max(low.sd, LEAST_SPREAD) },
    method: 'recent-nights',
    nightsLearned: model.n + 1,
    error: model.leaveOneOutRmse,
  };
}
