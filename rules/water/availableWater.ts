import { expectRange } from '../expectRange.ts';
import { orUnknownField } from '../orUnknownField.ts';

const MM_PER_METRE = 1000;

/**
 * Water a soil holds for the roots, mm: in all (TAW), and before the crop suffers (RAW = p TAW).
 *
 * Source: FAO-56 eq. 82 and 83 (Allen, Pereira, Raes & Smith 1998).
 * @param soil volume shares of water at field capacity and at the wilting point, depth of roots (m)
 *   and the crop's depletable share p
 * @throws RangeError for shares outside 0..0.8 or upside down, depths outside 0..3 m, p outside 0..1
 */
export const availableWater = orUnknownField(function availableWater(soil: {
  readonly fieldCapacity: number;
  readonly wiltingPoint: number;
  readonly rootDepth: number;
  readonly depletable: number;
}): { readonly total: number; readonly ready: number } {
  const { fieldCapacity, wiltingPoint, rootDepth, depletable } = soil;
  expectRange('wilting point', wiltingPoint, 0, 0.8, '');
  expectRange('field capacity', fieldCapacity, wiltingPoint, 0.8, '');
  expectRange('depth of roots', rootDepth, 0, 3, 'm');
  expectRange('depletable share', depletable, 0, 1, '');
  const total = MM_PER_METRE * (fieldCapacity - wiltingPoint) * rootDepth;
  return { total, ready: depletable * total };
});
