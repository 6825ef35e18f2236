export * from './events.ts';
export * from './facts.ts';
export * from './farm.ts';
export * from './keeping.ts';
export * from './methods.ts';
export * from './pages.ts';
export * from './task.ts';
export * from './terms.ts';
