import type { DayHours } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

const ALL_DAY = { from: '00:00', to: '00:00' };
const kindOf = (hours: DayHours) =>
  hours === null ? 'never' : hours.from === hours.to ? 'always' : 'between';

/** At any time, never, or between two times of the farm's day. */
export function HoursField({
  label,
  never = words.alarms.people.never,
  always = true,
  usual,
  hours,
  onChange,
}: {
  label: string;
  never?: string;
  always?: boolean;
  /** What "between" begins with. */
  usual: NonNullable<DayHours>;
  hours: DayHours;
  onChange: (hours: DayHours) => void;
}) {
  const text = words.alarms.people;
  const is = kindOf(hours);
  return (
    <fieldset class="hours">
      <legend>{label}</legend>
      <select
        aria-label={label}
        value={is}
        onChange={({ currentTarget: { value } }) =>
          onChange(value === 'never' ? null : value === 'always' ? ALL_DAY : usual)
        }
      >
        {always && <option value="always">{text.always}</option>}
        <option value="between">{text.between}</option>
        <option value="never">{never}</option>
      </select>
      {hours !== null && is === 'between' && (
        <>
          <label>
            {text.from}{' '}
            <input
              type="time"
              required
              value={hours.from}
              onInput={(event) => onChange({ ...hours, from: event.currentTarget.value })}
            />
          </label>
          <label>
            {text.to}{' '}
            <input
              type="time"
              required
              value={hours.to}
              onInput={(event) => onChange({ ...hours, to: event.currentTarget.value })}
            />
          </label>
        </>
      )}
    </fieldset>
  );
}
