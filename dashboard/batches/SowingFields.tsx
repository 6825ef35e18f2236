import { Field } from '../coolRoom/Field.tsx';
import { farm } from '../state.ts';
import { words } from '../words.ts';

/** What may be told of a sowing beside its crop, trays and place, as it is typed. */
export type SowingSaid = {
  readonly variety: string;
  readonly sownAt: string;
  readonly seedCost: string;
  readonly otherCost: string;
  /** Left out where minutes have an entry of their own. */
  readonly minutes?: string;
  readonly meantFor: string;
};

/** The same fields when trays are sown and when an entry is corrected. */
export function SowingFields<Said extends SowingSaid>({
  said,
  put,
}: {
  said: Said;
  put: (field: keyof SowingSaid) => (value: string) => void;
}) {
  const text = words.batches;
  const currency = farm.value?.money ?? '';
  const number = (label: string, field: 'seedCost' | 'otherCost' | 'minutes') => (
    <Field label={label} value={said[field] ?? ''} kind="number" onType={put(field)} />
  );
  return (
    <>
      <Field label={text.variety} value={said.variety} longest={60} onType={put('variety')} />
      <Field label={text.sownAt} value={said.sownAt} kind="datetime-local" onType={put('sownAt')} />
      {number(text.seedCost(currency), 'seedCost')}
      {number(text.otherCost(currency), 'otherCost')}
      {said.minutes !== undefined && number(text.minutes, 'minutes')}
      <label>
        {text.meant}
        <input
          type="date"
          value={said.meantFor}
          onInput={(event) => put('meantFor')(event.currentTarget.value)}
        />
      </label>
    </>
  );
}
