import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Hours, type Probability, probability } from '../units.ts';
import { expectSpell, logistic } from './expectSpell.ts';
import type { IncidenceModel } from './incidenceOfSpell.ts';

// y = -4.268 - 0.0901 W + 0.0294 W T - 0.0000235 W T^3, share = 1 / (1 + exp(-y)).
// Source: Bulger, Ellis & Madden 1987, Phytopathology 77:1225 (coefficients from memory; optimum
// near 20 °C and the limits agree with the abstract). Flowers were tested at 5 to 30 °C, wet up
// to 32 h; a longer spell is extrapolated.
const START = -4.268;
const LINEAR = 0.0294;
const CUBIC = -0.0000235;
const COLDEST = 5; // °C
const HOTTEST = 30; // °C
const TESTED = 32; // h

/** What each wet hour adds to y at its temperature; peaks at 20.42 °C. */
export const botrytisModel: IncidenceModel = Object.freeze({
  start: START,
  rate: (temperature: number) => -0.0901 + LINEAR * temperature + CUBIC * temperature ** 3,
  peak: Math.sqrt(LINEAR / (-3 * CUBIC)),
  coldest: COLDEST,
  hottest: HOTTEST,
  testedHours: TESTED,
});

/**
 * Grey mould on open strawberry flowers after one wet spell: the likely share infected, 0..1.
 *
 * It says that weather suited infection. It doesn't know whether spores or open flowers were there,
 * and is not the share of berries lost, which stays well below. 0 outside 5..30 °C, and for no
 * wetness at all. Null for a null. incidenceOfSpell takes changing temperature into account.
 * @param temperature mean over the wet hours
 * @throws RangeError outside -40..60 °C, or wet hours that are negative or no number
 */
export const botrytisFruitIncidence = orUnknown(function botrytisFruitIncidence(
  temperature: Celsius,
  wetHours: Hours,
): Probability {
  expectSpell(temperature, wetHours);
  if (wetHours === 0 || temperature < COLDEST || temperature > HOTTEST) return probability(0);
  return probability(logistic(START + botrytisModel.rate(temperature) * wetHours));
});
