import { infectionParameters } from './infectionParameters.ts';
import type { Disease } from './judgement.ts';
import { judgeProgress } from './judgeProgress.ts';

const parameters = infectionParameters['brassica-downy-mildew'];

/** Downy mildew of brassica salads and shoots: a ranking, on temperatures sources disagree about. */
export const brassicaDownyMildew: Disease = Object.freeze<Disease>({
  id: 'brassica-downy-mildew',
  of: 'brassica-downy-mildew',
  name: 'Brassica downy mildew',
  source: parameters.source,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: (known) => judgeProgress(known, parameters),
});
