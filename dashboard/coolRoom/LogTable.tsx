import type { CoolRoomLog } from '../../hub/contract/index.ts';
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
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a part that may scroll must be reachable by keyboard
    <section class="table-room" aria-label={words.record.title} tabIndex={0}>
      <table class="figures days log-days">
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
          {log.days.toReversed().map((day) => (
            <tr key={day.day}>
              <th scope="row">{shortDay(day.day)}</th>
              <td>{cell(day.aboveHours, 2)}</td>
              <td>{cell(day.belowHours, 2)}</td>
              <td>{cell(day.unknownHours, 2)}</td>
              <td>{cell(day.highest)}</td>
              <td>{cell(day.lowest)}</td>
              <td>{cell(day.meanKinetic)}</td>
              <td>{words.withUnit(Math.floor(day.knownShare * HUNDREDTHS), '%', 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
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
