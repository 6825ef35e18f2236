export { harvestWindow } from './harvestWindow.ts';
