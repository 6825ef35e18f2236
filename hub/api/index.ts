export { CLAIM_CODE } from './access.ts';
export type { AlarmDesk, AlarmSecrets, AlarmState, Trouble } from './alarmDesk.ts';
export type { App } from './app.ts';
export type { FarmDesk } from './farmDesk.ts';
export type { KeepingFacts } from './keepingFacts.ts';
export type { ApiParts, Happening, Looked } from './parts.ts';
export { openTasks } from './present.ts';
export { buildServer } from './server.ts';
