// The language the hub speaks.
export * from './en.ts';
export { type Complaint, refusal, refusalBeside, saidBeside, shown } from './refusal.ts';
