import { infectionParameters } from './infectionParameters.ts';
import type { Disease } from './judgement.ts';
import { judgeProgress } from './judgeProgress.ts';

const parameters = infectionParameters['grey-mould'];

/** Grey mould getting into wet leaves and petals of any crop: a ranking, by the generic model. */
export const greyMouldLeaves: Disease = Object.freeze<Disease>({
  id: 'grey-mould-leaves',
  of: 'grey-mould',
  name: 'Grey mould on leaves and petals',
  source: parameters.source,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: (known) => judgeProgress(known, parameters),
});
