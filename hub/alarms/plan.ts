/** An alarm as it stands. Times in ms since 1970. */
export type Alarm = {
  /** The task's: one alarm for one event. */
  readonly id: string;
  readonly place: string;
  readonly kind: string;
  readonly since: number;
  readonly words: string;
  readonly clearedAt: number | null;
};

/** As much of a task as an alarm needs. */
export type Cause = {
  readonly id: string;
  readonly place: string;
  readonly alarm: string | null;
  /** Put off until then: somebody has seen it. */
  readonly until: number | null;
};

/**
 * What to raise and what to clear, so that alarms agree with the open tasks. Raised once, cleared
 * once: planning again after sending gives nothing.
 */
export function planAlarms(
  raised: readonly Alarm[],
  open: readonly Cause[],
  wordsOf: (id: string) => string,
  now: number,
): { readonly raise: readonly Alarm[]; readonly clear: readonly Alarm[] } {
  const wanted = new Map(
    open
      .filter(({ alarm, until }) => alarm !== null && until === null)
      .map((task) => [task.id, task]),
  );
  const standing = new Set(raised.map(({ id }) => id));
  return {
    raise: [...wanted.values()]
      .filter(({ id }) => !standing.has(id))
      .map(({ id, place, alarm }) => ({
        id,
        place,
        kind: alarm ?? '',
        since: now,
        words: wordsOf(id),
        clearedAt: null,
      })),
    clear: raised
      .filter(({ id }) => !wanted.has(id))
      .map((alarm) => ({ ...alarm, clearedAt: now })),
  };
}
