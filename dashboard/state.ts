import { computed, signal } from '@preact/signals';
import type {
  FarmFacts,
  Probe,
  RefusedMessages,
  Strips,
  Task,
  Today,
  Who,
} from '../hub/contract/index.ts';

// All that the pages show, as the hub last said it. Written by live.ts (and heardFacts.ts for it) only; pages read.

export const who = signal<Who | null>(null);
/** Whether the hub lets this person change the farm, its places, probes and people. */
export const mayChange = computed(() => who.value?.role === 'grower');
/** Set when the hub answered that it does not know who asks. */
export const signInNeeded = signal(false);
export const farm = signal<FarmFacts | null>(null);
export const today = signal<Today | null>(null);
export const strips = signal<Strips | null>(null);
export const ended = signal<readonly Task[]>([]);
export const probes = signal<readonly Probe[] | null>(null);
/** Messages that no known probe sent. */
export const strangers = signal<readonly RefusedMessages[]>([]);
/** The task answered last on this screen, as the hub stored it. */
export const answered = signal<Task | null>(null);
/** The last request for each page's facts that failed, as a sentence. */
export const faults = signal<Readonly<Partial<Record<Facts, string>>>>({});
/** Count of looks the hub has taken, for pages that ask for their own facts. */
export const looks = signal(0);
/** Count of times the hub said that something about alarms changed. */
export const alarmChanges = signal(0);
/** Count of times the hub said that the farm's description changed. */
export const farmChanges = signal(0);
/** Why the hub keeps nothing now, in a sentence; null while all is well. */
export const store = signal<string | null>(null);
/** Count of times the link came back, or something that had waited was stored: pages ask again. */
export const returns = signal(0);
export const link = signal<Link>({ state: 'connecting' });

export type Facts = 'today' | 'strips' | 'ended' | 'probes';
export type Link =
  | { readonly state: 'connecting' | 'up' }
  /** `since` by the hub's clock; null when it was never reached. */
  | { readonly state: 'lost'; readonly since: number | null };
