export { type AlarmCount, alarmCounts } from './alarmCounts.ts';
export { nextTry } from './backOff.ts';
export { eventSilentUntil, rankOfEvent } from './eventFacts.ts';
export { type AlarmEvent, eventsOf } from './eventsOf.ts';
export { channelsOf, mayTell, within } from './hours.ts';
export { type Alarm, planAlarms } from './plan.ts';
export {
  type DeliveryPlan,
  deliveryId,
  planDeliveries,
  type ToldState,
} from './planDeliveries.ts';
export { fails } from './planTroubles.ts';
export { GUARDED, rankOf, usualRanks, usualSettings } from './ranks.ts';
export { type Publish, sendAlarm, told } from './send.ts';
export { type Email, type MailServer, messageId, sendEmail } from './sendEmail.ts';
export { type Post, sendWebhook, signature } from './sendWebhook.ts';
export { oneLine, type Sent } from './sent.ts';
export { longestSilence, silentUntil } from './silences.ts';
export { eventSounds, SIREN, sounds } from './siren.ts';
export type * from './types.ts';
export { wakeOrder } from './wakeOrder.ts';
export { testIsDue } from './weeklyTest.ts';
