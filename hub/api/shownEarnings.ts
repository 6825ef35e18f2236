import type { CropsLearned, PickOnAnswer, WorthRange, WorthUnit } from '../contract/index.ts';
import { type Asked, CONFIDENCE, earnings, type Grouped, type Unit } from '../earnings/index.ts';
import { cropName } from '../lots/index.ts';
import {
  pickOnWords,
  stopWords,
  worthGroupName,
  worthHow,
  worthUnitWords,
  worthWords,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, rounded, roundedOrNull } from './present.ts';

/** Earnings with names and words, rounded to what anybody can weigh or count. */
export function shownEarnings(parts: ApiParts, from?: string, to?: string): CropsLearned {
  const now = parts.clock.now();
  const farm = parts.farm();
  const { money, wage } = farm.file.farm;
  const calendar = parts.calendar();
  const found = earnings({
    ...{ batches: parts.batches.all(), picks: parts.picks.all() },
    ...{ lots: parts.snapshots.lots.all(), farm, calendar, now, from, to },
  });
  const name = (crop: string) => cropName(farm, crop);
  const about = { money, wage };
  const crops = new Map(
    found.groups.filter(({ by }) => by === 'crop').map((one) => [`${one.of} ${one.crop}`, one]),
  );
  return {
    asOf: iso(now),
    from: from ?? null,
    to: to ?? null,
    ...{ money, wage, confidence: CONFIDENCE, growing: found.growing },
    groups: found.groups.map((group) => {
      const named = worthGroupName({
        ...group,
        crop: group.crop && name(group.crop),
        place: group.place && nameOf(parts, group.place),
      });
      const shown = shownGroup(group);
      return { ...shown, name: named, words: worthWords({ ...shown, name: named }, about) };
    }),
    stops: found.stops.map((stop) => {
      const group = crops.get(`${stop.of} ${stop.crop}`);
      const shown = {
        ...stop,
        name: name(stop.crop),
        perHour: rangeOf(stop.perHour),
        priceToPay: rangeOf(stop.priceToPay),
        instead: stop.instead && {
          ...stop.instead,
          name: name(stop.instead.crop),
          perTrayDay: rangeOf(stop.instead.perTrayDay, 4) ?? stop.instead.perTrayDay,
        },
      };
      const own = rangeOf(group?.perTrayDay ?? null, 4);
      return { ...shown, words: stopWords(shown, { ...about, perTrayDay: own }) };
    }),
    pickOns: found.pickOns.map((asked) => shownPickOn(parts, asked)),
    units: found.units.map((unit) => shownUnit(parts, unit)),
    how: worthHow({ lots: found.units.some(({ figures }) => figures.storeLost?.from === 'lots') }),
  };
}

const rangeOf = (range: WorthRange | null, digits = 2): WorthRange | null =>
  range && {
    n: range.n,
    ratio: rounded(range.ratio, digits),
    low: roundedOrNull(range.low, digits),
    high: roundedOrNull(range.high, digits),
  };

const shownGroup = (group: Grouped): Grouped => ({
  ...group,
  sums: Object.fromEntries(
    Object.entries(group.sums).map(([key, value]) => [key, rounded(value, 3)]),
  ) as Grouped['sums'],
  perHour: rangeOf(group.perHour),
  perTray: rangeOf(group.perTray),
  perTrayDay: rangeOf(group.perTrayDay, 4),
  perTrayKg: rangeOf(group.perTrayKg, 3),
  breakEven: rangeOf(group.breakEven),
  lossShare: roundedOrNull(group.lossShare, 4),
});

function shownUnit(parts: ApiParts, unit: Unit): WorthUnit {
  const { id, of, crop, place, season, figures, missing, earnings: earned, minutes, lost } = unit;
  const day = parts.calendar().dayOf;
  const { wage } = parts.farm().file.farm;
  const value = (field: keyof typeof figures) => figures[field]?.value ?? 0;
  const sold = lost === null ? null : value('kg') - lost;
  const costs = value('seed') + value('other');
  const pays = earned !== null && minutes !== null && sold !== null && sold > 0;
  return {
    ...{ id, of, crop, place, season, missing: [...missing] },
    name: cropName(parts.farm(), crop),
    placeName: nameOf(parts, place),
    ...{ from: day(unit.from), to: day(unit.to) },
    figures: Object.fromEntries(
      Object.entries(figures).map(([field, { value: v, from }]) => [
        field,
        { value: roundedOrNull(v, 3), from },
      ]),
    ) as WorthUnit['figures'],
    sold: roundedOrNull(sold, 3),
    earned: roundedOrNull(earned?.earned ?? null),
    perTray: roundedOrNull(earned?.perTray ?? null),
    perTrayDay: roundedOrNull(earned?.perTrayDay ?? null, 4),
    perHour: minutes === null ? null : roundedOrNull(earned?.perHour ?? null),
    breakEven: pays ? rounded((costs + (minutes / 60) * wage) / sold) : null,
    words: worthUnitWords(missing),
  };
}

function shownPickOn(parts: ApiParts, all: Asked): PickOnAnswer {
  const { perKilogram, missing, ...asked } = all;
  const { money, wage } = parts.farm().file.farm;
  const three = (range: PickOnAnswer['perHour']) =>
    range && {
      expected: rounded(range.expected),
      low: rounded(range.low),
      high: rounded(range.high),
    };
  const shown = {
    ...asked,
    name: cropName(parts.farm(), asked.crop),
    placeName: nameOf(parts, asked.place),
    perHour: three(asked.perHour),
    speed: three(asked.speed),
    breakEvenSpeed: roundedOrNull(asked.breakEvenSpeed),
    planner: plannerOf(parts, all),
  };
  return { ...shown, words: pickOnWords(shown, { money, wage, perKilogram, missing }) };
}

/** The planner's odds, where the patch has a plan. */
function plannerOf(parts: ApiParts, { place, crop, next }: Asked): PickOnAnswer['planner'] {
  const patch = parts.season.planned().find((one) => one.id === place && one.crop === crop);
  if (patch === undefined) return null;
  const plan = parts.season.plan(patch, parts.clock.now(), parts.lastLook()?.outlook.frost ?? []);
  if (plan.window === null) return null;
  const row = plan.rows.find(({ day }) => day === next);
  return { advice: plan.advice, best: plan.window.best, survives: row?.survives ?? null };
}
