import { useState } from 'preact/hooks';
import type { MadeCode, Role } from '../../hub/contract/index.ts';
import { inviteSomebody } from '../commands.ts';
import { words } from '../words.ts';
import { useSending } from './useSending.ts';

/** A code with which somebody new sets a name and a password, in the role chosen here. */
export function AddPerson({ onMade }: { onMade: (made: MadeCode) => Promise<void> }) {
  const text = words.setUp;
  const [role, setRole] = useState<Role>('helper');
  const { sending, failed, send } = useSending();
  return (
    <form
      class="sign-in"
      onSubmit={(event) => {
        event.preventDefault();
        send(async () => onMade(await inviteSomebody(role)));
      }}
    >
      <h3>{text.add}</h3>
      <p class="quiet">{text.rolesWhy}</p>
      <label>
        {text.role}
        <select value={role} onChange={(event) => setRole(event.currentTarget.value as Role)}>
          <option value="helper">{text.roles.helper}</option>
          <option value="grower">{text.roles.grower}</option>
        </select>
      </label>
      <button type="submit" class="main" aria-disabled={sending}>
        {sending ? text.sending : text.makeCode}
      </button>
      <p role="status" class="failed-line">
        {failed}
      </p>
    </form>
  );
}
