const HOUR = 3_600_000; // ms

/** A stretch of a probe's readings that changed. */
export type Changed = { readonly probe: string; readonly from: number; readonly to: number };

/** Which hours of which probes changed since somebody last asked. In memory only: what a crash
 *  forgets is found again in the inbox. */
export function touchedIn() {
  const hours = new Map<string, Set<number>>();
  return {
    add(probe: string, from: number, to: number) {
      let own = hours.get(probe);
      if (!own) {
        own = new Set();
        hours.set(probe, own);
      }
      for (let t = Math.floor(from / HOUR) * HOUR; t < to; t += HOUR) own.add(t);
    },
    /** Neighbouring hours as one stretch; nothing is touched after this. */
    take(): Changed[] {
      const out: Changed[] = [];
      for (const [probe, own] of hours)
        for (const t of [...own].sort((a, b) => a - b)) {
          const last = out.at(-1);
          if (last?.probe === probe && last.to === t)
            out[out.length - 1] = { ...last, to: t + HOUR };
          else out.push({ probe, from: t, to: t + HOUR });
        }
      hours.clear();
      return out;
    },
  };
}
