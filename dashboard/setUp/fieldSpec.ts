import { farmUnits } from '../../hub/words/page.ts';
import { type Kept, keptFigure, typedOf } from '../typed.ts';
import { figure } from './figure.ts';

// A field of the farm's description as it is typed in, and as it is kept. Every field is a text while
// somebody types; a field of its own kind of part may stand deeper: `cover.minutes`.

export type FieldSpec = {
  readonly path: string;
  /** `span`: from and to. `list`: words between commas. `many`: some of the options. `rows`: a list of maps. */
  readonly as: 'text' | 'figure' | 'span' | 'yes' | 'choice' | 'list' | 'many' | 'rows';
  readonly options?: readonly (readonly [id: string, name: string])[];
  /** The word for choosing none; without it one has to be chosen. */
  readonly none?: string;
  readonly columns?: readonly FieldSpec[];
  /** What is typed is so many times what is kept: 100 for a share in percent. */
  readonly times?: number;
  /** It is kept in this unit, and typed in that of the farm. */
  readonly unit?: Kept | undefined;
  /** A single number is enough for the span. */
  readonly single?: boolean;
  readonly required?: boolean;
  /** The heading it stands under, folded away; none stands open. */
  readonly group?: string;
  /** No field of the part itself: whoever shows the form sees to it. */
  readonly aside?: boolean;
};
export type Item = Readonly<Record<string, unknown>>;
export type Texts = Readonly<Record<string, string>>;

const isItem = (value: unknown): value is Item =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const valueAt = (item: Item, path: string): unknown =>
  path.split('.').reduce<unknown>((at, key) => (isItem(at) ? at[key] : undefined), item);

function figureText(value: unknown, { times = 1, unit }: FieldSpec): string {
  if (typeof value !== 'number') return '';
  return unit ? typedOf(value, unit) : String(Number((value * times).toFixed(6)));
}

/** The same fields, those that are kept in a unit with it: of a part of the description, by their path. */
export const inUnits = <Spec extends FieldSpec>(part: string, specs: readonly Spec[]): Spec[] =>
  specs.map((spec) => ({ ...spec, unit: farmUnits[part]?.[spec.path] }));

/** What stands in the fields of an item before anybody types. */
export function textsOf(item: Item, specs: readonly FieldSpec[]): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const spec of specs) {
    const { path, as, columns = [] } = spec;
    const value = valueAt(item, path);
    if (as === 'figure') texts[path] = figureText(value, spec);
    else if (as === 'yes') texts[path] = value === true ? 'yes' : 'no';
    else if (as === 'span') {
      const [from, to] = Array.isArray(value) ? value : [value];
      texts[`${path}.0`] = figureText(from, spec);
      texts[`${path}.1`] = figureText(to, spec);
    } else if (as === 'list' || as === 'many')
      texts[path] = Array.isArray(value) ? value.join(', ') : '';
    else if (as === 'rows')
      for (const [i, row] of (Array.isArray(value) ? value : []).entries())
        for (const [key, text] of Object.entries(textsOf(row, columns)))
          texts[`${path}.${i}.${key}`] = text;
    else texts[path] = typeof value === 'string' ? value : '';
  }
  return texts;
}

/** How many rows are begun: a row whose texts are all empty counts for nothing. */
export function rowsIn(texts: Texts, path: string): number {
  const begun = Object.entries(texts)
    .filter(([key, text]) => key.startsWith(`${path}.`) && text.trim() !== '')
    .map(([key]) => Number(key.slice(path.length + 1).split('.')[0]) + 1);
  return Math.max(0, ...begun);
}

function kept(spec: FieldSpec, texts: Texts, at: string): unknown {
  const text = (texts[at] ?? '').trim();
  const number = (typed: string | undefined) => {
    if (spec.unit) return keptFigure(typed ?? '', spec.unit);
    const value = figure(typed ?? '');
    const kept = typeof value === 'number' ? value / (spec.times ?? 1) : value;
    return typeof kept === 'number' ? Number(kept.toFixed(9)) : kept;
  };
  if (spec.as === 'figure') return number(text);
  if (spec.as === 'yes') return text === 'yes';
  if (spec.as === 'span') {
    const [from, to] = [number(texts[`${at}.0`]), number(texts[`${at}.1`])];
    if (from === undefined && to === undefined) return undefined;
    if (spec.single && (from === undefined || to === undefined)) return from ?? to;
    return [from ?? null, to ?? null]; // half of it: the hub says what is wrong
  }
  if (spec.as === 'list' || spec.as === 'many') {
    const words = text.split(',').map((word) => word.trim());
    const told = words.filter((word) => word !== '');
    return told.length === 0 ? undefined : told;
  }
  if (spec.as === 'rows') {
    const rows = Array.from({ length: rowsIn(texts, at) }, (_, i) => {
      const cells = (spec.columns ?? []).map(
        (column) => [column.path, kept(column, texts, `${at}.${i}.${column.path}`)] as const,
      );
      return Object.fromEntries(cells.filter(([, value]) => value !== undefined));
    });
    return rows.filter((row) => Object.keys(row).length > 0);
  }
  return text === '' ? undefined : text;
}

function withValue(item: Item, [key = '', ...deeper]: readonly string[], value: unknown): Item {
  const inner = item[key];
  const put = deeper.length === 0 ? value : withValue(isItem(inner) ? inner : {}, deeper, value);
  const { [key]: _, ...rest } = item;
  // What holds nothing any more is not told at all.
  const nothing = put === undefined || (deeper.length > 0 && Object.keys(put as Item).length === 0);
  if (nothing) return rest;
  return key in item ? { ...item, [key]: put } : { ...rest, [key]: put };
}

/** The item as it would be kept with these texts; fields that no spec names stay as they are. */
export const withTexts = (item: Item, specs: readonly FieldSpec[], texts: Texts): Item =>
  specs
    .filter(({ aside }) => !aside)
    .reduce(
      (made, spec) => withValue(made, spec.path.split('.'), kept(spec, texts, spec.path)),
      item,
    );
