import {
  type Calibration,
  offsetCalibration,
  twoPointCalibration,
} from '../../rules/cooler/index.ts';
import type { Store } from '../store/index.ts';

/** A correction of what a probe sends, from a time on. What is stored already stays as it is. */
export type Correction = Calibration & {
  readonly probe: string;
  readonly quantity: string;
  readonly from: number;
};

const KIND = 'correction';
const NONE: Calibration = { slope: 1, intercept: 0 };

/**
 * Corrections found by checks, which come before those of the farm file until that is changed.
 * Held in memory, because every reading asks for them; the journal keeps them.
 */
export function makeCorrections(store: Store) {
  const corrections = new Map<string, Correction[]>();
  let read = 0;
  const key = (probe: string, quantity: string) => `${probe}\n${quantity}`;
  const refresh = () => {
    for (const { id, body } of store.journal.after(KIND, read)) {
      read = id;
      const one = body as Correction;
      const own = corrections.get(key(one.probe, one.quantity)) ?? [];
      own.push(one);
      // A check told late does not undo a later one.
      own.sort((a, b) => a.from - b.from);
      corrections.set(key(one.probe, one.quantity), own);
    }
  };
  refresh();
  /** The one that holds at a time: the last that had begun, of two at once the one entered last. */
  const at = (probe: string, quantity: string, t: number): Correction | undefined =>
    corrections.get(key(probe, quantity))?.findLast(({ from }) => from <= t);
  const fromFile = (probe: string, quantity: string): Calibration => ({
    ...NONE,
    intercept: store.probes.offsets(probe)[quantity] ?? 0,
  });

  return {
    /** After another process, or the farm file, changed them. */
    refresh,
    at,
    /** What is added to a raw value sent at `t`; undefined where only the farm file tells. */
    added(probe: string, quantity: string, raw: number, t: number): number | undefined {
      const one = at(probe, quantity, t);
      return one && (one.slope - 1) * raw + one.intercept;
    },
    /**
     * The correction by which these readings, as the hub showed them at `t`, would have been true.
     * `doubts` is what speaks against a second point.
     */
    by(
      probe: string,
      points: readonly { readonly reading: number; readonly reference: number }[],
      t: number,
    ): { correction: Calibration; doubts: readonly ('too-near' | 'slope')[] } {
      const { slope, intercept } = at(probe, 'temperature', t) ?? fromFile(probe, 'temperature');
      const [first, second] = points.map(({ reading, reference }) => ({
        raw: (reading - intercept) / slope,
        reference,
      }));
      if (!first) return { correction: NONE, doubts: [] };
      if (!second) return { correction: offsetCalibration(first.raw, first.reference), doubts: [] };
      const { doubts, ...correction } = twoPointCalibration({
        raw1: first.raw,
        reference1: first.reference,
        raw2: second.raw,
        reference2: second.reference,
      });
      return { correction, doubts };
    },
    /** Begins a correction; in the caller's transaction. */
    begin(correction: Correction, who: string, t: number) {
      const { probe } = correction;
      store.journal.add({ t, who, what: KIND, place: null, subject: probe, body: correction });
      refresh();
    },
    /**
     * The farm file tells another offset than before: it was changed by hand, and holds from now on
     * where a check had found one.
     */
    fileChanged(
      probe: string,
      before: Readonly<Record<string, number>>,
      after: Readonly<Partial<Record<string, number>>>,
      who: string,
      now: number,
    ) {
      for (const quantity of new Set([...Object.keys(before), ...Object.keys(after)])) {
        const [old, value] = [before[quantity] ?? 0, after[quantity] ?? 0];
        if (old === value || !corrections.has(key(probe, quantity))) continue;
        this.begin({ probe, quantity, slope: 1, intercept: value, from: now }, who, now);
      }
    },
  };
}
export type Corrections = ReturnType<typeof makeCorrections>;
