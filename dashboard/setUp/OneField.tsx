import { useId } from 'preact/hooks';
import { words } from '../words.ts';
import type { FieldSpec, Texts } from './fieldSpec.ts';

/** A number as people write it: with a comma or a point, and a minus of either kind. */
const NUMBER = '[\\-−]?[0-9]*[.,]?[0-9]*';

/** One field with its label above it, what it means under it, and what is wrong with it. */
export function OneField({
  spec,
  told: [label, hint],
  texts,
  onType,
  fault,
}: {
  spec: FieldSpec;
  told: readonly [label: string, hint?: string];
  texts: Texts;
  onType: (path: string, text: string) => void;
  fault: string | undefined;
}) {
  const id = useId();
  const { path, as, options = [], none, required = false } = spec;
  const text = texts[path] ?? '';
  const about = {
    'aria-describedby': `${id}-hint ${id}-fault`,
    'aria-invalid': fault === undefined ? undefined : ('true' as const),
  };
  const typed = (key: string, name: string | undefined, number: boolean) => (
    <input
      id={name === undefined ? id : undefined}
      aria-label={name}
      type="text"
      inputMode={number ? 'decimal' : undefined}
      pattern={number ? NUMBER : undefined}
      autocomplete="off"
      required={required}
      maxLength={500}
      value={texts[key] ?? ''}
      onInput={(event) => onType(key, event.currentTarget.value)}
      {...about}
    />
  );
  const chosen = text.split(', ').filter((one) => one !== '');
  const tick = (one: string, on: boolean) =>
    onType(path, (on ? [...chosen, one] : chosen.filter((each) => each !== one)).join(', '));
  const below = (
    <>
      {hint !== undefined && (
        <p class="quiet" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <p class="failed-line" id={`${id}-fault`} aria-live="polite">
        {fault}
      </p>
    </>
  );
  if (as === 'yes')
    return (
      <div class="field">
        <label class="tick">
          <input
            type="checkbox"
            checked={text === 'yes'}
            onChange={(event) => onType(path, event.currentTarget.checked ? 'yes' : 'no')}
            {...about}
          />{' '}
          {label}
        </label>
        {below}
      </div>
    );
  if (as === 'span' || as === 'many')
    return (
      <fieldset class="field">
        <legend>{label}</legend>
        {as === 'span' ? (
          <div class="from-to">
            {typed(`${path}.0`, words.setUpFields.from(label), true)}
            <span aria-hidden="true">–</span>
            {typed(`${path}.1`, words.setUpFields.to(label), true)}
          </div>
        ) : (
          options.map(([one, name]) => (
            <label key={one} class="tick">
              <input
                type="checkbox"
                checked={chosen.includes(one)}
                onChange={(event) => tick(one, event.currentTarget.checked)}
              />{' '}
              {name}
            </label>
          ))
        )}
        {below}
      </fieldset>
    );
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {as === 'choice' ? (
        <select
          id={id}
          value={text}
          required={required}
          onChange={(event) => onType(path, event.currentTarget.value)}
          {...about}
        >
          {none !== undefined && <option value="">{none}</option>}
          {options.map(([one, name]) => (
            <option key={one} value={one}>
              {name}
            </option>
          ))}
        </select>
      ) : (
        typed(path, undefined, as === 'figure')
      )}
      {below}
    </div>
  );
}
