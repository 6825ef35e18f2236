import { useState } from 'preact/hooks';
import type { CutBack, FruitCount, FruitStage } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { shortDay } from '../times.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';

type Line = { readonly stage: FruitStage; readonly kg: string; readonly flowered: string };
const EMPTY: Line = { stage: 'green', kg: '', flowered: '' };
const STAGES = ['ripe', 'turning', 'green', 'flower'] as const;

/** What was counted in a patch, and a short form for the next count. */
export function FruitCounted({ plan, onKept }: { plan: CutBack; onKept: (plan: CutBack) => void }) {
  const text = words.cutBack.count;
  const { counted } = plan;
  const [lines, setLines] = useState<readonly Line[]>([EMPTY]);
  const [sending, setSending] = useState(false);
  const [said, setSaid] = useState('');
  const put = (at: number, change: Partial<Line>) =>
    setLines(lines.map((line, index) => (index === at ? { ...line, ...change } : line)));
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    if (sending) return;
    setSending(true);
    setSaid('');
    const count: FruitCount = {
      cohorts: lines
        .filter(({ kg }) => kg.trim() !== '')
        .map(({ stage, kg, flowered }) => ({
          stage,
          kg: keptOf(kg, 'kg') ?? Number.NaN,
          ...(stage === 'flower' && flowered !== '' ? { flowered } : {}),
        })),
    };
    try {
      onKept(await ask<CutBack>(`/api/patches/${encodeURIComponent(plan.place)}/fruit`, count));
      setLines([EMPTY]);
      setSaid(text.kept);
    } catch (error) {
      setSaid(text.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <div class="counted">
      <h3>{text.title}</h3>
      <p>{counted === null ? text.never : text.last(shortDay(counted.day), counted.who)}</p>
      <ul class="plain-list">
        {counted?.cohorts.map(({ stage, kg, ripeOn }, index) => (
          <li key={index}>
            {text.line(
              text.stages[stage],
              words.withUnit(kg, 'kg'),
              ripeOn === null ? null : shortDay(ripeOn),
            )}
          </li>
        ))}
      </ul>
      <details open={counted === null}>
        <summary>{text.enter}</summary>
        <p class="quiet">{text.hint}</p>
        <form class="count-form" onSubmit={send}>
          {lines.map((line, at) => (
            <fieldset key={at}>
              <legend class="unseen">{text.lineName(at + 1)}</legend>
              <label>
                {text.stage}
                <select
                  value={line.stage}
                  onChange={(event) => put(at, { stage: event.currentTarget.value as FruitStage })}
                >
                  {STAGES.map((stage) => (
                    <option key={stage} value={stage}>
                      {text.stages[stage]}
                    </option>
                  ))}
                </select>
              </label>
              <label>
                {text.kg}
                <input
                  type="number"
                  min="0"
                  max="100000"
                  step="any"
                  inputMode="decimal"
                  required
                  value={line.kg}
                  onInput={(event) => put(at, { kg: event.currentTarget.value })}
                />
              </label>
              {line.stage === 'flower' && (
                <label>
                  {text.flowered}
                  <input
                    type="date"
                    max={plan.day}
                    value={line.flowered}
                    onInput={(event) => put(at, { flowered: event.currentTarget.value })}
                  />
                </label>
              )}
              {lines.length > 1 && (
                <button
                  type="button"
                  class="plain"
                  onClick={() => setLines(lines.filter((_, index) => index !== at))}
                >
                  {text.drop}
                </button>
              )}
            </fieldset>
          ))}
          <div class="form-buttons">
            <button type="submit" class="main" aria-disabled={sending}>
              {sending ? text.sending : text.send}
            </button>
            <button type="button" onClick={() => setLines([...lines, EMPTY])}>
              {text.add}
            </button>
          </div>
        </form>
      </details>
      <p role="status">{said}</p>
    </div>
  );
}
