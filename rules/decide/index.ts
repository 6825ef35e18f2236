export {
  type Act,
  type AlarmKind,
  type Answer,
  type Decision,
  type Evidence,
  type Input,
  type Leave,
  type Saving,
  type Subject,
  type TaskKind,
  taskKey,
  type Unknown,
} from '../answer.ts';
export { MORNING_REACH } from './clues.ts';
export { withTonight } from './cutBack.ts';
export { decide, type Failure, type Outlook } from './decide.ts';
export { TONIGHT } from './leaveOpen.ts';
export { rank } from './rank.ts';
export { heatLimitOf } from './shade.ts';
export type * from './snapshot.ts';
export { lowForetold } from './withPushed.ts';
