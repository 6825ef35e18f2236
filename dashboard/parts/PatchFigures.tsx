import { useState } from 'preact/hooks';
import type { CutBack, PatchTerms } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { farm } from '../state.ts';
import { typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { type FigureField, figureFields, figuresIn, textsOf } from './patchForm.ts';

/** The grower's own figures of a patch: each may be left to the farm file or to a usual figure. */
export function PatchFigures({ plan, onKept }: { plan: CutBack; onKept: (plan: CutBack) => void }) {
  const text = words.cutBack.terms;
  const { terms } = plan;
  const [texts, setTexts] = useState(() => textsOf(terms));
  const [bearing, setBearing] = useState<string>(terms.bearing ?? '');
  const [lastPicking, setLastPicking] = useState(terms.lastPicking ?? '');
  const [red, setRed] = useState(terms.leavesFlatAndRed === true);
  const [insists, setInsists] = useState(terms.insists === true);
  const [said, setSaid] = useState('');
  const [sending, setSending] = useState(false);
  const currency = farm.value?.money ?? 'EUR';
  const label = ({ key, unit }: FigureField) => {
    const name = words.cutBack.figure(key);
    return unit === 'money' ? text.money(name, currency) : text[unit](name);
  };
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    if (sending) return;
    setSending(true);
    setSaid('');
    const told: PatchTerms = {
      ...figuresIn(texts),
      ...(bearing === '' ? {} : { bearing: bearing as 'june' | 'ever' }),
      ...(lastPicking === '' ? {} : { lastPicking }),
      ...(red ? { leavesFlatAndRed: true } : {}),
      ...(insists ? { insists: true } : {}),
    };
    try {
      onKept(await ask<CutBack>(`/api/patches/${encodeURIComponent(plan.place)}/terms`, told));
      setSaid(text.kept);
    } catch (error) {
      setSaid(words.cutBack.count.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <details>
      <summary>{text.title}</summary>
      <p class="quiet">{text.hint}</p>
      <form class="figures-form" onSubmit={send}>
        {figureFields.map((field) => (
          <label key={field.key}>
            {label(field)}
            <input
              type="number"
              min="0"
              max={field.kept ? typedOf(field.max, field.kept) : field.max}
              step="any"
              inputMode="decimal"
              value={texts[field.key]}
              onInput={(event) => setTexts({ ...texts, [field.key]: event.currentTarget.value })}
            />
          </label>
        ))}
        <label>
          {text.bearing}
          <select value={bearing} onChange={(event) => setBearing(event.currentTarget.value)}>
            <option value="">{text.untold}</option>
            <option value="june">{text.june}</option>
            <option value="ever">{text.ever}</option>
          </select>
        </label>
        <label>
          {text.lastPicking}
          <input
            type="date"
            max={plan.day}
            value={lastPicking}
            onInput={(event) => setLastPicking(event.currentTarget.value)}
          />
        </label>
        <label class="tick-box">
          <input
            type="checkbox"
            checked={red}
            onChange={(event) => setRed(event.currentTarget.checked)}
          />{' '}
          {text.leaves}
        </label>
        <label class="tick-box">
          <input
            type="checkbox"
            checked={insists}
            onChange={(event) => setInsists(event.currentTarget.checked)}
          />{' '}
          {text.insists}
        </label>
        <div class="form-buttons">
          <button type="submit" class="main" aria-disabled={sending}>
            {sending ? words.cutBack.count.sending : text.send}
          </button>
        </div>
        <p role="status">{said}</p>
      </form>
    </details>
  );
}
