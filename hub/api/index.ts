export { CLAIM_CODE } from './access.ts';
export type { App } from './app.ts';
export type { ApiParts } from './parts.ts';
export { openTasks } from './present.ts';
export { buildServer } from './server.ts';
