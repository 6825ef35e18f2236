import type { ComponentType } from 'preact';
import type { Params } from '../router.ts';
import { words } from '../words.ts';
import { Batches } from './Batches.tsx';
import { CoolRoom, CoolRoomRecord, CoolRoomSolar } from './CoolRoom.tsx';

import { Crops } from './Crops.tsx';
import { Losses } from './Losses.tsx';
import { Alarms, Frost, How, Place, Places, Probes, SetUp } from './laterPages.ts';
import { SowingPlan, WeekSheet } from './Planning.tsx';
import { Review } from './Review.tsx';
import { SetUpStep } from './SetUpStep.tsx';
import { SignIn } from './SignIn.tsx';
import { Today } from './Today.tsx';
import { TryLimit } from './TryLimit.tsx';
import { Pickings, Worth } from './Worth.tsx';

/** The headings behind "More", in their order. */
export const menuGroups = ['growing', 'records', 'hub'] as const;
export type MenuGroup = (typeof menuGroups)[number];

export type Page = {
  readonly path: string;
  /** Its name in the menu; null keeps it out of the menu. */
  readonly menu: string | null;
  /** The menu has room for four; the others stand behind "More". */
  readonly level?: 'more';
  /** The heading behind "More" that it stands under; the hub's, when nothing is said. */
  readonly group?: MenuGroup;
  readonly Show: ComponentType<{ params: Params }>;
};

// The list that makes routes and menu, in the menu's order.
export const pages: readonly Page[] = [
  { path: '/', menu: words.menu.today, Show: Today },
  { path: '/places', menu: words.menu.places, Show: Places },
  { path: '/places/:id', menu: null, Show: Place },
  { path: '/cool-room', menu: words.menu.coolRoom, Show: CoolRoom },
  { path: '/cool-room/record', menu: null, Show: CoolRoomRecord },
  { path: '/cool-room/solar', menu: null, Show: CoolRoomSolar },
  { path: '/frost', menu: words.menu.frost, Show: Frost },
  { path: '/batches', menu: words.menu.batches, level: 'more', group: 'growing', Show: Batches },
  { path: '/sowing', menu: words.menu.sowing, level: 'more', group: 'growing', Show: SowingPlan },
  { path: '/week', menu: words.menu.week, level: 'more', group: 'growing', Show: WeekSheet },
  { path: '/pickings', menu: words.menu.picks, level: 'more', group: 'records', Show: Pickings },
  { path: '/worth', menu: words.menu.worth, level: 'more', group: 'records', Show: Worth },
  { path: '/losses', menu: words.menu.losses, level: 'more', group: 'records', Show: Losses },
  { path: '/crops', menu: words.growing.page, level: 'more', group: 'growing', Show: Crops },
  { path: '/review', menu: words.review.title, level: 'more', group: 'records', Show: Review },
  { path: '/try-limit', menu: words.trial.title, level: 'more', group: 'records', Show: TryLimit },
  { path: '/probes', menu: words.menu.probes, level: 'more', group: 'hub', Show: Probes },
  { path: '/alarms', menu: words.menu.alarms, level: 'more', group: 'hub', Show: Alarms },
  { path: '/set-up', menu: words.menu.setUp, level: 'more', group: 'hub', Show: SetUp },
  { path: '/set-up/:step', menu: null, Show: SetUpStep },
  { path: '/how/:name', menu: null, Show: How },
  { path: '/sign-in', menu: null, Show: SignIn },
];

export { SignIn };
