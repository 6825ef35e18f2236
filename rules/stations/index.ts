export { isClearCalmAtStation } from './isClearCalmAtStation.ts';
export { type DaysHeader, parseDaysCsv } from './parseDaysCsv.ts';
export { type DlyElement, parseDly, parseDlyLine, type StationValue } from './parseDly.ts';
export { parseIsdLite, parseIsdLiteLine, type StationHour } from './parseIsdLite.ts';
export { type StationDay, stationDays } from './stationDays.ts';
