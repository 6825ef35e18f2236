import { Field } from '../coolRoom/Field.tsx';
import { typedOf } from '../typed.ts';
import { words } from '../words.ts';

const STEPS = [15, 30, 45, 60, 90, 120]; // minutes; ours
const SHARES = [5, 10]; // percent sorted out; ours
const hundredths = (value: number) => Math.round(100 * value) / 100;

/** Minutes and what was sorted out, by big steps. Neither is taken for zero when nobody taps. */
export function HowMuch({
  kg,
  usual,
  minutes,
  lost,
  onMinutes,
  onLost,
}: {
  kg: number | null;
  /** Minutes of the newest pickings there. */
  usual: readonly number[];
  minutes: string;
  lost: string;
  onMinutes: (text: string) => void;
  onLost: (text: string) => void;
}) {
  const text = words.picks;
  const steps = [...new Set([...usual, ...STEPS])].sort((a, b) => a - b);
  const losses = [0, ...(kg === null || kg === 0 ? [] : SHARES.map((share) => (kg * share) / 100))];
  const step = (label: string, value: string, now: string, put: (text: string) => void) => (
    <button
      type="button"
      key={label}
      aria-pressed={now === value}
      onClick={() => put(now === value ? '' : value)}
    >
      {label}
    </button>
  );
  return (
    <>
      <fieldset class="big-buttons three">
        <legend>{text.minutes}</legend>
        {steps.map((one) => step(text.min(one), String(one), minutes, onMinutes))}
      </fieldset>
      <fieldset class="big-buttons three">
        <legend>{text.lost}</legend>
        {losses.map((one, i) =>
          step(
            i === 0 ? text.nothing : text.share(SHARES[i - 1] ?? 0, hundredths(one)),
            typedOf(hundredths(one), 'kg'),
            lost,
            onLost,
          ),
        )}
        <Field label={text.lostOther} value={lost} kind="number" onType={onLost} />
      </fieldset>
    </>
  );
}
