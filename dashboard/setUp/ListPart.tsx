import { useState } from 'preact/hooks';
import type { FieldWords } from '../../hub/words/index.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description, Draft } from './description.ts';
import type { FieldSpec, Item, Texts } from './fieldSpec.ts';
import { ItemForm, type ItemFormProps } from './ItemForm.tsx';
import { Listed } from './Listed.tsx';

export type Lists = 'places' | 'crops' | 'mixes' | 'deliveries';

/** A list of the description: what there is, changed or taken out, and one more added. */
export function ListPart({
  now,
  list,
  told,
  title,
  nameOf,
  lineOf = nameOf,
  specs,
  begin,
  whole,
  put,
  without,
  takeOut,
  starts = {},
  more,
}: {
  now: Description;
  list: Lists;
  told: FieldWords;
  title: string;
  nameOf: (item: Item) => string;
  /** As it stands in the list. */
  lineOf?: (item: Item) => string;
  specs: (texts: Texts, chosen: boolean) => readonly FieldSpec[];
  /** What a new one begins with, by what was typed so far. */
  begin: (texts: Texts) => Item;
  /** The item with what nobody types; null while something is missing. */
  whole: (item: Item, texts: Texts) => Item | null;
  /** The description with an item that was put into it. */
  put?: (description: Draft, item: Item, texts: Texts) => Draft;
  /** The description without an item; left out where nothing else hangs on it. */
  without?: (at: number) => Draft;
  takeOut?: string;
  /** What a new one begins with in fields that only the page knows. */
  starts?: Texts;
  more?: ItemFormProps['more'];
}) {
  const text = words.setUpSteps;
  // By name: somebody else may add or take out meanwhile.
  const [open, setOpen] = useState<string | null>(null);
  const [out, setOut] = useState<string | null>(null);
  const [added, setAdded] = useState(0);
  const description = (now.description ?? {}) as Draft;
  const items = (description[list] ?? []) as Item[];
  const at = items.findIndex((item, i) => keyOf(item, i) === open);
  const chosen = items[at];
  const goes = items.findIndex((item, i) => keyOf(item, i) === out);
  const gone = items[goes];
  return (
    <>
      <Listed
        items={items.map((item, i) => ({ id: keyOf(item, i), words: lineOf(item) }))}
        onChange={(key) => {
          setOut(null);
          setOpen(key);
        }}
        onTakeOut={(key) => {
          setOpen(null);
          setOut(key);
        }}
      />
      {gone && (
        <ChangeForm
          key={`without ${out}`}
          next={without?.(goes) ?? { ...description, [list]: items.filter((one) => one !== gone) }}
          label={takeOut ?? text.takeOut}
          onStored={() => setOut(null)}
          onLeave={() => setOut(null)}
        >
          <h3>{text.forName(takeOut ?? text.takeOut, nameOf(gone))}</h3>
        </ChangeForm>
      )}
      {!gone && (
        <>
          <h2>{chosen ? text.changePlace(nameOf(chosen)) : title}</h2>
          <ItemForm
            key={chosen ? `change ${open}` : `add ${added}`}
            item={(texts) => chosen ?? begin(texts)}
            specs={(texts) => specs(texts, chosen !== undefined)}
            told={told}
            starts={chosen ? {} : starts}
            at={`${list}.${chosen ? at : items.length}`}
            next={(item, texts) => {
              const made = whole(item, texts);
              if (made === null) return null;
              const all = chosen
                ? items.map((one) => (one === chosen ? made : one))
                : [...items, made];
              const next = { ...description, [list]: all };
              return put ? put(next, made, texts) : next;
            }}
            label={chosen ? text.store : text.add}
            onStored={() => {
              setOpen(null);
              setAdded(added + 1);
            }}
            {...(more && { more })}
          />
          {chosen && (
            <p>
              <button type="button" onClick={() => setOpen(null)}>
                {text.addAnother}
              </button>
            </p>
          )}
        </>
      )}
    </>
  );
}

/** Two deliveries of one day are told apart by their order. */
const keyOf = (item: Item, i: number) => String(item.id ?? `${String(item.day)} ${i}`);
