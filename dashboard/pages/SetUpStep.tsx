import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** One step of describing the farm. */
export const SetUpStep = lazyPage(words.setUpSteps.title, () =>
  import('../setUp/index.ts').then(({ StepPage }) => StepPage),
);
