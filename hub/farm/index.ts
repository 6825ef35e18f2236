export { begunFarm, noFarm } from './begunFarm.ts';
export { type Damage, damageAt, ripeDamageAt, stagesOf } from './damage.ts';
export { editText } from './editText.ts';
export { baseOf, everyMs, type Farm, farmOf, USUAL_BASE, WET } from './farm.ts';
export { farmChanges } from './farmChanges.ts';
export { farmChoices } from './farmChoices.ts';
export {
  checkFarm,
  type FarmFault,
  type FarmFileRead,
  readBegun,
  readFarmFile,
} from './readFarmFile.ts';
export { type StarterCrop, starterCrops } from './starterCrops.ts';
