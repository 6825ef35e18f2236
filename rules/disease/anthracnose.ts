import { anthracnoseModel } from './anthracnoseFruitIncidence.ts';
import { judgeIncidence } from './judgeIncidence.ts';
import type { Disease } from './judgement.ts';

const SOURCE =
  'Colletotrichum acutatum on strawberry fruit; Wilson, Madden & Ellis 1990, Phytopathology 80:111';

/** Anthracnose fruit rot of strawberry: a ranking of warm wet spells, off unless confirmed here. */
export const anthracnose: Disease = Object.freeze<Disease>({
  id: 'anthracnose',
  of: 'anthracnose',
  name: 'Anthracnose fruit rot',
  source: SOURCE,
  onlyIfConfirmed: true,
  latentDays: null,
  judge: (known) => judgeIncidence(known, anthracnoseModel, SOURCE),
});
