import type { Evidence } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type Held, shownValue } from './shownValue.ts';

/** What was measured, the limit it was held against, where the limit comes from, and the way to how. */
export function EvidenceTable({
  task,
  because,
  ...held
}: { task: string; because: readonly Evidence[] } & Held) {
  const labels = words.task.evidence;
  return (
    <dl class="evidence">
      {because.map((fact, line) => (
        <div key={`${fact.what} ${fact.source}`}>
          <dt>{words.evidence(fact.what)}</dt>
          <dd class="evidence-value">{shownValue(fact.value, fact.unit, held)}</dd>
          {fact.limit !== null && (
            <dd>
              {labels.limit}: {shownValue(fact.limit, fact.unit, held)}
            </dd>
          )}
          <dd class="quiet">
            {labels.source}: {fact.source}
          </dd>
          {fact.method !== undefined && (
            <dd>
              <a class="how-link" href={howAddress(fact.method, task, line)}>
                {words.how.link}
                <span class="unseen">: {words.evidence(fact.what)}</span>
              </a>
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}

/** Stands where a formula's name would, for what a probe measured or somebody told. */
export const MEASURED = 'measured';

const howAddress = (method: string | null, task: string, line: number) =>
  `/how/${method ?? MEASURED}?${new URLSearchParams({ task, line: String(line) })}`;
