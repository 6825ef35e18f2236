export { type Answer, makeTasks, type Tasks } from './apply.ts';
export { moveTimes } from './moveTimes.ts';
export { patienceOf } from './patience.ts';
export { planTasks } from './plan.ts';
export type { Memory, Plan, Step, Task, TaskEventName } from './task.ts';
