import { storageTable } from '../../rules/cooler/index.ts';
import { diseases } from '../../rules/disease/index.ts';
import type { FarmChoices } from '../contract/index.ts';
import { allStages } from './damage.ts';

/** The names that the rules know and a farm file may use: diseases, stages, crops that keep alike. */
export const farmChoices = (): FarmChoices => ({
  diseases: [...new Set(diseases.map((one) => one.of))],
  stages: allStages(),
  keepsLike: storageTable.map(({ crop }) => crop),
});
