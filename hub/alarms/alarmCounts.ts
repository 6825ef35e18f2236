import { median, wilson } from '../../rules/statistics/index.ts';
import type { SeenAlarm } from './types.ts';

const MINUTE = 60_000; // ms

/** Alarms of one kind in one month of the farm. */
export type AlarmCount = {
  readonly month: string;
  readonly kind: string;
  readonly raised: number;
  readonly seen: number;
  /** Median from raised to seen, min; null when none was seen. */
  readonly minutesToSeen: number | null;
  /** Those of which somebody said whether they were right. */
  readonly answered: number;
  readonly falseOnes: number;
  /** Share that was false, and the 95 % interval (Wilson 1927); null while nobody answered. */
  readonly falseShare: {
    readonly share: number;
    readonly low: number;
    readonly high: number;
  } | null;
};

/** By month and kind, newest month first. @param monthOf month of the farm's calendar, `2026-04`. */
export function alarmCounts(
  alarms: readonly SeenAlarm[],
  monthOf: (t: number) => string,
): AlarmCount[] {
  const groups = new Map<string, SeenAlarm[]>();
  for (const alarm of alarms) {
    const key = `${monthOf(alarm.since)} ${alarm.kind}`;
    groups.set(key, [...(groups.get(key) ?? []), alarm]);
  }
  return [...groups]
    .sort(([a], [b]) => {
      const [monthA = '', monthB = ''] = [a.slice(0, 7), b.slice(0, 7)];
      return monthA === monthB ? (a < b ? -1 : 1) : monthA < monthB ? 1 : -1;
    })
    .map(([key, group]) => {
      const waits = group.flatMap(({ since, seenAt }) =>
        seenAt === null ? [] : [(seenAt - since) / MINUTE],
      );
      const answered = group.filter(({ was }) => was !== null).length;
      const falseOnes = group.filter(({ was }) => was === 'false').length;
      const [low, high] = answered === 0 ? [0, 0] : wilson(falseOnes, answered);
      return {
        month: key.slice(0, 7),
        kind: key.slice(8),
        raised: group.length,
        seen: waits.length,
        minutesToSeen: waits.length === 0 ? null : median(waits),
        answered,
        falseOnes,
        falseShare: answered === 0 ? null : { share: falseOnes / answered, low, high },
      };
    });
}
