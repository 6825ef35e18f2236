import type { TaskKind } from '../../rules/decide/index.ts';
import type { Bed } from '../../simulators/flowerBed.ts';
import type { TrayCrop, TrayLoss } from '../../simulators/trayCrop.ts';
import { trayKinds } from '../../simulators/trayCrop.ts';
import { FRUIT_PRICE, WAGE } from './seasonFarm.ts';

// What a season came to: kg, losses by cause, minutes, tasks.

/** Work that the table is about; tasks of other kinds are counted and not followed. */
export const followed = [
  'leave-open',
  'open-up',
  'close-up',
  'cover',
  'uncover',
  'move-trays',
] as const;
export const isFollowed = (kind: TaskKind) => (followed as readonly string[]).includes(kind);
/** A kind of task; leaving open tonight is one of its own here. */
export type Counted = TaskKind | 'leave-open';

export type Work = 'vents' | 'covers' | 'carrying' | 'answers';
export type TaskCount = {
  asked: number;
  done: number;
  /** Answered "done" with nothing left to do: it stood so already. */
  already: number;
  minutesAsked: number;
  minutesDone: number;
};
export type Books = {
  readonly kg: Record<TrayCrop | 'strawberry', number>;
  readonly lostKg: Record<TrayCrop, Record<TrayLoss, number>>;
  readonly fruitLost: { frost: number; unvisited: number; scorch: number };
  readonly minutes: Record<Work, number>;
  readonly tasks: Partial<Record<Counted, TaskCount>>;
  alarms: number;
  batches: number;
};

export const emptyBooks = (): Books => ({
  kg: { basil: 0, 'pea-shoots': 0, strawberry: 0 },
  lostKg: {
    basil: { mould: 0, scorch: 0, chill: 0 },
    'pea-shoots': { mould: 0, scorch: 0, chill: 0 },
  },
  fruitLost: { frost: 0, unvisited: 0, scorch: 0 },
  minutes: { vents: 0, covers: 0, carrying: 0, answers: 0 },
  ...{ tasks: {}, alarms: 0, batches: 0 },
});

export function countTask(books: Books, kind: Counted): TaskCount {
  const none = { asked: 0, done: 0, already: 0, minutesAsked: 0, minutesDone: 0 };
  const count = books.tasks[kind] ?? none;
  books.tasks[kind] = count;
  return count;
}

export function countBed(books: Books, bed: Bed): void {
  books.kg.strawberry += bed.set + bed.open.reduce((sum, kg) => sum + kg, 0);
  books.fruitLost.frost += bed.lost.frost;
  books.fruitLost.unvisited += bed.lost.unvisited;
  books.fruitLost.scorch += bed.lost.scorch;
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
const crops = Object.keys(trayKinds) as TrayCrop[];

/** Money of what was cut and picked. */
export const takings = ({ kg }: Books) =>
  FRUIT_PRICE * kg.strawberry + sum(crops.map((crop) => trayKinds[crop].price * kg[crop]));
/** Money of what was lost, by cause. */
export function lossMoney({ lostKg, fruitLost }: Books) {
  const of = (cause: TrayLoss) =>
    sum(crops.map((crop) => trayKinds[crop].price * lostKg[crop][cause]));
  return {
    mould: of('mould'),
    heat: of('scorch') + FRUIT_PRICE * fruitLost.scorch,
    chill: of('chill'),
    frost: FRUIT_PRICE * fruitLost.frost,
    unvisited: FRUIT_PRICE * fruitLost.unvisited,
  };
}
export const allLost = (books: Books) => sum(Object.values(lossMoney(books)));
export const allKg = ({ kg }: Books) => sum(Object.values(kg));
export const allMinutes = ({ minutes }: Books) => sum(Object.values(minutes));
export const doneMinutes = ({ tasks }: Books) =>
  sum(followed.map((kind) => tasks[kind]?.minutesDone ?? 0));
export const askedMinutes = ({ tasks }: Books) =>
  sum(followed.map((kind) => tasks[kind]?.minutesAsked ?? 0));
export const wageOf = (minutes: number) => (minutes / 60) * WAGE;
