import type { Outlook, Snapshot } from '../../rules/decide/index.ts';
import type { Alarm } from '../alarms/index.ts';
import type { Batches } from '../batches/index.ts';
import type { Calendar, Clock } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Growing } from '../growing/index.ts';
import type { Losses } from '../losses/index.ts';
import type { Photos } from '../photos/index.ts';
import type { Picks } from '../picks/index.ts';
import type { PlacesCompared } from '../placesCompared/index.ts';
import type { Planning } from '../planning/index.ts';
import type { Corrections } from '../record/index.ts';
import type { Season } from '../season/index.ts';
import type { Snapshots } from '../snapshot/index.ts';
import type { Store, StoredReading, Trouble } from '../store/index.ts';
import type { Answer, Task, Tasks } from '../tasks/index.ts';
import type { Trials } from '../trial/index.ts';
import type { AlarmDesk } from './alarmDesk.ts';
import type { FarmDesk } from './farmDesk.ts';
import type { KeepingFacts } from './keepingFacts.ts';

/** What the newest look saw and concluded. Times in ms since 1970. */
export type Looked = {
  readonly at: number;
  readonly snapshot: Snapshot;
  readonly outlook: Outlook;
  /** Open tasks with today's evidence. */
  readonly open: readonly Task[];
  /** Why the newest attempt failed, when it did: what is here is then older than it should be. */
  readonly failure: string | null;
};

/** What happens in the hub that an open page is told. */
export type Happening = {
  readings: readonly StoredReading[];
  task: Task;
  alarm: Alarm;
  /** Who saw what, or what is silent, changed. */
  alarms: { readonly at: number };
  looked: { readonly at: number };
  /** Its description changed. */
  farm: Farm;
  /** Why the store can keep nothing from now on; null: it can again. */
  store: Trouble | null;
};

/** What the pages and their JSON need of the rest of the hub. */
export type ApiParts = {
  readonly store: Store;
  readonly clock: Clock;
  readonly farm: () => Farm;
  readonly calendar: () => Calendar;
  /** Where people look at the farm's description and change it. */
  readonly farmDesk: FarmDesk;
  readonly snapshots: Snapshots;
  readonly season: Season;
  readonly batches: Batches;
  readonly picks: Picks;
  readonly growing: Growing;
  readonly planning: Planning;
  readonly placesCompared: PlacesCompared;
  readonly losses: Losses;
  /** Where photos lie; a hub without a folder of its own keeps none. */
  readonly photos?: Photos;
  readonly tasks: Tasks;
  /** What checks found to be added to what probes send. */
  readonly corrections: Corrections;
  readonly lastLook: () => Looked | null;
  readonly lastReadingAt: () => number | null;
  readonly heardAt: (probe: string) => number | null;
  /** `at`: when it was said, which may be a while ago. */
  readonly answer: (id: string, answer: Answer, who: string, at?: number) => Task | undefined;
  /** Looks at everything again, because somebody changed something. */
  readonly look: () => void;
  readonly feed: {
    on<Name extends keyof Happening>(
      name: Name,
      listener: (what: Happening[Name]) => void,
    ): () => void;
  };
  readonly alarms: AlarmDesk;
  readonly brokerConnected: () => boolean;
  readonly clockState: () => 'ok' | 'unset' | 'jumped';
  /** Messages that wait for a time. */
  readonly held: () => number;
  /** How what is kept is looked after; a hub without timers has nobody who does. */
  readonly keeping?: () => KeepingFacts;
  /** Limits tried on the past; a hub without a file of its own tries none. */
  readonly trials?: Trials;
  /** Begins a copy of the store, unless one is being made; what becomes of it is in `keeping`. */
  readonly backUpNow?: () => void;
  /** Nobody needs to sign in: every listener is on this machine only. */
  readonly open: boolean;
};

/** A request that cannot be met; `message` is one sentence for the person who sent it. */
export class Refused extends Error {
  readonly statusCode: number;
  readonly headers: Readonly<Record<string, string>>;
  constructor(
    statusCode: number,
    sentence: string,
    headers: Readonly<Record<string, string>> = {},
  ) {
    super(sentence);
    this.statusCode = statusCode;
    this.headers = headers;
  }
}
