import { lotLife } from '../../rules/cooler/index.ts';
import type { Farm } from '../farm/index.ts';
import { cropName, keepingOf } from '../lots/index.ts';
import type { Bounds, Growth } from './growth.ts';

/** A crop that no source speaks of and nobody tells of is planned as if it kept so long. Ours. */
const KEEPS_UNKNOWN = 3; // d
const LONGEST_KEPT = 60; // d, as far as sowingDay reckons
const ROOM = 5; // °C, where no cool room tells what it is set to; ours

/** What planning knows of a crop. */
export type CropFacts = {
  readonly id: string;
  readonly name: string;
  /** Money per kg, and of seed for a tray; null where not told. */
  readonly price: number | null;
  readonly seed: number | null;
  readonly sowMinutes: number | null;
  readonly cutMinutes: number | null;
  readonly base: Bounds;
  /** Heat units and kg a tray of past batches; one weight of the farm file where none ended yet. */
  readonly degreeDays: readonly number[];
  readonly perTray: readonly number[];
  /** Past batches that tell of the weight. */
  readonly weighed: number;
  readonly told: readonly [number, number] | null;
  /** Whole days it keeps in the cool room, at the least. */
  readonly keepDays: number;
  readonly regrows: boolean;
};

export function cropFacts(farm: Farm, growth: Growth, id: string): CropFacts {
  const told = farm.crop(id);
  const past = growth.crop(id);
  const days = told?.days;
  const usual = told?.perTray ?? 0;
  const room = farm.places.find((place) => place.kind === 'cool-room');
  const keeping = keepingOf(farm, id);
  const { days: left } = lotLife(keeping, [], { at: room?.setPoint ?? ROOM });
  return {
    id,
    name: cropName(farm, id),
    price: told?.price ?? null,
    seed: told?.seed ?? null,
    sowMinutes: told?.minutes?.sow ?? null,
    cutMinutes: told?.minutes?.cut ?? null,
    base: past.base,
    degreeDays: past.degreeDays,
    perTray: past.perTray.length > 0 ? past.perTray : usual > 0 ? [usual] : [],
    weighed: past.perTray.length,
    told: days === undefined ? null : typeof days === 'number' ? [days, days] : days,
    keepDays: Math.floor(Math.min(LONGEST_KEPT, left?.least ?? KEEPS_UNKNOWN)),
    regrows: told?.regrows ?? false,
  };
}

export const meanOf = (all: readonly number[]): number | null =>
  all.length === 0 ? null : all.reduce((sum, each) => sum + each, 0) / all.length;

const FEWEST = 3; // batches before their spread is used; ours, as traysFor

/** Standard deviation of a tray of one new batch, kg, and its degrees of freedom; null with few. */
export function traySpread(crop: CropFacts): { readonly sd: number; readonly df: number } | null {
  const { perTray, weighed } = crop;
  const mean = meanOf(perTray);
  if (weighed < FEWEST || mean === null) return null;
  const squares = perTray.reduce((sum, each) => sum + (each - mean) ** 2, 0);
  const n = perTray.length;
  return { sd: Math.sqrt((squares / (n - 1)) * (1 + 1 / n)), df: n - 1 };
}
