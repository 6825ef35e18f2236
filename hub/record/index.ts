export { type Action, makeActions } from './actions.ts';
export { CHECK_DAYS, type Check, makeChecks } from './checks.ts';
export { type Correction, type Corrections, makeCorrections } from './corrections.ts';
export { csv } from './csv.ts';
export { lengthOf, type Span, spansWhere } from './spans.ts';
