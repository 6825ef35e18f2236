import type { Evidence, TaskKind } from '../contract/index.ts';

/** For each kind the pairs of facts that make its reason; the first pair that is there is said. */
const reasons: Partial<Record<TaskKind, readonly (readonly string[])[]>> = {
  'move-trays': [
    ['mould-seen'],
    ['moved-days-ago'],
    ['open-up-first'],
    ['shade-first'],
    ['band-hours-more', 'moving-spares'],
    ['better-hours-a-day', 'moving-spares'],
  ],
  water: [
    ['rain-ahead'],
    ['soil-moisture-now', 'water-before-the-heat'],
    ['soil-moisture-now', 'water-before-evening'],
    ['soil-moisture-now', 'water-in-the-morning'],
  ],
  shade: [
    ['shaded'],
    ['open-up-first'],
    ['hottest-ahead', 'shade-off-in-the-evening'],
    ['hottest-ahead'],
  ],
  'open-up': [
    ['open-damp-hours-fewer', 'minutes-spared'],
    ['open-damp-hours-fewer'],
    ['minutes-spared'],
    ['night-goes-first'],
    ['outside-freezing'],
    ['heat-limit-near', 'outside-cooler-by'],
    ['inside-temperature', 'outside-damper-by'],
    ['wet-hours', 'outside-drier-by', 'night-needs-warmth'],
    ['wet-hours', 'outside-drier-by'],
    ['inside-temperature', 'outside-cooler-by'],
  ],
  'close-up': [
    ['usually-shut-in'],
    ['still-too-warm-to-close'],
    ['stay-open-dry'],
    ['tonight-outside-low', 'film-not-enough'],
    ['tonight-outside-low', 'purge-first'],
    ['tonight-outside-low', 'closed-stays-damp'],
  ],
  cover: [['chance-of-damage', 'tonight-low']],
  'pick-now': [['rain-ahead'], ['chance-for-ripe', 'tonight-low']],
  'cut-back': [
    ['cutting-allowed', 'cutting-brings'],
    ['still-to-gain', 'keep-green-leaves'],
  ],
  'shut-door': [
    ['door-open-minutes', 'room-air'],
    ['steep-rise', 'room-air'],
  ],
  'run-generator': [
    ['off-minutes', 'minutes-to-limit'],
    ['off-minutes', 'room-air'],
    ['run-within-minutes', 'run-for-minutes'],
    ['run-within-minutes'],
  ],
  'see-to-unit': [
    ['off-minutes', 'room-air'],
    ['cycle-moved-by', 'may-be'],
    ['colder-than-ever', 'may-be'],
    ['top-to-bottom-minutes', 'may-be'],
    ['no-way-down-minutes', 'may-be'],
    ['coil-below-air', 'room-air'],
    ['cycle-bottom-above', 'room-air'],
  ],
  sow: [
    ['sow-late', 'sow-chance'],
    ['sow-late'],
    ['sow-for', 'sow-chance'],
    ['sow-for', 'sow-first-batches'],
    ['sow-for', 'sow-by-told-days'],
  ],
  harvest: [
    ['over-since'],
    ['seen-ready', 'harvest-for'],
    ['ready-chance', 'harvest-for'],
    ['ready-expected', 'harvest-for'],
    ['seen-ready', 'over-in'],
    ['ready-chance', 'over-in'],
    ['ready-expected', 'over-in'],
  ],
  'sell-first': [
    ['lot-days-left', 'lot-over-before-sale'],
    ['lot-days-left', 'lot-slack'],
  ],
  'move-produce': [
    ['above-limit-minutes', 'produce-estimate'],
    ['minutes-to-limit', 'produce-estimate'],
  ],
};

// A fact that asks for at least its limit carries the reason only where it reaches it.
const REACHES = new Set(['wet-hours', 'outside-drier-by', 'outside-cooler-by']);
const carries = ({ what, value, limit }: Evidence) =>
  !REACHES.has(what) || typeof value !== 'number' || typeof limit !== 'number' || value >= limit;

const pairOf = (kind: TaskKind, because: readonly Evidence[]) =>
  reasons[kind]?.find((terms) =>
    terms.every((term) => because.some((fact) => fact.what === term && carries(fact))),
  );

/** The facts that are said of a task, in order: those that make its reason, or all of them. */
export const factsSaid = (kind: TaskKind, because: readonly Evidence[]): readonly string[] =>
  pairOf(kind, because) ?? because.map(({ what }) => what);

/** Whether these facts make a reason that is known, of which first and last suffice. */
export const isReason = (kind: TaskKind, because: readonly Evidence[]): boolean =>
  pairOf(kind, because) !== undefined;
