import type { CoolRoomLog } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { calendarDay, shortDay, timeOfDay } from '../times.ts';
import { words } from '../words.ts';

const HUNDREDTHS = 100;
/** A long record of a probe with a weak radio has hundreds of gaps; the file has them all. */
const MOST_GAPS = 40;

/** Days of the record, the newest first. What is not known is a dash, never a zero. */
export function LogTable({ log }: { log: CoolRoomLog }) {
  const { columns } = words.record;
  const cell = (value: number | null, digits = 1) =>
    value === null ? words.places.dash : words.number(value, digits);
  const warm = (value: number | null) =>
    value === null ? words.places.dash : words.degrees(value);
  return (
    <FigureTable
      label={words.record.title}
      look="days log-days"
      columns={Object.values(columns)}
      rows={log.days
        .toReversed()
        .map((day) => [
          shortDay(day.day),
          cell(day.aboveHours, 2),
          cell(day.belowHours, 2),
          cell(day.unknownHours, 2),
          warm(day.highest),
          warm(day.lowest),
          warm(day.meanKinetic),
          words.withUnit(Math.floor(day.knownShare * HUNDREDTHS), '%', 0),
        ])}
    />
  );
}

/** Times without readings, as times. */
export function LogGaps({ log, zone }: { log: CoolRoomLog; zone: string }) {
  const text = words.record;
  const gaps = log.days.flatMap((day) => day.gaps);
  return (
    <>
      <h2>{text.gaps}</h2>
      {gaps.length === 0 ? (
        <p class="quiet">{text.noGaps}</p>
      ) : (
        <ul class="plain-list gaps">
          {gaps.slice(0, MOST_GAPS).map(({ from, to }) => {
            const [begins, ends] = [Date.parse(from), Date.parse(to)];
            return (
              <li key={from}>
                {text.gap(
                  shortDay(calendarDay(begins, zone)),
                  timeOfDay(begins, zone),
                  timeOfDay(ends, zone),
                  ends - begins,
                )}
              </li>
            );
          })}
          {gaps.length > MOST_GAPS && <li>{text.moreGaps(gaps.length - MOST_GAPS)}</li>}
        </ul>
      )}
    </>
  );
}
