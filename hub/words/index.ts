export * from './enHub.ts';
export { type Complaint, refusal, shown } from './refusal.ts';
