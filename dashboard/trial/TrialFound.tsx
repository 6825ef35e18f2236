import type { Trial, TrialRow } from '../../hub/contract/index.ts';
import { FigureTable } from '../parts/FigureTable.tsx';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { KeepPart } from './KeepPart.tsx';
import { TrialStrips } from './TrialStrips.tsx';

/** What it would have been: in sentences, as strips, as a table; then keep it or leave it. */
export function TrialFound({
  trial,
  onOver,
}: {
  trial: Trial;
  onOver: (sentence: string) => void;
}) {
  const text = words.trial;
  const { result } = trial;
  if (result === null) return null;
  return (
    <section class="trial-found">
      <h2>{text.result}</h2>
      {result.words.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {result.rows.length > 0 && (
        <>
          <h3>{text.strip}</h3>
          <TrialStrips trial={trial} result={result} />
          <FigureTable
            label={text.strip}
            columns={Object.values(text.columns)}
            rows={result.rows.map(rowOf)}
          />
          <details class="trial-days-told">
            <summary>{text.days}</summary>
            {result.rows.map((row) => (
              <DaysApart key={`${row.place} ${row.kind}`} row={row} />
            ))}
          </details>
        </>
      )}
      {result.losses.length > 0 && (
        <>
          <h3>{text.lossesHere}</h3>
          <ul>
            {result.losses.map((loss, i) => (
              <li key={`${loss.day} ${i}`}>
                {shortDay(loss.day)}, {loss.name}: {loss.words}
              </li>
            ))}
          </ul>
        </>
      )}
      <KeepPart trial={trial} onOver={onOver} />
      <details>
        <summary>{text.notes}</summary>
        <ul>
          {result.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const apart = ({ before, after }: TrialRow) => ({
  more: after.days.filter((day) => !before.days.includes(day)),
  fewer: before.days.filter((day) => !after.days.includes(day)),
});

function rowOf(row: TrialRow) {
  const text = words.trial;
  const { name, kindName, before, after } = row;
  const { more, fewer } = apart(row);
  return [
    text.stripTitle(name, kindName),
    ...[before.days.length, after.days.length, more.length, fewer.length],
    `${before.tasks} → ${after.tasks}`,
    `${text.work(before.minutes)} → ${text.work(after.minutes)}`,
  ];
}

/** The days by their dates, as the strips show them. */
function DaysApart({ row }: { row: TrialRow }) {
  const text = words.trial;
  const { more, fewer } = apart(row);
  const dates = (days: readonly string[]) => days.map(shortDay).join(', ');
  return (
    <p>
      {text.stripTitle(row.name, row.kindName)}.{' '}
      {more.length > 0 && `${text.onlyAfter(dates(more))} `}
      {fewer.length > 0 && text.onlyBefore(dates(fewer))}
      {more.length + fewer.length === 0 && text.none}
    </p>
  );
}
