import type { DayHours } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { HoursField } from './HoursField.tsx';
import { TestButton } from './TestButton.tsx';

export type DraftPerson = {
  readonly key: string;
  /** Missing for somebody who is new. */
  readonly id?: string;
  readonly name: string;
  readonly email: string;
  /** Server of the webhook that is kept; the whole address is never shown. */
  readonly kept: string | null;
  readonly webhook: string;
  readonly away: boolean;
  readonly hours: { readonly urgent: DayHours; readonly today: DayHours };
};

const DAYTIME = { from: '07:00', to: '21:00' };

export function PersonFields({
  person,
  saved,
  onChange,
}: {
  person: DraftPerson;
  saved: boolean;
  onChange: (person: DraftPerson) => void;
}) {
  const text = words.alarms.people;
  const { id, name, email, kept, webhook, away, hours } = person;
  return (
    <div class="alarm-form">
      <label>
        {text.name}
        <input
          required
          maxLength={60}
          value={name}
          onInput={(event) => onChange({ ...person, name: event.currentTarget.value })}
        />
      </label>
      <label>
        {text.email}
        <input
          type="email"
          maxLength={200}
          value={email}
          onInput={(event) => onChange({ ...person, email: event.currentTarget.value })}
        />
      </label>
      <label>
        {kept === null ? text.webhook : text.webhookKept(kept)}
        <input
          type="url"
          maxLength={500}
          autocomplete="off"
          value={webhook}
          onInput={(event) => onChange({ ...person, webhook: event.currentTarget.value })}
        />
      </label>
      {kept !== null && (
        <label class="tick">
          <input
            type="checkbox"
            checked={away}
            onChange={(event) => onChange({ ...person, away: event.currentTarget.checked })}
          />{' '}
          {text.webhookAway}
        </label>
      )}
      <HoursField
        label={text.urgentHours}
        usual={DAYTIME}
        hours={hours.urgent}
        onChange={(urgent) => onChange({ ...person, hours: { ...hours, urgent } })}
      />
      <HoursField
        label={text.todayHours}
        usual={DAYTIME}
        hours={hours.today}
        onChange={(today) => onChange({ ...person, hours: { ...hours, today } })}
      />
      {id !== undefined && saved ? (
        <div class="alarm-buttons">
          {email !== '' && <TestButton person={id} name={name} channel="email" />}
          {kept !== null && <TestButton person={id} name={name} channel="webhook" />}
        </div>
      ) : (
        <p class="quiet">{text.saveFirst}</p>
      )}
    </div>
  );
}
