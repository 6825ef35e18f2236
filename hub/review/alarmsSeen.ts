import { median } from '../../rules/statistics/index.ts';
import type { AlarmEvent } from '../alarms/index.ts';

const MINUTE = 60_000; // ms

/** Alarms of one kind in a season, and how soon somebody said that they saw them. */
export type AlarmsSeen = {
  readonly kind: string;
  readonly raised: number;
  readonly seen: number;
  /** Over before anybody had seen them. */
  readonly neverSeen: number;
  /** From raised to seen; null when none was seen. */
  readonly minutesToSeen: number | null;
  readonly slowest: number | null;
  /** Those of which somebody said that they were false. */
  readonly falseOnes: number;
};

/** By kind, the most frequent first; what came and went as one is one. */
export function alarmsSeen(events: readonly AlarmEvent[]): AlarmsSeen[] {
  const kinds = new Map<string, AlarmEvent[]>();
  for (const event of events)
    kinds.set(event.head.kind, [...(kinds.get(event.head.kind) ?? []), event]);
  return [...kinds]
    .map(([kind, own]): AlarmsSeen => {
      const waits = own.flatMap(({ head }) =>
        head.seenAt === null ? [] : [(head.seenAt - head.since) / MINUTE],
      );
      return {
        ...{ kind, raised: own.length, seen: waits.length },
        neverSeen: own.filter(({ head, standing }) => head.seenAt === null && !standing).length,
        minutesToSeen: waits.length === 0 ? null : median(waits),
        slowest: waits.length === 0 ? null : Math.max(...waits),
        falseOnes: own.filter(({ head }) => head.was === 'false').length,
      };
    })
    .sort((a, b) => b.raised - a.raised || (a.kind < b.kind ? -1 : 1));
}
