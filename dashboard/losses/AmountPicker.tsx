import { useState } from 'preact/hooks';
import type { LossUnit } from '../../hub/contract/index.ts';
import { numberOf } from '../coolRoom/useSending.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { type Amount, amountsFor, type OfferedPlace } from './entry.ts';

/** How much, by one big button; another amount is typed. */
export function AmountPicker({
  place,
  amount,
  onChoose,
}: {
  place: OfferedPlace;
  amount: Amount | null;
  onChoose: (amount: Amount | null) => void;
}) {
  const text = words.losses;
  const [typed, setTyped] = useState('');
  const [unit, setUnit] = useState<LossUnit>('kg');
  const type = (value: string, of: LossUnit) => {
    setTyped(value);
    setUnit(of);
    const found = of === 'kg' ? keptOf(value, 'kg') : numberOf(value);
    onChoose(found === null || found <= 0 ? null : { amount: found, unit: of });
  };
  const offered = amountsFor(place);
  return (
    <>
      <fieldset class="quick-weights">
        <legend>
          {text.howMuch}
          {offered[0]?.unit === 'trays' && place.trays !== null && (
            <span class="quiet"> {text.ofTrays(place.trays)}</span>
          )}
        </legend>
        {offered.map((one) => (
          <button
            type="button"
            key={`${one.amount} ${one.unit}`}
            aria-pressed={typed === '' && amount?.amount === one.amount && amount.unit === one.unit}
            onClick={() => {
              setTyped('');
              onChoose(one);
            }}
          >
            {text.amountButton(one.amount, one.unit)}
          </button>
        ))}
      </fieldset>
      <details class="loss-exactly">
        <summary>{text.exactly}</summary>
        <div class="loss-pair">
          <label>
            {text.amount}
            <input
              inputMode="decimal"
              autocomplete="off"
              pattern="[0-9]*[.,]?[0-9]+"
              value={typed}
              onInput={(event) => type(event.currentTarget.value, unit)}
            />
          </label>
          <label>
            {text.unit}
            <select
              value={unit}
              onChange={(event) => type(typed, event.currentTarget.value as LossUnit)}
            >
              {(Object.keys(text.units) as LossUnit[]).map((one) => (
                <option key={one} value={one}>
                  {text.units[one]}
                </option>
              ))}
            </select>
          </label>
        </div>
      </details>
    </>
  );
}
