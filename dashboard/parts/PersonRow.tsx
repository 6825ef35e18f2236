import { useState } from 'preact/hooks';
import type { Person } from '../../hub/contract/index.ts';
import { who } from '../state.ts';
import { words } from '../words.ts';

/** One person, and what a grower may do about that one; removing asks once more. */
export function PersonRow({
  person,
  onCode,
  onRemove,
}: {
  person: Person;
  onCode: () => void;
  onRemove: () => void;
}) {
  const text = words.setUp;
  const [removing, setRemoving] = useState(false);
  const { name, role, seenAt } = person;
  return (
    <li>
      <p>
        <strong>{name}</strong> {who.value?.name === name && `${text.you} `}
        <span class="quiet">
          {text.roles[role]},{' '}
          {seenAt === null ? text.neverSeen : text.seen(Date.now() - Date.parse(seenAt))}
        </span>
      </p>
      {removing ? (
        <>
          <p class="caution">{text.removeWhy(name)}</p>
          <div class="row-buttons">
            <button type="button" onClick={onRemove}>
              {text.removeSure(name)}
            </button>
            <button type="button" onClick={() => setRemoving(false)}>
              {text.keep}
            </button>
          </div>
        </>
      ) : (
        <div class="row-buttons">
          <button
            type="button"
            aria-label={text.forName(text.newPasswordFor, name)}
            onClick={onCode}
          >
            {text.newPasswordFor}
          </button>
          <button
            type="button"
            aria-label={text.forName(text.remove, name)}
            onClick={() => setRemoving(true)}
          >
            {text.remove}
          </button>
        </div>
      )}
    </li>
  );
}
