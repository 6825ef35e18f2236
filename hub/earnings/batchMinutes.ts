import type { Batch, BatchWork } from '../batches/index.ts';
import type { FarmCrop } from '../contract/index.ts';
import { type Figure, figureOf, joined, notNeeded, sum, unknown } from './unit.ts';

const WEEK = 7 * 86_400_000; // ms

/** Minutes somebody wrote down, and how much of them falls on the trays in question. */
type Worked = { readonly work: BatchWork; readonly at: number; readonly minutes: number };
/** A carrying of all its trays; minutes are null where nobody wrote them down. */
type Carried = { readonly at: number; readonly minutes: number | null };
type Past = { readonly worked: readonly Worked[]; readonly carried: readonly Carried[] };

/** Trays that were never carried off as a batch of their own. */
export const ownTrays = ({ trays, parted }: Batch) => trays - sum(parted.map((part) => part.trays));

/** Trays that were with a batch at some time, whatever became of them. */
const traysAt = ({ trays, parted }: Batch, at: number) =>
  trays - sum(parted.filter((part) => part.at < at).map((part) => part.trays));

/** All that was done to the trays of a batch, those carried off later among them. */
function pastOf(batch: Batch, find: (id: string) => Batch | undefined): Past {
  const parent = batch.partOf === null ? undefined : find(batch.partOf);
  const parting = parent?.parted.find(({ into }) => into === batch.id);
  const before: { worked: Worked[]; carried: Carried[] } = { worked: [], carried: [] };
  if (parent && parting) {
    const past = pastOf(parent, find);
    const share = (at: number) => batch.trays / traysAt(parent, at);
    for (const one of past.worked)
      if (one.at <= parting.at)
        before.worked.push({ ...one, minutes: one.minutes * share(one.at) });
    for (const { at, minutes } of past.carried)
      if (at <= parting.at)
        before.carried.push({ at, minutes: minutes === null ? null : minutes * share(at) });
    before.carried.push({ at: parting.at, minutes: null });
  }
  return {
    worked: [...before.worked, ...batch.works],
    carried: [...before.carried, ...batch.moves],
  };
}

/**
 * Minutes of each kind of work on the trays of a batch that stayed with it: what somebody wrote
 * down, else what the farm file tells for a tray, a week or a kilogram. Work of before trays were
 * carried off is shared by trays.
 */
export function batchMinutes(
  batch: Batch,
  find: (id: string) => Batch | undefined,
  crop: FarmCrop | undefined,
  trayDaysMs: number,
  packedKg: number | null,
): Readonly<Record<BatchWork, Figure>> {
  const trays = ownTrays(batch);
  const told = crop?.minutes;
  const { worked, carried } = pastOf(batch, find);
  const kept = (at: number) => (traysAt(batch, at) === 0 ? 0 : trays / traysAt(batch, at));
  const own = (work: BatchWork): number | null => {
    const some = worked.filter((one) => one.work === work);
    return some.length === 0 ? null : sum(some.map(({ minutes, at }) => minutes * kept(at)));
  };
  /** Written down in one sum, or bit by bit with each cut or carrying. */
  const withBits = (work: BatchWork, bits: readonly Figure[]): Figure => {
    const whole = own(work);
    if (whole === null) return bits.length === 0 ? notNeeded : joined(bits, sum);
    // A sum of its own stands for the bits that tell nothing; those that do come on top.
    const written = bits.flatMap(({ value, from }) => (from === 'written' ? (value ?? []) : []));
    return { value: whole + sum(written), from: 'written' };
  };
  const cut = batch.cuts.reduce((all, { kg }) => all + kg, 0);
  return {
    sowing: figureOf(own('sowing'), told?.sow, trays),
    tending: figureOf(own('tending'), told?.tend, trayDaysMs / WEEK),
    moving: withBits(
      'moving',
      carried.map(({ minutes, at }) =>
        figureOf(minutes === null ? null : minutes * kept(at), told?.move, trays),
      ),
    ),
    cutting: withBits(
      'cutting',
      batch.cuts.map((one) => figureOf(one.minutes, told?.cut, one.trays)),
    ),
    packing:
      own('packing') === null && cut === 0
        ? notNeeded
        : own('packing') === null && packedKg === null
          ? unknown
          : figureOf(own('packing'), told?.pack, packedKg ?? 0),
  };
}
