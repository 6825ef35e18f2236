export { CLAIM_CODE } from './access.ts';
export type { ApiParts } from './parts.ts';
export { openTasks } from './present.ts';
export { type App, buildServer } from './server.ts';
