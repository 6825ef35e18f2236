export { anthracnoseFruitIncidence } from './anthracnoseFruitIncidence.ts';
export { botrytisFruitIncidence } from './botrytisFruitIncidence.ts';
export { type InfectionParameters, infectionHours } from './infectionHours.ts';
export { type DiseaseParameters, infectionParameters } from './infectionParameters.ts';
export { infectionProgress } from './infectionProgress.ts';
