export { daysOfHours, type HourlyDay } from './daysOfHours.ts';
export { isClearCalmAtStation } from './isClearCalmAtStation.ts';
export {
  type DaysCsvLine,
  type DaysHeader,
  daysCsvLines,
  parseDaysCsv,
  STATION_HEADER,
} from './parseDaysCsv.ts';
export { type DlyElement, parseDly, parseDlyLine, type StationValue } from './parseDly.ts';
export { parseIsdLite, parseIsdLiteLine, type StationHour } from './parseIsdLite.ts';
export { morningReadersDays, type StationDay, stationDays } from './stationDays.ts';
