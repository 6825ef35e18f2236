import { who } from '../state.ts';
import { words } from '../words.ts';
import { myName, nameMe } from './commands.ts';

/** Who decides or did it; not asked of somebody who is signed in. */
export function NameField({ label = words.lots.yourName }: { label?: string }) {
  if (who.value?.name != null) return null;
  return (
    <label>
      {label}
      <input
        required
        maxLength={60}
        autocomplete="name"
        value={myName()}
        onInput={(event) => nameMe(event.currentTarget.value)}
      />
    </label>
  );
}

/** The name as a command wants it: left out where the hub knows who asks. */
export const byMe = (): { by?: string } => (who.value?.name == null ? { by: myName().trim() } : {});
