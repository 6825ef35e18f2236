import type { ComponentChildren } from 'preact';
import { words } from '../words.ts';

// The parts every form of this page is made of.

/** A number as people write it: with a comma or a point, and a minus of either kind. */
const NUMBER = '[\\-−]?[0-9]*[.,]?[0-9]*';

/** A line to type in, with its name above it. */
export function Field({
  label,
  value,
  onType,
  kind = 'text',
  required = false,
  longest = 500,
}: {
  label: string;
  value: string;
  onType: (text: string) => void;
  kind?: 'text' | 'number' | 'datetime-local';
  required?: boolean;
  longest?: number;
}) {
  const number = kind === 'number';
  return (
    <label>
      {label}
      <input
        type={number ? 'text' : kind}
        inputMode={number ? 'decimal' : undefined}
        pattern={number ? NUMBER : undefined}
        autocomplete="off"
        required={required}
        maxLength={longest}
        value={value}
        onInput={(event) => onType(event.currentTarget.value)}
      />
    </label>
  );
}

/** One of several, or `none` of them ('') where that may be. */
export function Choice({
  label,
  value,
  none,
  options,
  onChoose,
}: {
  label: string;
  value: string;
  none?: string;
  options: readonly (readonly [id: string, name: string])[];
  onChoose: (id: string) => void;
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {options.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The button that sends a form, others beside it, and why it was not stored. */
export function FormEnd({
  label,
  sending,
  said,
  children,
}: {
  label: string;
  sending: boolean;
  said: string;
  children?: ComponentChildren;
}) {
  return (
    <>
      <div class="form-buttons">
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? words.lots.sending : label}
        </button>
        {children}
      </div>
      <p role="status" class="failed-line">
        {said}
      </p>
    </>
  );
}
