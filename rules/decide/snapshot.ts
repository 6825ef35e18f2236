import type { Input } from '../answer.ts';
import type { Cleaning, CuttingBack, FruitPatch } from '../batches/index.ts';
import type { EnergyDay, Fuel, RoomContents, RoomHabits, Span } from '../cooler/index.ts';
import type { CoveredNight } from '../frost/index.ts';
import type { PickingSpeed } from '../money/index.ts';
import type { Celsius, Instant, Minutes, Percent } from '../units.ts';
import type { HarvestNow, SowingNow, UntimedNow } from './growingNow.ts';
import type { Stored } from './lotNow.ts';
import type { NightRecord, PushedForecast, SpotPrior } from './nightFacts.ts';
import type { TraysNow } from './trayNow.ts';

export type * from './coolRoomNow.ts';
export type * from './growingNow.ts';
export type * from './lotNow.ts';
export type * from './nightFacts.ts';
export type * from './trayNow.ts';

// All that is known at one instant, as plain data. hub/snapshot fills it; rules/decide reads it.
// Only good readings are here: a flagged one is kept in the store and counts as time without a
// reading. Arrays are in order of time.

export type Quantity =
  | 'temperature'
  | 'humidity'
  | 'soil-moisture'
  | 'soil-temperature'
  | 'leaf-wetness'
  | 'light'
  | 'rain'
  | 'wind'
  | 'power'
  | 'energy'
  | 'door'
  | 'battery';

export type PlaceKind = 'tunnel' | 'patch' | 'outdoor' | 'cool-room';
export type SpotName = 'canopy' | 'air' | 'under-cover' | 'product' | 'grass' | 'unit';

/** Columns of one quantity: `value[i]` was read at `t[i]`. */
export type Column = { readonly t: readonly Instant[]; readonly value: readonly number[] };

/** Temperature and humidity read together. */
export type AirReading = {
  readonly t: Instant;
  readonly temperature: Celsius;
  readonly humidity: Percent;
};

export type SpotNow = {
  readonly spot: SpotName;
  readonly probe: string;
  /** How often this probe means to report. */
  readonly every: Minutes;
  /** The last 48 hours of each quantity that has any reading there. */
  readonly columns: Partial<Record<Quantity, Column>>;
  /** The last 48 hours in which temperature and humidity were both read. */
  readonly air: readonly AirReading[];
  /** Past nights, oldest first, at most 60; empty where nothing was measured yet. */
  readonly nights: readonly NightRecord[];
  readonly prior?: SpotPrior | null | undefined;
};

export type Crop = {
  readonly id: string;
  readonly base: Celsius;
  /** Temperatures the crop likes. */
  readonly band: readonly [Celsius, Celsius] | null;
  readonly heatLimit: Celsius | null;
  /** Below this the crop is hurt by cold. */
  readonly chill: Celsius | null;
  readonly disease: readonly string[];
  /** Money per kg; null where not told. */
  readonly price: number | null;
  /** kg per tray. */
  readonly perTray: number | null;
};

export type PlaceNow = {
  readonly id: string;
  readonly kind: PlaceKind;
  readonly crop: string | null;
  /** Trays standing there now, where somebody said so. */
  readonly trays: number | null;
  /** What they come to at their crops' usual yield and price, where batches tell what stands there. */
  readonly standing?: { readonly kilograms: number | null; readonly money: number | null };
  readonly vents: boolean;
  /** What the grower last said was done, or usually does by now; null when nobody said. */
  readonly opened: boolean | null;
  /** When the vents are usually opened and shut today; absent where nobody told. */
  readonly airing?: { readonly opens: Instant; readonly shuts: Instant } | undefined;
  /** `opened` is what is usual at this hour: nobody said so today. */
  readonly asUsual?: boolean | undefined;
  /** Somebody said that the vents stay open through the coming or running night. */
  readonly staysOpen?: boolean | undefined;
  readonly covered: boolean | null;
  /** Shade was put over it today; absent or null when nobody said. */
  readonly shaded?: boolean | null | undefined;
  /** `hours`: wet leaves for so long ask for air, where the grower told it. */
  readonly wet: { readonly at: Percent; readonly below: Percent; readonly hours?: number };
  readonly cover: {
    readonly minutes: Minutes;
    /** Money lost if the frost takes what hangs there. */
    readonly value: number;
    /** Damage begins below this. */
    readonly damage: Celsius;
    /** Who says so, where it is not the grower: the stage's source and the margin of the probe. */
    readonly damageFrom?: string | undefined;
    /** Share of the loss that covering prevents, 0..1. */
    readonly effect: number;
  } | null;
  /** Past nights under the covers against the open spot beside it; absent where no pair hangs. */
  readonly coverNights?: readonly CoveredNight[] | undefined;
  /** Ripe produce hangs here at this time of the year; absent where nobody said so. */
  readonly picking?:
    | {
        readonly minutes: Minutes;
        /** Money's worth of what is usually ripe at once. */
        readonly value: number;
        /** Ripe produce is hurt below this. */
        readonly damage: Celsius;
        readonly damageFrom: string;
      }
    | null
    | undefined;
  /** Watered when its soil is below so many %, as its probe says it; absent where nobody told. */
  readonly water?: { readonly below: number; readonly minutes: Minutes | null } | null | undefined;
  readonly coolRoom: {
    readonly setPoint: Celsius;
    readonly limit: Celsius;
    /** Money's worth of produce inside; null where not told. */
    readonly value: number | null;
    /** What is usual here, learned from the last weeks; not there while nothing was learned. */
    readonly habits?: RoomHabits;
    /** When its supply is planned to be on, around now; not there for always. */
    readonly supply?: readonly Span[];
    /** What the set that feeds it burns; not there where not told. */
    readonly burns?: GeneratorTold;
    /** Its days of energy, oldest first, as far as its meter tells. */
    readonly energyDays?: readonly EnergyDay[];
    /** Hours its supply usually is on, learned where the farm file tells none; `supply` goes by them. */
    readonly usual?: { readonly hours: readonly string[]; readonly days: number };
    /** How full it is by the book of lots, and how many stops were seen with as much in it. */
    readonly filled?: {
      readonly now: RoomContents | null;
      readonly kilograms: number | null;
      readonly stops: number;
      /** The time constant of the quickest beginning among them, h. */
      readonly swift: number | null;
    };
  } | null;
  readonly spots: readonly SpotNow[];
  /** Of a patch with strawberries: what hangs there, and what it is worth. Left out elsewhere. */
  readonly patch?: PatchNow | null;
};

/** What is known for the decision whether to clear a patch or cut it back. */
export type PatchNow = {
  /** What would have to be known; empty when `fruit` is there. */
  readonly missing: readonly string[];
  /** null when it is not known. */
  readonly fruit: FruitPatch | null;
  /** Temperature below which the patch's fruit is lost, and each cohort's own. */
  readonly damage: Celsius;
  readonly cohortDamage: readonly number[];
  /** Whether it is the half of the season in which a patch is cleared: midsummer to midwinter. */
  readonly autumn: boolean;
  /** Share of a killing frost that gets through the covers; 1 without. */
  readonly through: number;
  readonly clean: Cleaning;
  readonly cut: CuttingBack;
  readonly cleanMinutes: number;
  readonly cutMinutes: number;
  /** Whether cutting back may be offered: mayCutBack, and the numbers put into it. */
  readonly may: 'renovation' | 'dormant' | 'grower' | null;
  readonly mayInputs: readonly Input[];
  /** How fast it is picked, by this season's pickings; absent or null with too few of them. */
  readonly speed?: PickingSpeed | null;
};

export type GeneratorTold = {
  readonly litresPerHour: number;
  readonly fuel: Fuel;
  /** Money per litre; null where not told. */
  readonly price: number | null;
};

export type ProbeNow = {
  readonly id: string;
  /** null while nobody has placed it. */
  readonly place: string | null;
  readonly spot: SpotName | null;
  readonly every: Minutes;
  readonly placedAt: Instant | null;
  /** Any message, good or doubtful; null when never. */
  readonly heardAt: Instant | null;
  /** Quantity stuck on one value, and since when. */
  readonly stuck: readonly { readonly quantity: Quantity; readonly since: Instant }[];
  /** Readings refused or doubted in the last 24 hours. */
  readonly doubtful: number;
  /** Charge in % or cell voltage in V, as the probe says it. */
  readonly battery: {
    readonly value: number;
    readonly unit: '%' | 'V';
    readonly t: Instant;
  } | null;
  /** Of a probe that measures a cool room: its last check in melting ice. Left out for others. */
  readonly check?: {
    /** null for never. */
    readonly at: Instant | null;
    /** That time, or when it began to measure there. */
    readonly since: Instant;
    /** Days since then on which it measured: one in a drawer, or a clock put right, ages no check. */
    readonly days: number;
    /** Days after which it is asked for. */
    readonly every: number;
    /** Whether the farm file tells so. */
    readonly told: boolean;
  } | null;
};

export type Snapshot = {
  readonly now: Instant;
  /** The farm's calendar day that `now` falls in, and where it begins and ends. */
  readonly day: { readonly name: string; readonly begins: Instant; readonly ends: Instant };
  readonly farm: { readonly lat: number; readonly lon: number; readonly wage: number };
  readonly crops: readonly Crop[];
  readonly places: readonly PlaceNow[];
  readonly probes: readonly ProbeNow[];
  /** Keys of the tasks that stand open, for limits that differ on the way in and the way out. */
  readonly standing: readonly string[];
  /** Forecasts that somebody pushes; absent where nobody does. */
  readonly pushed?: readonly PushedForecast[] | undefined;
  /** Missing where nobody keeps lots. */
  readonly stored?: Stored;
  /** What the plan of the coming weeks asks to be sown; missing where nothing is wanted. */
  readonly sowings?: {
    readonly rows: readonly SowingNow[];
    readonly untimed: readonly UntimedNow[];
  };
  /** Batches that grow; missing where nobody keeps any. */
  readonly harvests?: readonly HarvestNow[];
  /** Missing where no trays stand. */
  readonly trays?: TraysNow;
};
