import { celsius } from '../units.ts';
import type { NightLow } from './predictNightLow.ts';
import { probabilityBelow } from './probabilityBelow.ts';

// Tables of critical temperatures give the temperature that takes a tenth of the flowers and the
// one that takes nine tenths; in full bloom they are about 2 K apart (apple -2.2 and -3.9, pear -2.2
// and -4.4, sweet cherry -2.2 and -3.9 °C: the tables of Washington State copied in FAO 2005, from
// memory). For strawberry only one limit is published, so the distance is borrowed: ours.
const TENTH_TO_NINE_TENTHS = 2; // K
const STEEPNESS = TENTH_TO_NINE_TENTHS / (2 * Math.log(9)); // K, of the logistic between them
const PARTS = 20; // of the flowers, by how hardy they are

/**
 * Share of what hangs there that a night is expected to take, 0..1: each twentieth of it dies
 * below a temperature of its own, a tenth of it above `damage` and nine tenths above 2 K below.
 * Taking all for lost as soon as the limit is passed would cover on many nights that take a little.
 *
 * Source: tenth and nine tenths after the tables in Snyder and de Melo-Abreu 2005, Frost
 * Protection, FAO, vol. 1 (from memory); the logistic between them is ours.
 * @param damage where damage begins: a tenth is lost, °C
 */
export function damageShare(low: NightLow, damage: number): number {
  const half = damage - TENTH_TO_NINE_TENTHS / 2;
  let sum = 0;
  for (let i = 0; i < PARTS; i++) {
    const hardier = (i + 0.5) / PARTS;
    const dies = half + STEEPNESS * Math.log((1 - hardier) / hardier);
    sum += probabilityBelow(low, celsius(dies));
  }
  return sum / PARTS;
}
