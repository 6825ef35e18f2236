import { lazyPage } from '../parts/lazyPage.tsx';
import { words } from '../words.ts';

/** The cool room, what lies in it and its record. */
export const CoolRoom = lazyPage(words.room.title, () =>
  import('../coolRoom/index.ts').then(({ CoolRoomPage }) => CoolRoomPage),
);

/** The record of any days, for paper. */
export const CoolRoomRecord = lazyPage(words.record.title, () =>
  import('../coolRoom/index.ts').then(({ RecordPage }) => RecordPage),
);

/** Panels and battery, worked on paper. */
export const CoolRoomSolar = lazyPage(words.room.solar, () =>
  import('../coolRoom/index.ts').then(({ SolarPage }) => SolarPage),
);
