import type { EnterPick } from '../../hub/contract/index.ts';
import { Field } from '../coolRoom/Field.tsx';
import { numberOf } from '../coolRoom/useSending.ts';
import { fromTheWall } from '../onTheWall.ts';
import { farm } from '../state.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';

/** What is seldom said, as it is typed. */
export type About = {
  readonly walk: string;
  readonly pickers: string;
  readonly price: string;
  readonly at: string;
  readonly note: string;
};
export const nothingMore: About = { walk: '', pickers: '1', price: '', at: '', note: '' };

/** The fields of it that were told. A walk is told only with the minutes that it is a part of. */
export function toldMore(about: About, minutes: number | null): Partial<EnterPick> {
  const [walk, pickers] = [about.walk, about.pickers].map(numberOf);
  const price = keptOf(about.price, '/kg');
  const zone = farm.value?.zone;
  return {
    ...(walk == null || minutes === null ? {} : { walkMinutes: Math.min(walk, minutes) }),
    ...(pickers == null ? {} : { pickers }),
    ...(price == null ? {} : { price }),
    ...(about.at === '' || zone === undefined ? {} : { at: fromTheWall(about.at, zone) }),
    ...(about.note.trim() === '' ? {} : { note: about.note }),
  };
}

export function MoreAboutPick({
  about,
  onChange,
}: {
  about: About;
  onChange: (about: About) => void;
}) {
  const text = words.picks;
  const field = (name: keyof About, label: string, kind: 'text' | 'number' | 'datetime-local') => (
    <Field
      label={label}
      value={about[name]}
      kind={kind}
      onType={(value) => onChange({ ...about, [name]: value })}
    />
  );
  return (
    <details>
      <summary>{text.more}</summary>
      {field('pickers', text.pickers, 'number')}
      <p class="quiet">{text.pickersHint}</p>
      {field('walk', text.walk, 'number')}
      {field('price', text.price(farm.value?.money ?? 'EUR'), 'number')}
      <p class="quiet">{text.priceHint}</p>
      {field('at', text.at, 'datetime-local')}
      {field('note', text.note, 'text')}
    </details>
  );
}
