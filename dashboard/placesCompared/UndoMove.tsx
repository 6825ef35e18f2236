import { useState } from 'preact/hooks';
import type { Task } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { words } from '../words.ts';

/** Takes back the move that "done" entered; the record keeps both. */
export function UndoMove({ task }: { task: Task }) {
  const text = words.placesCompared;
  const [state, setState] = useState<'idle' | 'sending' | 'undone'>('idle');
  const [fault, setFault] = useState<string | null>(null);
  const undo = () => {
    if (state !== 'idle') return;
    setState('sending');
    setFault(null);
    ask(`/api/tasks/${encodeURIComponent(task.id)}/undo-move`, {}).then(
      () => setState('undone'),
      (error: unknown) => {
        setState('idle');
        setFault(error instanceof Error ? error.message : String(error));
      },
    );
  };
  return (
    <span>
      {state !== 'undone' && (
        <button type="button" class="plain" aria-disabled={state === 'sending'} onClick={undo}>
          {text.undo}
          <span class="unseen">: {task.title}</span>
        </button>
      )}
      <span role="status" class="quiet">
        {state === 'undone' ? text.undone : fault === null ? '' : text.notUndone(fault)}
      </span>
    </span>
  );
}
