import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** A limit tried on the past, before it is changed. */
export const TryLimit = lazyPage(words.trial.title, () =>
  import('../trial/index.ts').then(({ TrialPage }) => TrialPage),
);
