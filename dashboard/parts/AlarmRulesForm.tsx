import { useState } from 'preact/hooks';
import type { AlarmKind, AlarmRank, ShownAlarmSettings } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { HoursField } from './HoursField.tsx';
import { useSaving } from './useSaving.ts';

const choosable: readonly AlarmKind[] = ['power', 'unit', 'door', 'probe'];
const ranks: readonly AlarmRank[] = ['urgent', 'today', 'note'];
const NIGHT = { from: '21:00', to: '06:30' };
const SUNDAY = { weekday: 'sunday', at: '10:00' } as const;
type Weekday = NonNullable<ShownAlarmSettings['weeklyTest']>['weekday'];

/** How long to wait for an answer, how much is too much, what is urgent, and the weekly test. */
export function AlarmRulesForm({ settings }: { settings: ShownAlarmSettings }) {
  const text = words.alarms.sending;
  const { waits: given, most: mostGiven } = settings;
  const [waits, setWaits] = useState(given);
  const [most, setMost] = useState(mostGiven);
  const [quiet, setQuiet] = useState(settings.quiet);
  const [rankOf, setRankOf] = useState(settings.ranks);
  const [weekly, setWeekly] = useState(settings.weeklyTest);
  const { saving, said, save } = useSaving();
  const number = (
    label: string,
    value: number,
    [min, max]: readonly [number, number],
    write: (value: number) => void,
  ) => (
    <label>
      {label}
      <input
        type="number"
        required
        min={min}
        max={max}
        value={value}
        onInput={(event) => write(event.currentTarget.valueAsNumber)}
      />
    </label>
  );
  return (
    <form
      class="alarm-form"
      onSubmit={(event) => {
        event.preventDefault();
        save({ waits, most, quiet, ranks: rankOf, weeklyTest: weekly });
      }}
    >
      <fieldset>
        <legend>{text.waits}</legend>
        {number(text.second, waits.second, [1, 120], (second) => setWaits({ ...waits, second }))}
        {number(text.third, waits.third, [1, 240], (third) => setWaits({ ...waits, third }))}
        {number(text.everybody, waits.everybody, [1, 480], (everybody) =>
          setWaits({ ...waits, everybody }),
        )}
        <p class="quiet">{text.everybodyWhy}</p>
      </fieldset>
      {number(text.most, most, [2, 60], setMost)}
      <HoursField
        label={text.quiet}
        never={text.quietOff}
        always={false}
        usual={NIGHT}
        hours={quiet}
        onChange={setQuiet}
      />
      <fieldset>
        <legend>{text.rank}</legend>
        <p class="quiet">
          {words.alarms.ranksWhy} {text.guarded}
        </p>
        {choosable.map((kind) => (
          <label key={kind}>
            {words.alarms.kind(kind)}
            <select
              value={rankOf[kind] ?? 'urgent'}
              onChange={(event) =>
                setRankOf({ ...rankOf, [kind]: event.currentTarget.value as AlarmRank })
              }
            >
              {ranks.map((rank) => (
                <option key={rank} value={rank}>
                  {words.alarms.ranks[rank]}
                </option>
              ))}
            </select>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>{text.weekly}</legend>
        <label>
          {text.weekday}
          <select
            value={weekly?.weekday ?? ''}
            onChange={({ currentTarget: { value } }) =>
              setWeekly(value === '' ? null : { ...(weekly ?? SUNDAY), weekday: value as Weekday })
            }
          >
            <option value="">{text.weeklyOff}</option>
            {Object.entries(words.alarms.weekdays).map(([day, name]) => (
              <option key={day} value={day}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {weekly && (
          <label>
            {text.at}
            <input
              type="time"
              required
              value={weekly.at}
              onInput={(event) => setWeekly({ ...weekly, at: event.currentTarget.value })}
            />
          </label>
        )}
      </fieldset>
      <button type="submit" class="main" aria-disabled={saving}>
        {saving ? text.saving : text.save}
      </button>
      <p role="status" class="failed-line">
        {said}
      </p>
    </form>
  );
}
