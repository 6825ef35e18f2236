// The language the hub speaks.
export * from './en.ts';
export { type Complaint, refusal, shown } from './refusal.ts';
