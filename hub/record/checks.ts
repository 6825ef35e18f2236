import type { Store } from '../store/index.ts';

/** A probe held against something known: melting ice, and perhaps another thermometer. */
export type Check = {
  readonly entry: number;
  readonly probe: string;
  readonly at: number;
  readonly by: string;
  readonly points: readonly { readonly reading: number; readonly reference: number }[];
  readonly applied: boolean;
  readonly doubts: readonly ('too-near' | 'slope')[];
};

const KIND = 'probe-check';
/** Days after which a probe is checked again, where the farm file tells none. Ours, from no source. */
export const CHECK_DAYS = 90;
const DAY = 86_400_000; // ms

/** Checks of probes, in the order they were entered. */
export function makeChecks(store: Store) {
  const checks: Check[] = [];
  let read = 0;
  const refresh = () => {
    for (const { id, subject, body } of store.journal.after(KIND, read)) {
      read = id;
      checks.push({ ...(body as Omit<Check, 'entry' | 'probe'>), entry: id, probe: subject ?? '' });
    }
    return checks;
  };
  return {
    of: (probes: readonly string[]): Check[] =>
      refresh().filter(({ probe }) => probes.includes(probe)),
    /** The newest by its own time; undefined for a probe that never was checked. */
    last: (probe: string): Check | undefined =>
      refresh()
        .filter((one) => one.probe === probe)
        .sort((a, b) => a.at - b.at)
        .at(-1),
    isDue: (last: Check | undefined, now: number, days = CHECK_DAYS) =>
      !last || now - last.at > days * DAY,
    add({ probe, ...body }: Omit<Check, 'entry'>, place: string | null, who: string, t: number) {
      store.journal.add({ t, who, what: KIND, place, subject: probe, body });
    },
  };
}
