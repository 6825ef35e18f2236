export { type Damage, damageAt, ripeDamageAt, stagesOf } from './damage.ts';
export { baseOf, everyMs, type Farm, farmOf, USUAL_BASE, WET } from './farm.ts';
export { type FarmFileRead, readFarmFile } from './readFarmFile.ts';
