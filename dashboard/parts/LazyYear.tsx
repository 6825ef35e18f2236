import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Day } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

type Chart = ComponentType<{ days: readonly Day[] }>;

/** The year chart, fetched when first looked at: Today does without its drawing library. */
export function LazyYear({ days }: { days: readonly Day[] }) {
  const [chart, setChart] = useState<{ Chart: Chart } | null>(null);
  useEffect(() => {
    let wanted = true;
    import('../charts/YearChart.tsx').then(
      ({ YearChart }) => wanted && setChart({ Chart: YearChart }),
      () => {
        // The table below has the same days; a chart that cannot be fetched is not worth an alarm.
      },
    );
    return () => {
      wanted = false;
    };
  }, []);
  if (days.length === 0) return <p class="quiet">{words.places.noDays}</p>;
  return chart ? <chart.Chart days={days} /> : <p class="quiet">{words.places.yearWaiting}</p>;
}
