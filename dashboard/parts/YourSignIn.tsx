import { useRef, useState } from 'preact/hooks';
import type { Role } from '../../hub/contract/index.ts';
import { changePassword } from '../commands.ts';
import { signOut } from '../signOut.ts';
import { words } from '../words.ts';
import { useSending } from './useSending.ts';

/** Change the own password; sign out in every browser. */
export function YourSignIn({ name, role }: { name: string; role: Role }) {
  const text = words.setUp;
  const { sending, failed, send } = useSending();
  const leaving = useSending();
  const [said, setSaid] = useState('');
  const form = useRef<HTMLFormElement>(null);
  return (
    <section class="set-up">
      <h2>{text.yours}</h2>
      <p>{text.signedIn(name, text.roles[role])}</p>
      <form
        class="sign-in"
        ref={form}
        onSubmit={(event) => {
          event.preventDefault();
          const given = new FormData(event.currentTarget);
          setSaid('');
          send(async () => {
            await changePassword(String(given.get('now')), String(given.get('new')));
            form.current?.reset();
            setSaid(text.changed);
          });
        }}
      >
        {/* For programs that keep passwords: whose this is. */}
        <input
          class="unseen"
          name="name"
          autoComplete="username"
          value={name}
          readOnly
          tabIndex={-1}
          aria-hidden="true"
        />
        <label>
          {text.passwordNow}
          <input
            name="now"
            type="password"
            required
            maxLength={200}
            autoComplete="current-password"
          />
        </label>
        <label>
          {text.newPassword}
          <input
            name="new"
            type="password"
            required
            minLength={10}
            maxLength={200}
            autoComplete="new-password"
            aria-describedby="new-password-rule"
          />
        </label>
        <p class="quiet" id="new-password-rule">
          {words.signIn.atLeast}
        </p>
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? text.sending : text.change}
        </button>
        <p role="status" class={failed === '' ? 'said' : 'failed-line'}>
          {failed || said}
        </p>
      </form>
      <p>{text.everywhereWhy}</p>
      <button type="button" onClick={() => leaving.send(() => signOut('/api/sign-out-everywhere'))}>
        {text.everywhere}
      </button>
      <p role="status" class="failed-line">
        {leaving.failed}
      </p>
    </section>
  );
}
