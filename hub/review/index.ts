// What a season came to: pure counts over what the journal, the tasks and the alarms tell.
export { type AlarmsSeen, alarmsSeen } from './alarmsSeen.ts';
export {
  askedAndAnswered,
  type KindAnswered,
  type SparedRange,
  sparedBy,
} from './askedAndAnswered.ts';
export { type MinutesWritten, minutesWritten } from './minutesWritten.ts';
export { type SeasonSpan, seasonsBack } from './seasonsBack.ts';
