import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';
import { expectProduce, q10Rate } from './agingRate.ts';
import { expectTimeConstant } from './warmingTime.ts';

const STEPS = 2000; // even; Simpson's rule is then good to a millionth
const COOLED = 40; // time constants after which nothing is left to cool, to the last bit of a double

/**
 * Hours of life at the reference temperature that a lot uses while it cools from `from` to the
 * room over `hours`: the price of slow cooling. In practice slow cooling costs leaf more than this:
 * wilting and wet leaves matter too (common practice, no source).
 *
 * Source: Newton's law of cooling under the Q10 rule, integrated by Simpson's rule.
 * @param cooling temperatures °C, time constant of the crate and length in h
 * @throws RangeError for produce outside 0..35 °C, q10 outside 1..10, a time constant not above 0
 */
export const lifeUsedCooling = orUnknownField(function lifeUsedCooling(cooling: {
  readonly from: number;
  readonly room: number;
  readonly produceTauHours: number;
  readonly hours: number;
  readonly q10: number;
  readonly reference: number;
}): number {
  const { from, room, produceTauHours, hours, q10, reference } = cooling;
  expectProduce('produce temperature', from);
  expectProduce('room temperature', room);
  expectTimeConstant(produceTauHours);
  expectRange('hours', hours, 0, 10_000, 'h');
  const rateAt = (time: number) =>
    q10Rate(room + (from - room) * Math.exp(-time / produceTauHours), q10, reference);
  const whileCooling = Math.min(hours, COOLED * produceTauHours);
  let sum = rateAt(0) + rateAt(whileCooling);
  for (let i = 1; i < STEPS; i += 1)
    sum += (i % 2 === 1 ? 4 : 2) * rateAt((i * whileCooling) / STEPS);
  return (sum * whileCooling) / STEPS / 3 + (hours - whileCooling) * q10Rate(room, q10, reference);
});
