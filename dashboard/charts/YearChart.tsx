import { useEffect, useState } from 'preact/hooks';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { Day } from '../../hub/contract/index.ts';
import { shownIn } from '../../hub/words/page.ts';
import { calendarDay, shortDay, shortMonth } from '../times.ts';
import { words } from '../words.ts';
import { useWidth } from './useWidth.ts';
import { type YearColumns, yearColumns, yearFacts } from './yearColumns.ts';

const MONTH = 28 * 86_400; // s: ticks at least so far apart are months
const PAPER = 680; // CSS pixels of an A4 sheet between its margins, a little less
const WET_SHARE = 4; // the wet bars take the lowest quarter of the height

const shown = (values: readonly (number | null)[]) =>
  values.map((value) => (value === null ? null : shownIn(value, '°C')));

/** A year of days: low-to-high band, mean line, wet hours as bars beneath. The same is said in words. */
export function YearChart({ days }: { days: readonly Day[] }) {
  const [ref, width] = useWidth<HTMLDivElement>(328);
  const [at, setAt] = useState<number | null>(null);
  const columns = yearColumns(days);
  useEffect(() => {
    const host = ref.current;
    if (!host || columns.t.length === 0) return;
    const plot = new uPlot(
      options(width, host, setAt),
      [columns.t, shown(columns.high), shown(columns.low), shown(columns.mean), columns.wet],
      host,
    );
    // Paper is narrower than a desk, and nothing is drawn anew on the way to it but this.
    const paper = matchMedia('print');
    const fit = () => {
      plot.setSize({ width: paper.matches ? PAPER : width, height: plot.height });
      plot.redraw(); // in the inks of paper
    };
    paper.addEventListener('change', fit);
    const schemes = new MutationObserver(() => plot.redraw());
    schemes.observe(document.documentElement, { attributeFilter: ['data-scheme'] });
    return () => {
      paper.removeEventListener('change', fit);
      schemes.disconnect();
      plot.destroy();
    };
  }, [days, width]);
  const facts = yearFacts(columns);
  const named = (extreme: typeof facts.coldest) =>
    extreme && { value: extreme.value, day: shortDay(extreme.day) };
  const summary = words.places.yearWords(
    facts.known,
    facts.missing,
    named(facts.coldest),
    named(facts.warmest),
    facts.wetHours,
  );
  return (
    <div class="year">
      <p>{summary}</p>
      <div class="year-plot" ref={ref} role="img" aria-label={`${words.places.year}. ${summary}`} />
      <p class="quiet year-at">{at === null ? words.places.yearKey : dayWords(columns, at)}</p>
    </div>
  );
}

function dayWords({ days, low, high, wet }: YearColumns, i: number): string {
  return words.places.hoverDay(
    shortDay(days[i] ?? ''),
    words.degrees(low[i] ?? null),
    words.degrees(high[i] ?? null),
    words.number(wet[i] ?? null),
  );
}

function options(width: number, host: HTMLElement, say: (i: number | null) => void): uPlot.Options {
  // Asked for at each drawing: the page may have become dark, or paper.
  const inks = getComputedStyle(host);
  const ink = (name: string) => () => inks.getPropertyValue(name).trim();
  const axis: uPlot.Axis = {
    stroke: ink('--soft'),
    font: '12px system-ui, sans-serif',
    grid: { stroke: ink('--hair'), width: 1 },
    ticks: { show: false },
  };
  return {
    width,
    height: width < 600 ? 220 : 280,
    // Days are calendar days: drawn by UTC, so that no browser's zone moves them.
    tzDate: (t) => uPlot.tzDate(new Date(t * 1000), 'Etc/UTC'),
    legend: { show: false },
    cursor: { y: false, drag: { x: false, y: false }, points: { show: false } },
    scales: {
      x: { time: true },
      y: {
        range: (_, low, high) => {
          const [bottom, top] = [Math.floor((low ?? 0) - 1), Math.ceil((high ?? 10) + 1)];
          return [bottom - (top - bottom) / (WET_SHARE - 1), top];
        },
      },
      wet: { range: [0, 24 * WET_SHARE] },
    },
    axes: [
      {
        ...axis,
        space: 56,
        values: (_, found, _axis, _space, step) =>
          found.map((t) => (step < MONTH ? shortDay : shortMonth)(calendarDay(t * 1000, 'UTC'))),
      },
      {
        ...axis,
        size: 34,
        // The lowest quarter belongs to the wet bars: no temperature is named there.
        values: ({ scales }, found) => {
          const { min = 0, max = 0 } = scales.y ?? {};
          const least = (min ?? 0) + ((max ?? 0) - (min ?? 0)) / WET_SHARE;
          return found.map((value) => (value < least ? '' : words.number(value, 0)));
        },
      },
    ],
    series: [
      {},
      { stroke: 'transparent', width: 0, spanGaps: false, points: { show: false } },
      { stroke: 'transparent', width: 0, spanGaps: false, points: { show: false } },
      { stroke: ink('--ink'), width: 1.25, spanGaps: false, points: { show: false } },
      {
        scale: 'wet',
        stroke: ink('--wet'),
        fill: ink('--wet'),
        width: 0,
        points: { show: false },
        ...(uPlot.paths.bars ? { paths: uPlot.paths.bars({ size: [0.7, 8, 1] }) } : {}),
      },
    ],
    bands: [{ series: [1, 2], fill: ink('--band') }],
    hooks: { setCursor: [({ cursor }) => say(cursor.idx ?? null)] },
  };
}
