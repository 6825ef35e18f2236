import { meanOf, studentQuantile } from '../../rules/statistics/index.ts';
import { type Batch, type CutStage, cutStages } from '../batches/index.ts';
import type { FarmCrop } from '../contract/index.ts';
import { CONFIDENCE } from './ready.ts';
import { toldDays } from './toldNeed.ts';

const DAY = 86_400_000; // ms
const ENOUGH = 3; // batches from which an interval is told; where batches show a spread of their own
const GRAMS = 1000;

/** A mean, and an interval of it with the usual confidence: null before three batches. */
export type Figure = {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
};

/** What cutting at one stage brings, a tray. */
export type StageFigures = {
  readonly stage: CutStage;
  /** Own batches; 0: as the farm file tells. */
  readonly batches: number;
  readonly grams: Figure | null;
  readonly days: Figure | null;
  readonly moneyPerTray: Figure | null;
  readonly moneyPerTrayDay: Figure | null;
};

/** Young or later, side by side: from own cuts, else as the farm file tells; money of what was sold. */
export function cutChoice(batches: readonly Batch[], crop: FarmCrop | undefined): StageFigures[] {
  const stages = cutStages.filter(
    (stage) =>
      stage === 'later' ||
      crop?.young !== undefined ||
      batches.some(({ cuts }) => cuts.some((cut) => cut.stage === stage)),
  );
  return stages.map((stage) => {
    const price = (stage === 'young' ? (crop?.young?.price ?? crop?.price) : crop?.price) ?? null;
    const own = batches.flatMap((batch) => ofBatch(batch, stage, price));
    return own.length === 0 ? toldFigures(crop, stage, price) : fromOwn(stage, own);
  });
}

type OfBatch = {
  readonly grams: number;
  readonly days: number;
  readonly money: number | null;
};

function ofBatch(batch: Batch, stage: CutStage, usual: number | null): OfBatch[] {
  const cuts = batch.cuts.filter((cut) => cut.stage === stage);
  const trays = cuts.reduce((sum, cut) => sum + cut.trays, 0);
  if (trays === 0 || batch.state === 'withdrawn') return [];
  const sum = (of: (cut: (typeof cuts)[number]) => number) =>
    cuts.reduce((total, cut) => total + of(cut), 0);
  const priced = cuts.every(({ price }) => (price ?? usual) !== null);
  const earned = sum(({ kg, lostKg, price }) => (kg - (lostKg ?? 0)) * (price ?? usual ?? 0));
  const days = sum(({ at, trays: cut }) => ((at - batch.sownAt) / DAY) * cut) / trays;
  return [
    {
      grams: (GRAMS * sum(({ kg }) => kg)) / trays,
      days,
      money: priced ? earned / trays : null,
    },
  ];
}

function fromOwn(stage: CutStage, own: readonly OfBatch[]): StageFigures {
  const priced = own.flatMap(({ money, days }) => (money === null ? [] : [{ money, days }]));
  return {
    stage,
    batches: own.length,
    grams: figureOf(own.map(({ grams }) => grams)),
    days: figureOf(own.map(({ days }) => days)),
    moneyPerTray: figureOf(priced.map(({ money }) => money)),
    moneyPerTrayDay: figureOf(priced.flatMap(({ money, days }) => (days > 0 ? money / days : []))),
  };
}

function toldFigures(
  crop: FarmCrop | undefined,
  stage: CutStage,
  price: number | null,
): StageFigures {
  const told = (value: number | null): Figure | null =>
    value === null ? null : { value, low: null, high: null };
  const perTray = (stage === 'young' ? crop?.young?.perTray : crop?.perTray) ?? null;
  const days = toldDays(crop, stage);
  const money = perTray === null || price === null ? null : perTray * price;
  return {
    ...{ stage, batches: 0, grams: told(perTray === null ? null : GRAMS * perTray) },
    days: days && { value: days.middle, low: days.least, high: days.most },
    moneyPerTray: told(money),
    moneyPerTrayDay: told(money === null || days === null ? null : money / days.middle),
  };
}

function figureOf(values: readonly number[]): Figure | null {
  if (values.length === 0) return null;
  const n = values.length;
  const value = meanOf(values);
  if (n < ENOUGH) return { value, low: null, high: null };
  const squares = values.reduce((sum, one) => sum + (one - value) ** 2, 0);
  const half =
    (studentQuantile((1 + CONFIDENCE) / 2, n - 1) * Math.sqrt(squares / (n - 1))) / Math.sqrt(n);
  return { value, low: Math.max(0, value - half), high: value + half };
}
