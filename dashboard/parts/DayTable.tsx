import type { Day } from '../../hub/contract/index.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';

/** Days, the newest first. What is not known is a dash, never a zero. */
export function DayTable({ days }: { days: readonly Day[] }) {
  const { columns, dash } = words.places;
  if (days.length === 0) return <p class="quiet">{words.places.noDays}</p>;
  const cell = (value: number | null, digits = 1) =>
    value === null ? dash : words.number(value, digits);
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that may scroll must be reachable by keyboard */}
      <section class="table-room" aria-label={words.places.days} tabIndex={0}>
        <table class="figures days">
          <thead>
            <tr>
              {Object.values(columns).map((label) => (
                <th key={label} scope="col">
                  <span>{label}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {days.map((day) => (
              <tr key={day.day}>
                <th scope="row">{shortDay(day.day)}</th>
                <td>{cell(day.min)}</td>
                <td>{cell(day.max)}</td>
                <td>{cell(day.mean)}</td>
                <td>{cell(day.wetHours)}</td>
                <td>{cell(day.longestSpellHours)}</td>
                <td>{cell(day.unknownHours)}</td>
                <td>{cell(day.degreeDays)}</td>
                <td>{cell(day.botrytisIndex, 2)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="quiet">
        {words.places.dashMeans} {words.places.greyMouldMeans}
      </p>
    </>
  );
}
