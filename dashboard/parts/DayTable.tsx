import type { Day } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { FigureTable } from './FigureTable.tsx';

/** Days, the newest first. What is not known is a dash, never a zero. */
export function DayTable({ days }: { days: readonly Day[] }) {
  const { columns, dash } = words.places;
  if (days.length === 0) return <p class="quiet">{words.places.noDays}</p>;
  const warm = (value: number | null) => (value === null ? dash : words.degrees(value));
  const cell = (value: number | null, digits = 1) =>
    value === null ? dash : words.number(value, digits);
  return (
    <>
      <FigureTable
        label={words.places.days}
        look="days"
        columns={Object.values(columns)}
        rows={days.map((day) => [
          shortDay(day.day),
          warm(day.min),
          warm(day.max),
          warm(day.mean),
          cell(day.wetHours),
          cell(day.longestSpellHours),
          cell(day.unknownHours),
          day.degreeDays === null ? dash : words.heat(day.degreeDays),
          cell(day.botrytisIndex, 2),
        ])}
      />
      <p class="quiet">
        {words.places.dashMeans} {words.places.greyMouldMeans}
      </p>
    </>
  );
}
