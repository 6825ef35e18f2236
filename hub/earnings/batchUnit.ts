import { batchEarnings } from '../../rules/money/index.ts';
import { type Batch, type BatchWork, batchWorks } from '../batches/index.ts';
import type { FarmCrop, WorthGap, YearSeason } from '../contract/index.ts';
import { batchMinutes, ownTrays } from './batchMinutes.ts';
import {
  type Figure,
  figureOf,
  joined,
  notNeeded,
  sum,
  type Unit,
  unknown,
  written,
} from './unit.ts';

const DAY = 86_400_000; // ms

export type BatchContext = {
  readonly find: (id: string) => Batch | undefined;
  readonly crop: FarmCrop | undefined;
  readonly season: YearSeason;
  /** Share of the crop thrown out of the store in that season; null where no lots were kept. */
  readonly storeShare: number | null;
};

/** What an ended batch brought and took. null for one that has not ended, or left no tray behind. */
export function batchUnit(batch: Batch, context: BatchContext): Unit | null {
  const { find, crop, season, storeShare } = context;
  const trays = ownTrays(batch);
  if (batch.state !== 'ended' || batch.endedAt === null || trays <= 0) return null;
  const stood = trayTime(batch, trays, batch.endedAt);
  const kg = sum(batch.cuts.map((one) => one.kg));
  const lost = joined(
    batch.cuts.map((one) => figureOf(one.lostKg, undefined)),
    sum,
  );
  const inStore = storeShare ?? 0;
  const storeLost: Figure =
    storeShare === null || batch.cuts.length === 0
      ? notNeeded
      : lost.value === null
        ? unknown
        : { value: storeShare * (kg - lost.value), from: 'lots' };
  const price = priceOf(batch, crop);
  const works = batchMinutes(
    batch,
    find,
    crop,
    stood,
    lost.from === 'unknown' ? null : kg - (lost.value ?? 0),
  );
  const minutes = joined(Object.values(works), sum);
  const figures = {
    trays: written(trays),
    days: written(stood / DAY / trays),
    kg: written(kg),
    ...{ lost, storeLost, price, minutes },
    seed: figureOf(batch.seedCost, crop?.seed, trays),
    other: figureOf(batch.otherCost, crop?.other, trays),
  };
  const isGap = (one: Figure) => one.from === 'unknown';
  const missing: WorthGap[] = [
    ...(['lost', 'price', 'seed', 'other'] as const).filter((field) => isGap(figures[field])),
    ...batchWorks.filter((work: BatchWork) => isGap(works[work])),
  ];
  const atBench = lost.from === 'unknown' ? null : (lost.value ?? 0);
  const allLost = atBench === null ? null : Math.min(kg, atBench + inStore * (kg - atBench));
  const earnings = batchEarnings({
    ...{ trays, days: stood / DAY / trays, kilograms: kg, lost: allLost },
    price: price.from === 'not-needed' ? 0 : price.value,
    ...{ seed: figures.seed.value, other: figures.other.value, minutes: minutes.value ?? 0 },
  });
  return {
    ...{ id: batch.id, of: 'batches', root: rootOf(batch, find), crop: batch.crop },
    ...{ place: longestStay(batch), season, from: batch.sownAt, to: batch.endedAt },
    ...{ figures, missing, lost: allLost, minutes: minutes.value, earnings },
  };
}

/** Time that its trays stood, one by one: trays cut or thrown out sooner left room sooner. */
function trayTime(batch: Batch, trays: number, endedAt: number): number {
  let left = trays;
  let stood = 0;
  const gone = [...batch.thrownOut, ...batch.cuts.filter(({ clears }) => clears)];
  for (const { trays: taken, at } of gone) {
    const some = Math.min(left, taken);
    left -= some;
    stood += some * Math.max(0, Math.min(at, endedAt) - batch.sownAt);
  }
  return stood + left * (endedAt - batch.sownAt);
}

/** Money per kg sold over all cuts, each at its own price. */
function priceOf({ cuts }: Batch, crop: FarmCrop | undefined): Figure {
  const prices = cuts.map(({ price, stage }) =>
    figureOf(price, (stage === 'young' ? crop?.young?.price : undefined) ?? crop?.price),
  );
  const sold = cuts.map(({ kg, lostKg }) => kg - (lostKg ?? 0));
  const all = sum(sold);
  return joined(prices, (values) =>
    all === 0
      ? sum(values) / values.length
      : sum(values.map((one, i) => one * (sold[i] ?? 0))) / all,
  );
}

/** The batch that it was sown as. */
function rootOf(batch: Batch, find: (id: string) => Batch | undefined): string {
  const parent = batch.partOf === null ? undefined : find(batch.partOf);
  return parent === undefined ? batch.id : rootOf(parent, find);
}

function longestStay({ stays, place, endedAt }: Batch): string {
  const time = new Map<string, number>();
  stays.forEach((stay, i) => {
    const until = stays[i + 1]?.from ?? endedAt ?? stay.from;
    time.set(stay.place, (time.get(stay.place) ?? 0) + until - stay.from);
  });
  const [longest] = [...time].sort((a, b) => b[1] - a[1]);
  return longest?.[0] ?? place;
}
