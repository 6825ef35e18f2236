export { type Alarm, planAlarms } from './plan.ts';
export { type Publish, sendAlarm, told } from './send.ts';
