import { useCallback, useEffect, useState } from 'preact/hooks';
import type { Day } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { exactNow } from '../clock.ts';
import { returns } from '../state.ts';
import { addDays, calendarDay } from '../times.ts';

const YEAR = 365; // days

/** The year's days of a place up to today, oldest first; asked for again for another place. */
export function useDays(place: string, zone: string | undefined) {
  const [days, setDays] = useState<readonly Day[] | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  const again = useCallback(() => setTries((before) => before + 1), []);
  const back = returns.value;
  useEffect(() => {
    if (zone === undefined) return;
    let wanted = true;
    const to = calendarDay(exactNow(), zone);
    const range = new URLSearchParams({ from: addDays(to, -YEAR), to });
    setDays(null);
    setFault(undefined);
    ask<Day[]>(`/api/places/${encodeURIComponent(place)}/days?${range}`).then(
      (got) => wanted && setDays(got.toSorted((a, b) => a.day.localeCompare(b.day))),
      (error: unknown) => wanted && setFault(error instanceof Error ? error.message : `${error}`),
    );
    return () => {
      wanted = false;
    };
  }, [place, zone, tries, back]);
  return { days, fault, again };
}
