import { refresh } from '../live.ts';
import { words } from '../words.ts';

/** What stands where facts should: they are on their way, or the hub did not give them. */
export function Fault({
  sentence,
  again = refresh,
}: {
  sentence: string | undefined;
  again?: () => void;
}) {
  if (sentence === undefined) return <p class="quiet">{words.state.asking}</p>;
  return (
    <p class="failed" role="status">
      {words.state.failed(sentence)}{' '}
      <button type="button" onClick={() => again()}>
        {words.state.tryAgain}
      </button>
    </p>
  );
}
