import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** What to sow when, and what the deliveries are covered by. */
export const SowingPlan = lazyPage(words.planning.title, () =>
  import('../planning/index.ts').then(({ SowingPage }) => SowingPage),
);

/** One week, for paper. */
export const WeekSheet = lazyPage(words.week.title, () =>
  import('../planning/index.ts').then(({ WeekPage }) => WeekPage),
);
