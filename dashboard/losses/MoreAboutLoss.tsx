import { Field } from '../coolRoom/Field.tsx';
import { addDays } from '../times.ts';
import { words } from '../words.ts';
import type { MoreSaid } from './entry.ts';

/** What may be said besides: a day before, of how much it was a part, a batch, a note. */
export function MoreAboutLoss({
  more,
  today,
  onChange,
}: {
  more: MoreSaid;
  today: string;
  onChange: (more: MoreSaid) => void;
}) {
  const text = words.losses;
  const days = [
    ['', text.todaySeen],
    [addDays(today, -1), text.yesterday],
  ] as const;
  return (
    <details class="loss-more">
      <summary>{text.more}</summary>
      <fieldset class="quick-crops">
        <legend>{text.whenSeen}</legend>
        {days.map(([day, name]) => (
          <button
            type="button"
            key={name}
            aria-pressed={more.day === day}
            onClick={() => onChange({ ...more, day })}
          >
            {name}
          </button>
        ))}
        <input
          type="date"
          aria-label={text.whenSeen}
          max={today}
          value={more.day === '' ? today : more.day}
          onInput={({ currentTarget: { value } }) =>
            onChange({ ...more, day: value === today ? '' : value })
          }
        />
      </fieldset>
      <div class="loss-pair">
        <Field
          label={text.ofAmount}
          kind="number"
          value={more.ofAmount}
          onType={(ofAmount) => onChange({ ...more, ofAmount })}
        />
        <label>
          {text.unit}
          <select
            value={more.ofUnit}
            onChange={(event) =>
              onChange({ ...more, ofUnit: event.currentTarget.value as MoreSaid['ofUnit'] })
            }
          >
            <option value="kg">{text.units.kg}</option>
            <option value="trays">{text.units.trays}</option>
          </select>
        </label>
      </div>
      <Field
        label={text.batch}
        longest={60}
        value={more.batch}
        onType={(batch) => onChange({ ...more, batch })}
      />
      <Field label={text.note} value={more.note} onType={(note) => onChange({ ...more, note })} />
    </details>
  );
}
