import type { Evidence } from '../answer.ts';
import type {
  EnergyDay,
  EnergyTrend,
  GeneratorPlan,
  PullDown,
  RoomCause,
  RoomContents,
  SolarSheet,
  Sureness,
} from '../cooler/index.ts';
import type { Celsius, Hours, Instant, Minutes } from '../units.ts';
import type { FuelNow } from './roomFuel.ts';

/** What decide works out of a cool room, for the screens as well as for the tasks. */
export type CoolRoomNow = {
  readonly id: string;
  readonly asOf: Instant | null;
  readonly state: 'holding' | 'warming' | 'warm' | 'unknown';
  readonly temperature: Celsius | null;
  readonly setPoint: Celsius;
  readonly limit: Celsius;
  /** Bottom of the cycle above set point, K; null when not enough readings. */
  readonly drift: number | null;
  readonly cause: RoomCause | 'unclear' | null;
  readonly produceEstimate: Celsius | null;
  readonly holdOver: {
    readonly minutesToLimit: Minutes | null;
    readonly tauHours: Hours;
    /** The short and the long end of the range. */
    readonly shortest: Minutes | null;
    readonly longest: Minutes | null;
    /** Until the middle of a crate is at the limit, as things go. */
    readonly produceMinutes: Minutes | null;
    /** The same by the short and the long end of the range. */
    readonly produceShortest: Minutes | null;
    readonly produceLongest: Minutes | null;
    /** Stops that the time constant was learned from; 0 for none yet. */
    readonly learnedFrom: number;
    /** How full it is, and how many of those stops were seen with as much in it. */
    readonly contents: RoomContents | null;
    readonly kilograms: number | null;
    readonly sameContents: number;
  };
  readonly aboveLimit: {
    readonly hours: Hours;
    readonly unknownHours: Hours;
    readonly since: Instant | null;
  };
  readonly energy: { readonly kWhPerDay: number | null; readonly dutyCycle: number | null };
  /** Since when something is wrong; null while nothing is. */
  readonly since: Instant | null;
  readonly sure: Sureness | null;
  /** All causes that fit, the likeliest first. */
  readonly among: readonly RoomCause[];
  readonly evidence: readonly Evidence[];
  readonly pullDown: PullDown | null;
  /** A defrost is due, and explains what the air does. */
  readonly defrosting: boolean;
  readonly habits: {
    readonly learned: boolean;
    readonly days: number;
    readonly top: number;
    readonly bottom: number;
    readonly line: number;
    /** Of one cycle; null while it is not learned. */
    readonly minutes: Minutes | null;
    readonly runningShare: number | null;
    /** Minutes of the UTC day. */
    readonly defrosts: { readonly at: readonly number[]; readonly minutes: Minutes } | null;
  };
  readonly energyDays: readonly EnergyDay[];
  readonly trend: EnergyTrend;
  readonly solar: SolarSheet | null;
  /** Of the last 24 hours; null where nobody told what the set burns. */
  readonly fuel: FuelNow | null;
  readonly plan: GeneratorPlan & {
    readonly on: boolean;
    readonly changesAt: Instant | null;
    /** Hours learned from past days, where the farm file tells none; null for none. */
    readonly usual: { readonly hours: readonly string[]; readonly days: number } | null;
    readonly planned: boolean;
  };
};
