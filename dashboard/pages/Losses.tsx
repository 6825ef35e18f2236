import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** The log of losses, what went before them, and what may be said of both. */
export const Losses = lazyPage(words.losses.title, () =>
  import('../losses/index.ts').then(({ LossesPage }) => LossesPage),
);
