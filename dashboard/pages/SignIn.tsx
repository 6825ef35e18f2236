import { useState } from 'preact/hooks';
import { claim, signIn } from '../commands.ts';
import { Heading } from '../parts/Heading.tsx';
import { signInNeeded, who } from '../state.ts';
import { words } from '../words.ts';

/** Sign in; or, on a hub nobody has claimed, the one-time code and a first name and password. */
export function SignIn() {
  const text = words.signIn;
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const claiming = who.value?.claimed === false;
  if (who.value !== null && !signInNeeded.value) {
    return (
      <>
        <Heading title={text.title} />
        <p>{text.noNeed}</p>
        <p>
          <a href="/">{words.frame.toToday}</a>
        </p>
      </>
    );
  }
  const send = async (event: SubmitEvent & { currentTarget: HTMLFormElement }) => {
    event.preventDefault();
    if (sending) return;
    const form = new FormData(event.currentTarget);
    const told = (name: string) => String(form.get(name) ?? '');
    const name = told('name').trim();
    setSending(true);
    setFailed('');
    try {
      if (claiming) await claim(told('code').trim(), name, told('password'));
      else await signIn(name, told('password'));
    } catch (error) {
      setFailed(text.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  return (
    <>
      <Heading title={claiming ? text.claimTitle : text.title} />
      {claiming && <p>{text.claimWhy}</p>}
      <form class="sign-in" onSubmit={send}>
        {claiming && (
          <label>
            {text.code}
            <input
              name="code"
              required
              maxLength={40}
              autoComplete="one-time-code"
              autoCapitalize="none"
            />
          </label>
        )}
        <label>
          {text.name}
          <input name="name" required maxLength={60} autoComplete="username" />
        </label>
        <label>
          {claiming ? text.newPassword : text.password}
          <input
            name="password"
            type="password"
            required
            minLength={claiming ? 10 : 1}
            maxLength={200}
            autoComplete={claiming ? 'new-password' : 'current-password'}
            aria-describedby={claiming ? 'password-rule' : undefined}
          />
        </label>
        {claiming && (
          <p class="quiet" id="password-rule">
            {text.atLeast}
          </p>
        )}
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? text.sending : claiming ? text.claim : text.signIn}
        </button>
        <p role="status" class="failed-line">
          {failed}
        </p>
      </form>
    </>
  );
}
