import type { BatchEvent } from '../../../../hub/batches/index.ts';
import type { Ready } from '../../../../hub/growing/index.ts';
import { createChance } from '../../../../simulators/seed.ts';
import { growthAt, type HiddenCrop, hiddenCrops, lightShare } from './hiddenCrop.ts';
import { type TrialPlan, trialFarm } from './trialFarm.ts';
import type { TrialHour } from './trialWeather.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const LOOKS_AT = 8 * HOUR; // o'clock
const EVERY = 9; // days between two sowings of a crop
const SOWN_AT = 10 * HOUR;
const LONGEST = 150; // days; what is not ready by then is thrown out

export type Moment = 'sown' | 'half way' | 'three days before';
/** What was said of one batch at one moment, and what came. */
export type Said = {
  readonly plan: TrialPlan;
  readonly crop: string;
  readonly batch: string;
  readonly moment: Moment;
  readonly ready: Ready;
  readonly base: number;
  /** When the grower noted it. */
  readonly actual: number;
  readonly actualDay: string;
  /** By the mean days of the batches noted before; null before the first. */
  readonly byDays: number | null;
};

type Sowing = {
  readonly id: string;
  readonly crop: HiddenCrop;
  readonly sownAt: number;
  readonly moves: { readonly at: number; readonly place: 'long-house' | 'sun-house' } | null;
  readonly place: 'long-house' | 'sun-house';
  readonly noted: number | null;
};

/** One farm over some years: crops sown, grown by the hidden rule, looked at, noted, cut. */
export function runSeasons(plan: TrialPlan, years: number): Said[] {
  const from = Date.UTC(2022, 11, 1);
  const farm = trialFarm(plan, from, Date.UTC(2023 + years, 0, 20));
  const sowings = sowingsOf(plan, farm.hours, years);
  const { core, clock } = farm;
  const said: Said[] = [];
  const daysOf = new Map<string, number[]>();
  const steps: { readonly t: number; readonly act: () => void }[] = [];
  const tell = (id: string, event: BatchEvent) =>
    core.batches.add(id, null, event, 'Ann', clock.now());
  const ask = (sowing: Sowing, moment: Moment) => {
    const batch = core.batches.get(sowing.id);
    if (!batch || sowing.noted === null) throw new Error(`Expected a batch, got ${sowing.id}`);
    const past = daysOf.get(sowing.crop.id) ?? [];
    const mean = past.reduce((sum, days) => sum + days, 0) / past.length;
    said.push({
      ...{ plan, crop: sowing.crop.id, batch: sowing.id, moment, actual: sowing.noted },
      ready: core.growing.ready(batch, clock.now()).later,
      base: core.growing.crop(sowing.crop.id).base.lower,
      actualDay: new Date(sowing.noted).toISOString().slice(0, 10),
      byDays: past.length === 0 ? null : sowing.sownAt + mean * DAY,
    });
  };
  for (const sowing of sowings) {
    const { id, crop, sownAt, place, moves, noted } = sowing;
    const facts = {
      ...{ crop: crop.id, variety: null, trays: 6, sownAt, place },
      ...{ seedCost: null, otherCost: null, meantFor: null },
    };
    steps.push({ t: sownAt, act: () => tell(id, { event: 'sown', facts, partOf: null }) });
    if (moves && moves.at < (noted ?? Number.POSITIVE_INFINITY)) {
      const event: BatchEvent = { event: 'moved', ...moves, minutes: null };
      steps.push({ t: moves.at, act: () => tell(id, event) });
    }
    if (noted === null) continue;
    steps.push({ t: sownAt, act: () => ask(sowing, 'sown') });
    const half = sownAt + Math.floor((noted - sownAt) / 2 / DAY) * DAY;
    steps.push({ t: half, act: () => ask(sowing, 'half way') });
    steps.push({ t: noted - 3 * DAY, act: () => ask(sowing, 'three days before') });
    steps.push({
      t: noted,
      act: () => {
        tell(id, { event: 'noted', at: noted, look: 'ready', note: null, photo: null });
        daysOf.set(crop.id, [...(daysOf.get(crop.id) ?? []), (noted - sownAt) / DAY]);
      },
    });
    const cutAt = noted + (3 * DAY - ((noted / DAY) % 3) * DAY);
    const cut: BatchEvent = {
      ...{ event: 'cut', at: cutAt, kg: 2, trays: 6, stage: 'later', clears: true },
      ...{ minutes: 20, price: null, lostKg: null, note: null },
    };
    steps.push({ t: cutAt, act: () => tell(id, cut) });
  }
  for (const { t, act } of steps.sort((a, b) => a.t - b.t)) {
    clock.set(t);
    act();
  }
  farm.close();
  return said;
}

function sowingsOf(plan: TrialPlan, hours: readonly TrialHour[], years: number): Sowing[] {
  const chance = createChance(plan.seed, 'batches');
  const first = hours[0]?.t ?? 0;
  const at = (t: number) => hours[Math.round((t - first) / HOUR)];
  const out: Sowing[] = [];
  let n = 0;
  for (let year = 2023; year < 2023 + years; year++)
    for (const [index, crop] of hiddenCrops.entries())
      for (let day = crop.season[0] + index; day < crop.season[1]; day += EVERY) {
        n += 1;
        const sownAt = Date.UTC(year, 0, day) + SOWN_AT;
        const place = chance.uniform(3 * n) < 0.5 ? 'long-house' : 'sun-house';
        const other = place === 'long-house' ? 'sun-house' : 'long-house';
        const moved = chance.uniform(3 * n + 1) < 0.3;
        const moves = moved ? ({ at: sownAt + 9 * DAY + 2 * HOUR, place: other } as const) : null;
        const takes = crop.days * Math.exp(crop.unlike * chance.normal(3 * n + 2));
        out.push({
          ...{ id: `${crop.id}-${n}`, crop, sownAt, place, moves },
          noted: notedAt(crop, takes, sownAt, place, moves),
        });
      }
  return out;

  function notedAt(
    crop: HiddenCrop,
    takes: number,
    sownAt: number,
    place: Sowing['place'],
    moves: Sowing['moves'],
  ): number | null {
    let grown = 0;
    let light: number[] = [];
    let ready = false;
    for (let t = sownAt + HOUR; t < sownAt + LONGEST * DAY; t += HOUR) {
      const hour = at(t);
      if (hour === undefined) return null;
      light = [...light, hour.light].slice(-24);
      const lit = lightShare(crop, (light.reduce((sum, one) => sum + one, 0) / light.length) * 24);
      const where = moves !== null && t > moves.at ? moves.place : place;
      grown += (growthAt(crop, hour[where]) * lit) / 24;
      ready ||= grown >= takes;
      const looks = Math.floor(t / DAY) % plan.looks === 0 && t % DAY === LOOKS_AT;
      if (ready && looks) return t;
    }
    return null;
  }
}
