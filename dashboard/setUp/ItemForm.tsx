import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { FieldWords } from '../../hub/words/index.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Draft } from './description.ts';
import { Fields } from './Fields.tsx';
import { type FieldSpec, type Item, type Texts, textsOf, withTexts } from './fieldSpec.ts';

export type ItemFormProps = {
  /** The item as the hub has it now, or what a new one begins with, by what was typed so far. */
  readonly item: (typed: Texts) => Item;
  readonly specs: (texts: Texts) => readonly FieldSpec[];
  readonly told: FieldWords;
  /** Where the item stands in the description: `places.3`. */
  readonly at: string;
  /** The description with the item in it; null while it is not whole. */
  readonly next: (item: Item, texts: Texts) => Draft | null;
  readonly label?: string;
  readonly then?: string | undefined;
  readonly onStored?: () => void;
  /** What stands in fields that only the page knows. */
  readonly starts?: Texts;
  /** Nothing is tried before something is typed. */
  readonly waits?: boolean;
  /** Stands under the open fields. */
  readonly more?: (texts: Texts) => ComponentChildren;
};

/** A form for one item of the description. Only what was typed is its own: the rest is the hub's. */
export function ItemForm({
  item,
  specs,
  told,
  at,
  next,
  label,
  then,
  onStored,
  starts = {},
  waits = false,
  more,
}: ItemFormProps) {
  const [typed, setTyped] = useState<Texts>({});
  const before = item(typed);
  // Which fields there are hangs on some of them, such as the kind of a place.
  const basics = Object.fromEntries(
    Object.entries(before).filter(([, value]) => typeof value === 'string'),
  ) as Texts;
  const fields = specs({ ...basics, ...typed });
  const texts = { ...textsOf(before, fields), ...starts, ...typed };
  const made = withTexts(before, fields, texts);
  const pathOf = (field: string) =>
    field.startsWith(`${at}.`) ? field.slice(at.length + 1) : null;
  const beside = (field: string) => {
    const path = pathOf(field);
    return path !== null && fields.some((one) => within(path, one.path) || within(one.path, path));
  };
  return (
    <ChangeForm
      next={waits && Object.keys(typed).length === 0 ? null : next(made, texts)}
      beside={beside}
      onStored={() => {
        setTyped({});
        onStored?.();
      }}
      {...(label === undefined ? {} : { label })}
      then={then}
    >
      {(faultOf) => (
        <>
          <Fields
            specs={fields}
            told={told}
            texts={texts}
            onType={(path, text) => setTyped((old) => ({ ...old, [path]: text }))}
            faultOf={(path) => faultOf(`${at}.${path}`)}
          />
          {more?.(texts)}
        </>
      )}
    </ChangeForm>
  );
}

const within = (path: string, outer: string) => path === outer || path.startsWith(`${outer}.`);
