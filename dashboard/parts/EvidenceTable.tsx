import type { Evidence } from '../../hub/contract/index.ts';
import { farm } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';

type Held = { zone: string; now: number };

/** What was measured, the limit it was held against, and where the limit comes from. */
export function EvidenceTable({ because, ...held }: { because: readonly Evidence[] } & Held) {
  const labels = words.task.evidence;
  return (
    <dl class="evidence">
      {because.map((fact) => (
        <div key={`${fact.what} ${fact.source}`}>
          <dt>{words.evidence(fact.what)}</dt>
          <dd class="evidence-value">{shown(fact.value, fact.unit, held)}</dd>
          {fact.limit !== null && (
            <dd>
              {labels.limit}: {shown(fact.limit, fact.unit, held)}
            </dd>
          )}
          <dd class="quiet">
            {labels.source}: {fact.source}
          </dd>
        </div>
      ))}
    </dl>
  );
}

const INSTANT = /^\d{4}-\d{2}-\d{2}T/;

function shown(value: number | string | null, unit: string, { zone, now }: Held): string {
  if (typeof value === 'string') {
    return INSTANT.test(value) ? when(Date.parse(value), zone, now) : value;
  }
  if (value !== null && unit === 'probability') return words.chance(value);
  if (value !== null && unit === 'min') return words.span(value * 60_000);
  if (value !== null && unit === 'h') return words.span(value * 3_600_000);
  if (value !== null && unit === 'money' && farm.value) return words.money(value, farm.value.money);
  return words.withUnit(value, unit, value !== null && Number.isInteger(value) ? 0 : 1);
}
