// Reads the report of the test run and prints "N passed, N failed" as its last line.
import { readFileSync } from 'node:fs';

const text = readFileSync(process.argv[2], 'utf8');
const report = text === '' ? null : JSON.parse(text);
const passed = report?.numPassedTests ?? 0;
// No report means that the types, the lint or the build failed before any test began.
const failed = report
  ? report.numFailedTests + (report.success || report.numFailedTests ? 0 : 1)
  : 1;
const skipped = (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0);
console.log(`${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''}`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
