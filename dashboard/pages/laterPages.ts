import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

// Pages of this folder that Today does without: a slow phone reads the first task sooner.

export const Alarms = lazyPage(words.alarms.title, () =>
  import('./Alarms.tsx').then((page) => page.Alarms),
);
export const Frost = lazyPage(words.frost.title, () =>
  import('./Frost.tsx').then((page) => page.Frost),
);
export const How = lazyPage(words.how.title, () => import('./How.tsx').then((page) => page.How));
export const Place = lazyPage(words.places.title, () =>
  import('./Place.tsx').then((page) => page.Place),
);
export const Places = lazyPage(words.places.title, () =>
  import('./Places.tsx').then((page) => page.Places),
);
export const Probes = lazyPage(words.probes.title, () =>
  import('./Probes.tsx').then((page) => page.Probes),
);
export const SetUp = lazyPage(words.setUp.title, () =>
  import('./SetUp.tsx').then((page) => page.SetUp),
);
