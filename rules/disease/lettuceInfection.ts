import { infectionParameters } from './infectionParameters.ts';
import type { Disease } from './judgement.ts';
import { judgeProgress } from './judgeProgress.ts';

const parameters = infectionParameters['lettuce-downy-mildew'];

/**
 * Downy mildew getting into lettuce by the generic model; lettuceMorning is the rule from the field.
 * Latent period: Scherm & van Bruggen 1994, Phytopathology 84:853.
 */
export const lettuceInfection: Disease = Object.freeze<Disease>({
  id: 'lettuce-downy-mildew-infection',
  of: 'lettuce-downy-mildew',
  name: 'Lettuce downy mildew, infection',
  source: parameters.source,
  onlyIfConfirmed: false,
  latentDays: [5, 14],
  judge: (known) => judgeProgress(known, parameters),
});
