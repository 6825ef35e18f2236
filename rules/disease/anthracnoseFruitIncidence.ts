import { orUnknown } from '../orUnknown.ts';
import { type Celsius, type Hours, type Probability, probability } from '../units.ts';
import { expectSpell, logistic } from './expectSpell.ts';

// y = -3.70 + 0.33 W - 0.069 W T + 0.005 W T^2 - 0.000093 W T^3, share = 1 / (1 + exp(-y)).
// Source: Wilson, Madden & Ellis 1990, Phytopathology 80:111 (coefficients from memory, and
// rounded so far that the height is loose: use it to rank, with low levels of 0.15 and 0.50,
// MacKenzie & Peres 2012, Plant Disease 96:522).
const COLDEST = 9.33; // °C; the cubic turns up again below, where the experiments had no infection
const HOTTEST = 35; // °C

/**
 * Anthracnose on strawberry fruit after one wet spell: ranks warm wet spells, 0..1. Only worth
 * showing where the disease has been confirmed. 0 outside 9.33..35 °C, and for no wetness at all.
 * @param temperature mean over the wet hours
 * Null for a null.
 * @throws RangeError outside -40..60 °C, or wet hours that are negative or no number
 */
export const anthracnoseFruitIncidence = orUnknown(function anthracnoseFruitIncidence(
  temperature: Celsius,
  wetHours: Hours,
): Probability {
  expectSpell(temperature, wetHours);
  if (wetHours === 0 || temperature < COLDEST || temperature > HOTTEST) return probability(0);
  const perHour =
    0.33 - 0.069 * temperature + 0.005 * temperature ** 2 - 0.000093 * temperature ** 3;
  return probability(logistic(-3.7 + perHour * wetHours));
});
