import { useState } from 'preact/hooks';
import { words } from '../words.ts';
import type { FieldsProps } from './Fields.tsx';
import { type FieldSpec, rowsIn } from './fieldSpec.ts';
import { OneField } from './OneField.tsx';

/** A list of the same few fields: those that are there, and one more to begin. */
export function Rows({
  spec,
  told,
  texts,
  onType,
  faultOf,
}: FieldsProps & { readonly spec: FieldSpec }) {
  const { path, columns = [] } = spec;
  const [more, setMore] = useState(0);
  const text = words.setUpFields;
  const [label, hint] = told[path] ?? [path];
  const rows = Math.max(1, rowsIn(texts, path), more);
  const cells = Array.from({ length: rows }, (_, i) =>
    columns.map((column) => `${path}.${i}.${column.path}`),
  ).flat();
  const inRow = cells.some((at) => faultOf(at) !== undefined);
  return (
    <fieldset class="field rows">
      <legend>{label}</legend>
      {hint !== undefined && <p class="quiet">{hint}</p>}
      {Array.from({ length: rows }, (_, i) => (
        <div class="one-row" key={`row ${i}`}>
          {columns.map((column) => {
            const at = `${path}.${i}.${column.path}`;
            const [name] = told[`${path}.${column.path}`] ?? [column.path];
            return (
              <OneField
                key={at}
                spec={{ ...column, path: at }}
                told={[i === 0 ? name : text.nth(name, i + 1)]}
                texts={texts}
                onType={onType}
                fault={faultOf(at)}
              />
            );
          })}
        </div>
      ))}
      <button type="button" onClick={() => setMore(rows + 1)}>
        {text.oneMore}
      </button>
      <p class="failed-line" aria-live="polite">
        {inRow ? undefined : faultOf(path)}
      </p>
    </fieldset>
  );
}
