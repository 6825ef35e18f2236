import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** What crops need, learned from past batches. */
export const Crops = lazyPage(words.growing.page, () =>
  import('../batches/CropsPage.tsx').then(({ CropsPage }) => CropsPage),
);
