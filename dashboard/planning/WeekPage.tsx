import './week.css';
import type { WeekSheet } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { Mark } from '../parts/Mark.tsx';
import { query } from '../router.ts';
import { farm } from '../state.ts';
import { addDays, calendarDay, timeOfDay } from '../times.ts';
import { words } from '../words.ts';

/** One week on one sheet: what is sown, cut and delivered, with boxes for a pencil. */
export function WeekPage() {
  const text = words.week;
  const from = new URLSearchParams(query.value).get('from');
  const path = from === null ? '/api/week' : `/api/week?${new URLSearchParams({ from })}`;
  const { facts: week, fault, again } = useFacts<WeekSheet>(path);
  const zone = farm.value?.zone;
  if (!week || zone === undefined)
    return (
      <>
        <Heading title={text.title} />
        <Fault sentence={fault} again={again} />
      </>
    );
  const asOf = Date.parse(week.asOf);
  const to = (day: string) => `/week?${new URLSearchParams({ from: day })}`;
  return (
    <div class="week-sheet">
      <Heading title={text.title} />
      <p class="week-range">
        <strong>{text.range(week.from, week.to)}</strong>. {week.farm}.{' '}
        {text.asOf(text.day(calendarDay(asOf, zone)), timeOfDay(asOf, zone))}
      </p>
      <nav class="week-links" aria-label={text.title}>
        <a href={to(addDays(week.from, -7))}>{text.before}</a>
        <a href="/week">{text.now}</a>
        <a href={to(addDays(week.from, 7))}>{text.next}</a>
        <button type="button" class="main" onClick={() => print()}>
          {text.print}
        </button>
      </nav>
      <WeekTable week={week} />
      {week.anyDay.length > 0 && (
        <>
          <h2>{text.anyDay}</h2>
          <ul class="week-open">
            {week.anyDay.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {week.notes.map((note) => (
        <p key={note} class="quiet">
          {note}
        </p>
      ))}
    </div>
  );
}

const COLUMNS = ['sow', 'harvest', 'deliver', 'other'] as const;

/** On a narrow screen each day is a block; the same table. */
function WeekTable({ week }: { week: WeekSheet }) {
  const { columns, day: dayName, none } = words.week;
  return (
    <table class="week">
      <thead>
        <tr>
          {(['day', ...COLUMNS, 'who', 'minutes'] as const).map((column) => (
            <th key={column} scope="col">
              {columns[column]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {week.days.map((day) => (
          <tr key={day.day}>
            <th scope="row">{dayName(day.day)}</th>
            {COLUMNS.map((column) => (
              <td key={column} data-label={columns[column]}>
                {column === 'other' &&
                  day.frost.map((line) => (
                    <p key={line} class="week-short">
                      {line}
                    </p>
                  ))}
                <Lines
                  lines={column === 'other' ? day.tasks : day[column]}
                  none={column === 'other' && day.frost.length > 0 ? '' : none}
                />
                {column === 'deliver' &&
                  day.short.map((line) => (
                    <p key={line} class="week-short">
                      <Mark shape="care" /> {line}
                    </p>
                  ))}
              </td>
            ))}
            <td class="pencil" data-label={columns.who} />
            <td class="pencil" data-label={columns.minutes} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Lines({ lines, none }: { lines: readonly string[]; none: string }) {
  if (lines.length === 0) return none === '' ? null : <span class="week-none">{none}</span>;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
