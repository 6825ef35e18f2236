import { useState } from 'preact/hooks';
import type { LimitNow, TrialChange, TrialStart } from '../../hub/contract/index.ts';
import { DateFields } from '../parts/DateFields.tsx';
import { useSending } from '../parts/useSending.ts';
import { words } from '../words.ts';
import { limitOf, movedBy, shownOf, stepOf } from './limitTyped.ts';

export type Chosen = {
  readonly changes: readonly TrialChange[];
  readonly from: string;
  readonly to: string;
};

const ofWhom = ({ of }: LimitNow) => of ?? '';

/** Whose limit, which one, and what it is to be: moved by big steps, or typed. */
export function TrialForm({
  start,
  days,
  running,
  onBegin,
}: {
  start: TrialStart;
  days: NonNullable<TrialStart['days']>;
  running: boolean;
  onBegin: (chosen: Chosen) => Promise<void>;
}) {
  const text = words.trial;
  const { sending, failed, send } = useSending();
  const [whose, setWhose] = useState(start.limits[0] ? ofWhom(start.limits[0]) : '');
  const here = start.limits.filter((one) => ofWhom(one) === whose);
  const [what, setWhat] = useState<LimitNow['what'] | ''>('');
  const limit = here.find((one) => one.what === what) ?? here[0];
  const [typed, setTyped] = useState<string | null>(null);
  const [from, setFrom] = useState(days.from);
  const [to, setTo] = useState(days.to);
  const [same, setSame] = useState(false);
  if (limit === undefined) return null;
  const shown = typed ?? shownOf(limit);
  const value = typed === null ? limit.value : limitOf(limit, typed);
  const move = (steps: number) => setTyped(movedBy(limit, shown, steps));
  const step = text.step(stepOf(limit), limit.unit);
  const names = [...new Map(start.limits.map((one) => [ofWhom(one), one.name]))];
  return (
    <form
      class="trial-form"
      aria-label={text.title}
      onSubmit={(event) => {
        event.preventDefault();
        setSame(value === null || value === limit.value);
        if (value === null || value === limit.value) return;
        const changes = [{ what: limit.what, of: limit.of, to: value }];
        void send(() => onBegin({ changes, from, to }));
      }}
    >
      <label>
        {text.whose}
        <select
          value={whose}
          onChange={(event) => {
            setWhose(event.currentTarget.value);
            setTyped(null);
          }}
        >
          {names.map(([of, name]) => (
            <option key={of} value={of}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.limit}
        <select
          value={limit.what}
          onChange={(event) => {
            setWhat(event.currentTarget.value as LimitNow['what']);
            setTyped(null);
          }}
        >
          {here.map((one) => (
            <option key={one.what} value={one.what}>
              {one.limit}
            </option>
          ))}
        </select>
      </label>
      <p class="trial-source">{limit.source}</p>
      <div class="trial-value">
        <button type="button" onClick={() => move(-1)}>
          {text.less(step)}
        </button>
        <label>
          {text.value(limit.unit)}
          <input
            inputMode="decimal"
            autocomplete="off"
            required
            pattern="-?[0-9]*[.,]?[0-9]+"
            value={shown}
            onInput={(event) => setTyped(event.currentTarget.value)}
          />
        </label>
        <button type="button" onClick={() => move(1)}>
          {text.more(step)}
        </button>
      </div>
      <div class="trial-days">
        <DateFields text={text} from={from} to={to} onFrom={setFrom} onTo={setTo} />
      </div>
      {start.caution !== null && <p class="quiet">{start.caution}</p>}
      <button type="submit" class="main" disabled={sending || running}>
        {text.start}
      </button>
      <p role="status" class="failed-line">
        {same ? text.same : failed}
      </p>
    </form>
  );
}
