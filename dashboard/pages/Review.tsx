import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** What a season came to: asked, answered, spared, lost. */
export const Review = lazyPage(words.review.title, () =>
  import('../review/index.ts').then(({ ReviewPage }) => ReviewPage),
);
