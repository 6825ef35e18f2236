export { baseOf, everyMs, type Farm, farmOf, WET } from './farm.ts';
export { type FarmFileRead, readFarmFile } from './readFarmFile.ts';
