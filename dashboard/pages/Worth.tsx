import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** What an hour, a tray and a day of space earn. */
export const Worth = lazyPage(words.worth.title, () =>
  import('../worth/index.ts').then(({ WorthPage }) => WorthPage),
);

/** Entering a picking, and the latest ones. */
export const Pickings = lazyPage(words.picks.title, () =>
  import('../worth/index.ts').then(({ PicksPage }) => PicksPage),
);
