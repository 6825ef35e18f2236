import { infectionParameters } from './infectionParameters.ts';
import type { Disease } from './judgement.ts';
import { judgeProgress } from './judgeProgress.ts';

const parameters = infectionParameters['late-blight'];

/** Late blight by the generic model, of low confidence: lateBlight has the criteria to prefer. */
export const lateBlightInfection: Disease = Object.freeze<Disease>({
  id: 'late-blight-infection',
  of: 'late-blight',
  name: 'Late blight, infection',
  source: parameters.source,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: (known) => judgeProgress(known, parameters),
});
