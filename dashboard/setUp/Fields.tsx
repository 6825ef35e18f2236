import { words } from '../words.ts';
import type { FieldSpec, Texts } from './fieldSpec.ts';
import { OneField } from './OneField.tsx';
import { Rows } from './Rows.tsx';

export type FieldsProps = {
  readonly specs: readonly FieldSpec[];
  /** Labels and what they mean, by the path of the field. */
  readonly told: Readonly<Record<string, readonly [label: string, hint?: string]>>;
  readonly texts: Texts;
  readonly onType: (path: string, text: string) => void;
  /** What is wrong with a field, in words. */
  readonly faultOf: (path: string) => string | undefined;
};

/** Fields of one part of the description: the usual ones open, the others under their headings. */
export function Fields(props: FieldsProps) {
  const { specs, texts, faultOf } = props;
  const groups = [...new Set(specs.map(({ group }) => group).filter((one) => one !== undefined))];
  const shown = (spec: FieldSpec) =>
    spec.as === 'rows' ? (
      <Rows key={spec.path} {...props} spec={spec} />
    ) : (
      <OneField
        key={spec.path}
        spec={spec}
        told={props.told[spec.path] ?? [spec.path]}
        texts={texts}
        onType={props.onType}
        fault={faultOf(spec.path)}
      />
    );
  return (
    <>
      {specs.filter(({ group }) => group === undefined).map(shown)}
      {groups.map((group) => {
        const inside = specs.filter((spec) => spec.group === group);
        const wrong = inside.some(({ path }) => faultOf(path) !== undefined);
        return (
          <details key={group} open={wrong || undefined}>
            <summary>{words.setUpFields.groups[group] ?? group}</summary>
            {inside.map(shown)}
          </details>
        );
      })}
    </>
  );
}
