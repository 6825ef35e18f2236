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
export { closeUp } from './closeUp.ts';
export { MORNING_REACH } from './clues.ts';
export { cover } from './cover.ts';
export { withTonight } from './cutBack.ts';
export { decide, type Failure, type Outlook } from './decide.ts';
export { leaveOpen, TONIGHT } from './leaveOpen.ts';
export { type Look, lookAt } from './look.ts';
export { mayClose, mayCover, mayLeaveOpen, mayOpen, mayShade } from './mayAsk.ts';
export { moveProduce } from './moveProduce.ts';
export { AFTER_RISE, type Sun, sunAround } from './night.ts';
export { rank } from './rank.ts';
export { heatLimitOf, shade } from './shade.ts';
export type * from './snapshot.ts';
export { START_VENTING } from './ventHeat.ts';
export { vents } from './vents.ts';
export { WET_LIMIT } from './ventWet.ts';
export { lowForetold } from './withPushed.ts';
