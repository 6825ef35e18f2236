import type { BatchLook } from '../../hub/contract/index.ts';
import type { Shape } from '../parts/Mark.tsx';

/** Beside the words, never instead of them. */
export const lookShape: Readonly<Record<BatchLook, Shape>> = {
  well: 'done',
  ready: 'warm',
  mould: 'care',
  leggy: 'warming',
  wilted: 'dry',
  scorched: 'care',
  'cold-hurt': 'care',
  eaten: 'lapsed',
  uneven: 'holding',
  other: 'unknown',
};
