import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Hours, type Probability, probability } from '../units.ts';
import { expectSpell, logistic } from './expectSpell.ts';
import type { IncidenceModel } from './incidenceOfSpell.ts';

// y = -3.70 + 0.33 W - 0.069 W T + 0.005 W T^2 - 0.000093 W T^3, share = 1 / (1 + exp(-y)).
// Source: Wilson, Madden & Ellis 1990, Phytopathology 80:111 (coefficients from memory, and
// rounded so far that the height is loose: use it to rank, with low levels of 0.15 and 0.50,
// MacKenzie & Peres 2012, Plant Disease 96:522).
const START = -3.7;
const [FLAT, LINEAR, SQUARE, CUBIC] = [0.33, -0.069, 0.005, -0.000093] as const;
const COLDEST = 9.33; // °C; the cubic turns up again below, where the experiments had no infection
const HOTTEST = 35; // °C

/** What each wet hour adds to y at its temperature; peaks at 26.515 °C. */
export const anthracnoseModel: IncidenceModel = Object.freeze({
  start: START,
  rate: (t: number) => FLAT + LINEAR * t + SQUARE * t ** 2 + CUBIC * t ** 3,
  peak: (-2 * SQUARE - Math.sqrt((2 * SQUARE) ** 2 - 4 * 3 * CUBIC * LINEAR)) / (2 * 3 * CUBIC),
  coldest: COLDEST,
  hottest: HOTTEST,
  testedHours: null,
});

/**
 * Anthracnose on strawberry fruit after one wet spell: ranks warm wet spells, 0..1. Only worth
 * showing where the disease has been confirmed. 0 outside 9.33..35 °C, and for no wetness at all.
 * Null for a null.
 * @param temperature mean over the wet hours
 * @throws RangeError outside -40..60 °C, or wet hours that are negative or no number
 */
export const anthracnoseFruitIncidence = orUnknown(function anthracnoseFruitIncidence(
  temperature: Celsius,
  wetHours: Hours,
): Probability {
  expectSpell(temperature, wetHours);
  if (wetHours === 0 || temperature < COLDEST || temperature > HOTTEST) return probability(0);
  return probability(logistic(START + anthracnoseModel.rate(temperature) * wetHours));
});
