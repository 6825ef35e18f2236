export { availableWater } from './availableWater.ts';
export { type CropWater, cropWater, cropWaters } from './cropWater.ts';
export { daylightHours, extraterrestrialRadiation } from './extraterrestrialRadiation.ts';
export {
  evapotranspirationUnderCover,
  referenceEvapotranspiration,
} from './referenceEvapotranspiration.ts';
export { type BucketDay, soilBucket, type WaterDay } from './soilBucket.ts';
export { type SoilDrying, soilDrying } from './soilDrying.ts';
