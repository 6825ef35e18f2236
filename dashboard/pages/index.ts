import type { ComponentType } from 'preact';
import type { Params } from '../router.ts';
import { words } from '../words.ts';
import { CoolRoom, CoolRoomRecord } from './CoolRoom.tsx';
import { How } from './How.tsx';
import { Place } from './Place.tsx';
import { Places } from './Places.tsx';
import { Probes } from './Probes.tsx';
import { SignIn } from './SignIn.tsx';
import { Today } from './Today.tsx';

export type Page = {
  readonly path: string;
  /** Its name in the menu; null keeps it out of the menu. */
  readonly menu: string | null;
  readonly Show: ComponentType<{ params: Params }>;
};

// The list that makes routes and menu.
export const pages: readonly Page[] = [
  { path: '/', menu: words.menu.today, Show: Today },
  { path: '/places', menu: words.menu.places, Show: Places },
  { path: '/places/:id', menu: null, Show: Place },
  { path: '/cool-room', menu: words.menu.coolRoom, Show: CoolRoom },
  { path: '/cool-room/record', menu: null, Show: CoolRoomRecord },
  { path: '/probes', menu: words.menu.probes, Show: Probes },
  { path: '/how/:name', menu: null, Show: How },
  { path: '/sign-in', menu: null, Show: SignIn },
];

export { SignIn };
