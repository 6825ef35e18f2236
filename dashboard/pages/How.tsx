import type { Evidence, Task } from '../../hub/contract/index.ts';
import { now } from '../clock.ts';
import { MEASURED } from '../parts/EvidenceTable.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { MethodLimits, MethodSource, MethodWords } from '../parts/MethodFacts.tsx';
import { type Held, shownInput, shownValue } from '../parts/shownValue.ts';
import { useMethod } from '../parts/useMethod.ts';
import { type Params, query } from '../router.ts';
import { ended, farm, today } from '../state.ts';
import { words } from '../words.ts';

/** How one line of a task's reasons came about; of a formula alone when no task is named. */
export function How({ params }: { params: Params }) {
  const name = params.name ?? '';
  const asked = new URLSearchParams(query.value);
  const id = asked.get('task');
  const tasks = [...(today.value?.tasks ?? []), ...ended.value];
  const task = tasks.find((one) => one.id === id);
  const fact = task && factOf(task, name, Number(asked.get('line')));
  const { method, fault, again } = useMethod(name === MEASURED ? null : name);
  const held = { zone: farm.value?.zone ?? 'UTC', now: now.value ?? 0 };
  const { how } = words;
  return (
    <>
      <p>
        <a class="back" href={task ? `/#${encodeURIComponent(task.id)}` : '/'}>
          {task ? how.toTask : words.frame.toToday}
        </a>
      </p>
      <Heading title={how.title} />
      <p class="sentence">
        {fact
          ? `${words.evidence(fact.what)}: ${shownValue(fact.value, fact.unit, held)}`
          : how.name(name)}
      </p>
      <section>
        <h2>{how.words}</h2>
        {method && <MethodWords method={method} />}
        {name === MEASURED && <p>{fact ? measured(fact, held) : missing(id)}</p>}
        {name !== MEASURED && !method && <Fault sentence={fault} again={again} />}
      </section>
      {name !== MEASURED && (
        <section>
          <h2>{how.put}</h2>
          {fact ? <Inputs fact={fact} {...held} /> : <p>{missing(id)}</p>}
        </section>
      )}
      {fact && (
        <section>
          <h2>{how.result}</h2>
          <Result fact={fact} {...held} />
        </section>
      )}
      {method && (
        <section>
          <h2>{how.limits}</h2>
          <MethodLimits method={method} />
        </section>
      )}
      <section>
        <h2>{how.source}</h2>
        {fact && <p>{fact.source}</p>}
        {method && <MethodSource method={method} />}
      </section>
    </>
  );
}

/** The line named, if it is still about the same; else the first one that is. */
function factOf({ because }: Task, name: string, line: number): Evidence | undefined {
  const fits = ({ method }: Evidence) => (method ?? MEASURED) === name;
  const named = because[line];
  return named && fits(named) ? named : because.find(fits);
}

const missing = (id: string | null) => (id === null ? words.how.noPut : words.how.gone);

function measured({ inputs = [] }: Evidence, held: Held) {
  const [probe, at] = inputs;
  if (probe === undefined || at === undefined) return words.how.told;
  return words.how.measured(String(probe.value), shownInput(at.value, '', held));
}

function Inputs({ fact: { inputs = [] }, ...held }: { fact: Evidence } & Held) {
  return (
    <dl class="evidence">
      {inputs.map(({ what, value, unit }, place) => (
        // The same name may stand twice: two probes were read.
        <div key={`${what} ${place}`}>
          <dt>{words.how.input(what)}</dt>
          <dd class="evidence-value">{shownInput(value, unit, held)}</dd>
        </div>
      ))}
    </dl>
  );
}

function Result({ fact, ...held }: { fact: Evidence } & Held) {
  const { value, unit, limit, limitFrom } = fact;
  return (
    <>
      <p>
        {words.evidence(fact.what)}: <strong>{shownValue(value, unit, held)}</strong>
      </p>
      <p>
        {limit === null
          ? words.how.noLimit
          : words.how.against(shownValue(limit, unit, held), limitFrom ?? fact.source)}
      </p>
    </>
  );
}
