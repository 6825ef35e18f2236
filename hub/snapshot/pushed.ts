import { lowForetold, type PushedForecast, type Stage } from '../../rules/decide/index.ts';
import { type Instant, instant } from '../../rules/units.ts';
import type { Calendar } from '../clock.ts';
import type { Farm } from '../farm/index.ts';
import type { Store } from '../store/index.ts';
import { NIGHTS, nightBounds } from './nights.ts';

const HOUR = 3_600_000; // ms
/** A source that was not heard for longer is no longer told of. Ours. */
const SILENT = 7 * 24 * HOUR;

type Issue = {
  readonly issuedAt: number;
  readonly values: readonly { t: number; value: number }[];
};
const columnOf = (issue: Issue | undefined) => ({
  t: (issue?.values ?? []).map(({ t }) => instant(t)),
  value: (issue?.values ?? []).map(({ value }) => value),
});

/** Forecasts pushed to the hub: the newest issue of each source, and what it had said of past nights. */
export function makePushed(store: Store, farm: () => Farm, calendar: () => Calendar) {
  let held: { key: string; pushed: readonly PushedForecast[] } | undefined;
  /** Lows by source and night: an issue is never changed, and a past night has all of its own. */
  const past = new Map<string, PushedForecast['nights'][number]['lows']>();

  const lowsOf = (source: string, night: string, now: Instant) => {
    const key = `${source}\n${night}`;
    const known = past.get(key);
    if (known) return known;
    const bounds = nightBounds(farm(), calendar(), night);
    const by = (at: number) => {
      const issue = store.foretold.issueBy(source, 'temperature', at);
      return issue && bounds ? lowForetold(columnOf(issue), bounds.sunset, bounds.sunrise) : null;
    };
    const fifteen = calendar().bounds(calendar().add(night, -1)).begins + 15 * HOUR;
    const lows: Record<Stage, ReturnType<typeof by>> = {
      morning: bounds?.sunriseBefore == null ? null : by(bounds.sunriseBefore + HOUR),
      afternoon: by(fifteen),
      evening: bounds === null ? null : by(bounds.sunset + 2 * HOUR),
    };
    // In a short night the evening may come after midnight.
    if (bounds === null || bounds.sunset + 2 * HOUR <= now) past.set(key, lows);
    return lows;
  };

  return function pushedBy(now: Instant): readonly PushedForecast[] {
    const today = calendar().dayOf(now);
    // A night named by today may not be over: its evening's issue is known, but not yet its low.
    const key = `${store.foretold.version()}\n${today}\n${farm().file.farm.lat}`;
    if (held?.key === key) return held.pushed;
    if (past.size > 20 * NIGHTS) past.clear();
    const pushed = store.foretold.sources().flatMap((source): PushedForecast[] => {
      const temperature = store.foretold.issueBy(source, 'temperature', now);
      const rain = store.foretold.issueBy(source, 'rain', now);
      const newest = Math.max(temperature?.issuedAt ?? 0, rain?.issuedAt ?? 0);
      if (newest < now - SILENT) return [];
      const nights = Array.from({ length: NIGHTS }, (_, back) =>
        calendar().add(today, back + 1 - NIGHTS),
      ).map((night) => ({ night, lows: lowsOf(source, night, now) }));
      return [
        {
          source,
          issuedAt: instant(newest),
          temperature: columnOf(temperature),
          rain: columnOf(rain),
          nights,
        },
      ];
    });
    held = { key, pushed };
    return pushed;
  };
}
