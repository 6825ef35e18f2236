import { useEffect } from 'preact/hooks';
import type { LossComparison, LossFamily, LossLearning } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Mark, type Shape } from '../parts/Mark.tsx';
import { words } from '../words.ts';
import { CasesTable } from './CasesTable.tsx';

const SHAPES: Readonly<Record<LossComparison['verdict'], Shape>> = {
  'counts-only': 'unknown',
  'worth-a-trial': 'care',
  'a-hint': 'later',
  'nothing-to-see': 'no',
};

/**
 * What may be said of losses and what went before them: sentences first, tables behind them.
 * @param version counts what was stored on this screen: then they are asked for again
 */
export function Numbers({ version }: { version: number }) {
  const text = words.losses;
  const { facts, fault, again } = useFacts<LossLearning>('/api/learn/losses');
  useEffect(() => {
    if (version > 0) again();
  }, [version]);
  return (
    <section class="loss-numbers">
      <h2>{text.numbers}</h2>
      {!facts ? (
        <Fault sentence={fault} again={again} />
      ) : facts.families.length === 0 ? (
        <p class="quiet">{text.noNumbers}</p>
      ) : (
        <>
          {facts.words.map((line) => (
            <p key={line}>{line}</p>
          ))}
          {facts.families.map((family) => (
            <Family key={family.unit} family={family} tried={facts.tried} />
          ))}
        </>
      )}
    </section>
  );
}

function Family({ family, tried }: { family: LossFamily; tried: number }) {
  return (
    <section class="loss-family">
      <h3>{family.name}</h3>
      <p class="quiet">{family.words}</p>
      {family.comparisons.map((one) => (
        <Comparison key={one.what} {...{ one, family, tried }} />
      ))}
    </section>
  );
}

function Comparison({
  one,
  family,
  tried,
}: {
  one: LossComparison;
  family: LossFamily;
  tried: number;
}) {
  const text = words.losses;
  const [first, ...rest] = one.words;
  const figure = (value: number | null) => words.number(value, 4);
  return (
    <article class="loss-comparison">
      <h4>
        <Mark shape={SHAPES[one.verdict]} /> {one.label}
      </h4>
      <p>{first}</p>
      {rest.map((line) => (
        <p key={line} class="quiet">
          {line}
        </p>
      ))}
      <details>
        <summary>{text.table.show(one.label)}</summary>
        <table class="figures loss-counts">
          <thead>
            <tr>
              <td />
              <th scope="col">{text.table.lost}</th>
              <th scope="col">{text.table.kept}</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">{text.table.with}</th>
              <td>{one.exposedLost}</td>
              <td>{one.exposedKept}</td>
            </tr>
            <tr>
              <th scope="row">{text.table.without}</th>
              <td>{one.otherLost}</td>
              <td>{one.otherKept}</td>
            </tr>
          </tbody>
        </table>
        <ul class="plain-list">
          <li>
            {text.figures.fisher}: {figure(one.p)}
          </li>
          <li>
            {text.figures.chance}: {figure(one.chance)}
          </li>
          <li>
            {text.figures.adjusted(tried)}: {figure(one.adjusted)}
          </li>
          <li>
            {text.figures.left}: {one.leftOut}
          </li>
        </ul>
        <CasesTable one={one} family={family} />
      </details>
    </article>
  );
}
