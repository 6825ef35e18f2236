// Batches as a file, out and in.
export { batchesCsv } from './batchesCsv.ts';
export { COLUMNS, formOfHead, SIMPLE } from './columns.ts';
export { enterPlan, type FilePlan, planFile } from './planFile.ts';
export type { PlanAbout, PlannedBatch } from './planned.ts';
