import type { Method } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

// What the code says of one formula, in the parts of the page that shows it.

export function MethodWords({ method }: { method: Method }) {
  const { params, returns } = method;
  return (
    <>
      {method.words.map((paragraph) => (
        <p key={paragraph}>{words.how.fromCode(paragraph)}</p>
      ))}
      {returns !== null && <p>{words.how.fromCode(returns)}</p>}
      {params.length > 0 && (
        <dl class="evidence">
          {params.map((param) => (
            <div key={param.name}>
              <dt>{words.how.name(param.name)}</dt>
              <dd>{words.how.fromCode(param.words)}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
}

export function MethodLimits({ method: { throws, constants } }: { method: Method }) {
  return (
    <>
      {throws.map((refused) => (
        <p key={refused}>{words.how.refuses(refused.replace(/^\w*Error /, ''))}</p>
      ))}
      {throws.length === 0 && constants.length === 0 && <p>{words.how.noRange}</p>}
      {constants.length > 0 && (
        <dl class="evidence">
          {constants.map((constant) => (
            <div key={constant.name}>
              <dt>{words.how.constant(constant.name)}</dt>
              <dd class={constant.value.length < 20 ? 'evidence-value' : ''}>{constant.value}</dd>
              {constant.words !== '' && <dd class="quiet">{words.how.fromCode(constant.words)}</dd>}
            </div>
          ))}
        </dl>
      )}
    </>
  );
}

export function MethodSource({ method }: { method: Method }) {
  return (
    <>
      {method.sources.map(({ words: told, of }) => (
        <p key={`${of} ${told}`}>{words.how.by(told, of)}</p>
      ))}
      <Names title={words.how.builtOn} names={method.uses} />
      <Names title={words.how.usedBy} names={method.usedBy} />
      <p class="quiet">{words.how.code(method.file, method.line)}</p>
    </>
  );
}

function Names({ title, names }: { title: string; names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul class="plain-list">
        {names.map((name) => (
          <li key={name}>
            <a class="how-link" href={`/how/${encodeURIComponent(name)}`}>
              {words.how.name(name)}
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
