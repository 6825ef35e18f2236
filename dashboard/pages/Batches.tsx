import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** What was sown, where it stands, and the way to enter what is done with it. */
export const Batches = lazyPage(words.batches.title, () =>
  import('../batches/index.ts').then(({ BatchesPage }) => BatchesPage),
);
