export { fitTimeConstant, STRAIGHT_ENOUGH, type TimeConstant } from './fitTimeConstant.ts';
export { meanKineticTemperature } from './meanKineticTemperature.ts';
export { produceTemperature, produceTime, type StoppedRoom } from './produceTemperature.ts';
export { type KeepingLife, remainingLife } from './remainingLife.ts';
export { timeAbove } from './timeAbove.ts';
export { warmingTime } from './warmingTime.ts';
