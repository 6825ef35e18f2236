import type { Alarm } from './plan.ts';
import type { MailServer } from './sendEmail.ts';

// What is known of alarms, of who is to be told, and of what was told. Times in ms since 1970.

/** `urgent` wakes, `today` is told in waking hours, `note` is written down only. */
export type Rank = 'urgent' | 'today' | 'note';
export type Channel = 'email' | 'webhook';

/** Minutes of the farm's day. From 22:00 to 06:00 runs over midnight; the same twice is all day. */
export type Hours = { readonly from: number; readonly to: number };

export type Person = {
  readonly id: string;
  readonly name: string;
  readonly email: string | null;
  /** Address that takes messages as JSON. */
  readonly webhook: string | null;
  /** When they may be told of which rank; null is never. */
  readonly hours: { readonly urgent: Hours | null; readonly today: Hours | null };
};

export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

export type AlarmSettings = {
  /** In the order they are to be woken. */
  readonly people: readonly Person[];
  /** Minutes without an answer until the next person is told, and everybody. */
  readonly waits: { readonly second: number; readonly third: number; readonly everybody: number };
  /** Rank by kind of alarm; what is not named is urgent. */
  readonly ranks: Readonly<Record<string, Rank>>;
  /** Mutes all that is not urgent. */
  readonly quiet: Hours | null;
  /** Messages to one person on one channel in an hour. */
  readonly most: number;
  /** A test alarm to everybody each week; weekday 0 is Sunday, as in ECMAScript. */
  readonly weeklyTest: { readonly weekday: Weekday; readonly at: number } | null;
};

/** All that is set, but for its secrets. */
export type KeptSettings = AlarmSettings & {
  /** Where the pages are, for links in messages. */
  readonly address: string | null;
  readonly mail: Omit<MailServer, 'password'> | null;
  /** Told regularly that the hub lives, so that something outside notices when it does not. */
  readonly alive: { readonly url: string; readonly everyMinutes: number } | null;
};

/** An alarm and what somebody said of it. */
export type SeenAlarm = Alarm & {
  readonly seenBy: string | null;
  readonly seenAt: number | null;
  /** Whether it was a false alarm, as somebody answered; null while nobody did. */
  readonly was: 'right' | 'false' | null;
};

export type Silence = {
  readonly id: string;
  /** null: the whole farm. */
  readonly place: string | null;
  /** null: every kind. */
  readonly kind: string | null;
  readonly reason: string;
  /** Planned work: keeps the alarms for produce that gets too warm and for frost. */
  readonly work: boolean;
  readonly who: string;
  readonly from: number;
  readonly until: number;
};

export type DeliveryState = 'waiting' | 'held' | 'delivered' | 'refused' | 'dropped' | 'summarised';
export type Matter = 'raised' | 'over' | 'summary' | 'trouble' | 'test';

/** One message to one person on one channel; kept, so that a restart neither loses nor doubles it. */
export type Delivery = {
  readonly id: string;
  readonly what: Matter;
  /** The alarm it is about; null for a summary, a trouble or a test. */
  readonly alarm: string | null;
  readonly since: number | null;
  readonly person: string;
  readonly channel: Channel;
  readonly state: DeliveryState;
  readonly madeAt: number;
  readonly nextAt: number;
  readonly tries: number;
  readonly endedAt: number | null;
  /** What the other side said last, or why it was not sent. */
  readonly words: string;
};
