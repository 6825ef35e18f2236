import { type Cohort, type FruitPatch, flowerToRipe, ripeDay } from '../../rules/batches/index.ts';
import type { PatchNow } from '../../rules/decide/index.ts';
import { damageLimit, seasonDay } from '../../rules/frost/index.ts';
import { celsius } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { CutBack, Day, FarmPlace, PatchTerms } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import type { Picked } from '../picks/index.ts';
import { type Climate, makeClimate } from './climate.ts';
import { frostNights } from './frostNights.ts';
import { type Counted, countedFruit, type PatchEntries, termsOf } from './fruit.ts';
import { mayCut } from './mayCut.ts';
import { type Figures, figuresOf } from './money.ts';
import { damageOf } from './outlook.ts';
import type { SiteRecord } from './siteRecord.ts';

/** How far the planner looks: twelve weeks, from flowers of today to their last fruit. Ours. */
export const HORIZON = 84; // days
const WET_AHEAD = 28; // days whose wet chance goes into the plan; ours
const STILL_FLOWER = 0.2; // of the way to ripe; then it is green fruit. Ours
const RIPENING = 0.25; // of the way to ripe, at its end, in which fruit rots; ours

export const CROP = 'strawberry';
const USUAL_DAMAGE = -2.2; // °C; green fruit, extension tables: rules/frost/damageLimits

/** Everything the planner knows of one patch. */
export type PatchFacts = {
  readonly now: PatchNow;
  readonly today: string;
  readonly counted: Counted | null;
  readonly terms: PatchTerms;
  readonly figures: Figures;
  readonly climate: Climate;
  readonly flowerUnits: number | null;
  readonly assumed: CutBack['assumed'];
  /** Of each coming day: its date, and how likely it is wet; null where not known. */
  readonly wet: readonly (number | null)[];
  readonly dates: readonly string[];
};

export function patchFacts(
  site: SiteRecord,
  ownDays: readonly Day[],
  entries: PatchEntries & { readonly picked: readonly Picked[] },
  place: FarmPlace,
  farm: Farm,
  calendar: Calendar,
  today: string,
): PatchFacts {
  const terms = termsOf(entries);
  const autumn = seasonDay(today, site.hemisphere).half === 'autumn';
  const figures = figuresOf(terms, farm, place, autumn, entries.picked);
  const climate = makeClimate(site, ownDays, CROP, calendar, today);
  const flowerUnits =
    terms.flowerUnits ?? (climate.warmMean === null ? null : flowerToRipe(climate.warmMean));
  const { counted, stale } = countedFruit(entries, climate, flowerUnits, calendar, today);
  const dates = Array.from({ length: HORIZON }, (_, index) => calendar.add(today, index + 1));
  const units = dates.map(climate.units);
  const wet = dates.map(climate.wet);
  const damage = damageOf(farm, place) ?? USUAL_DAMAGE;
  const flowerDamage = place.cover?.damage ?? damageLimit(CROP, 'open-flower')?.critical ?? damage;
  // Covers go on when the evening's task asks for them, and save what the farm file says.
  const through = place.cover ? 1 - place.cover.effect : 1;
  const chances = (limit: number) =>
    frostNights(site, limit, today, HORIZON)?.map((chance) => through * chance) ?? null;
  const nights = chances(damage);
  const flowerNights = flowerDamage === damage ? nights : chances(flowerDamage);
  const wetAhead = wet.slice(0, WET_AHEAD).filter((chance) => chance !== null);

  const missing = [
    ...(counted === null ? ['fruit-count'] : stale ? ['fresh-fruit-count'] : []),
    ...(figures.price === null ? ['price'] : []),
    ...(units.includes(null) || flowerUnits === null ? ['climate-of-the-place'] : []),
    ...(nights === null || flowerNights === null ? ['frost-years'] : []),
    ...(wetAhead.length === 0 ? ['wet-days'] : []),
  ];
  const cohorts = (counted?.cohorts ?? []).filter(({ gone }) => !gone);
  const fruit =
    missing.length > 0
      ? null
      : patchOf({
          ...{ cohorts, figures, flowerUnits: flowerUnits ?? 0 },
          units: units.map((each) => each ?? 0),
          nights: nights ?? [],
          flowerNights: flowerNights ?? [],
          wet: wetAhead.reduce((sum, chance) => sum + chance, 0) / wetAhead.length,
        });
  const { may, inputs } = mayCut(site, terms, today, farm.file.farm.lat);
  const hour = figures.wage / 60;
  const now: PatchNow = {
    missing,
    fruit,
    damage: celsius(damage),
    cohortDamage: cohorts.map(({ stage }) => (stage === 'flower' ? flowerDamage : damage)),
    ...{ autumn, through },
    clean: {
      rotWet: figures.cleanRotWet,
      rotDry: figures.cleanRotDry,
      cost: figures.cleanMinutes * hour,
    },
    cut: {
      hygiene: figures.hygiene,
      cost: figures.cutMinutes * hour,
      nextYear: figures.nextYear,
      // Once dormant, or right after the crop, the leaves are no longer wanted.
      lostShare: may === 'renovation' || may === 'dormant' ? 0 : figures.lostShare,
    },
    ...{ cleanMinutes: figures.cleanMinutes, cutMinutes: figures.cutMinutes },
    ...{ may, mayInputs: inputs, speed: figures.speed },
  };
  const assumed: CutBack['assumed'] = [
    ...figures.assumed,
    {
      ...{ what: 'flowerUnits', value: flowerUnits, unit: '°C d' },
      from: terms.flowerUnits !== undefined ? 'told' : 'usual',
    },
    ...(place.cover
      ? [
          {
            ...{ what: 'coversSave', value: place.cover.effect, unit: 'probability' },
            from: 'farm-file' as const,
          },
        ]
      : []),
    ...(climate.from.units === null
      ? []
      : [{ what: 'unitsAhead', value: units[0] ?? null, unit: '°C d', from: climate.from.units }]),
    ...(climate.from.wet === null
      ? []
      : [{ what: 'wetDays', value: wet[0] ?? null, unit: 'probability', from: climate.from.wet }]),
  ];
  return { now, today, counted, terms, figures, climate, flowerUnits, assumed, wet, dates };
}

function patchOf(from: {
  readonly cohorts: Counted['cohorts'];
  readonly figures: Figures;
  readonly flowerUnits: number;
  readonly units: readonly number[];
  readonly nights: readonly number[];
  readonly flowerNights: readonly number[];
  readonly wet: number;
}): FruitPatch {
  const { figures, units, nights, flowerNights, flowerUnits } = from;
  const hour = figures.wage / 60;
  const cohorts = from.cohorts.map((each): Cohort => {
    const needed = each.units ?? 0;
    const rotsFrom = ripeDay(units, needed - RIPENING * flowerUnits) ?? units.length;
    const cohort = { mass: each.kg, units: needed, rotsFrom };
    if (each.stage !== 'flower') return cohort;
    // Flowers are tenderer than the green fruit they become on the way.
    let left = needed - (1 - STILL_FLOWER) * flowerUnits;
    const killed = units.map((warmth, night) => {
      const chance = left > 0 ? flowerNights[night] : nights[night];
      left -= warmth;
      return chance ?? 0;
    });
    return { ...cohort, killed };
  });
  return {
    cohorts,
    units,
    killed: nights,
    rotWet: figures.rotWet,
    rotDry: figures.rotDry,
    wetChance: from.wet,
    margin: (figures.price ?? 0) - figures.minutesPerKg * hour,
    perPicking: figures.minutesPerPicking * hour,
    perDay: figures.perDay,
  };
}
