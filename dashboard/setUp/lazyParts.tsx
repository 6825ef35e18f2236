import { lazy } from '../parts/lazy.tsx';

// Fetched when first shown: Today does without it.

export const StepList = lazy<object>(async () => (await import('./StepList.tsx')).StepList);
