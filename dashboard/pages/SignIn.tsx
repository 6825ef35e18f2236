import { useState } from 'preact/hooks';
import { claim, join, signIn } from '../commands.ts';
import { Heading } from '../parts/Heading.tsx';
import { go } from '../router.ts';
import { farm, signInNeeded, who } from '../state.ts';
import { words } from '../words.ts';

type Way = 'sign-in' | 'join' | 'claim';

const text = words.signIn;
const shown: Readonly<Record<Way, { title: string; why: string | null; send: string }>> = {
  claim: { title: text.claimTitle, why: text.claimWhy, send: text.claim },
  join: { title: text.joinTitle, why: text.joinWhy, send: text.join },
  'sign-in': { title: text.title, why: null, send: text.signIn },
};

/** A name and its password; or a one-time code with which they are set. */
export function SignIn() {
  const [wanted, setWanted] = useState<Way>('sign-in');
  const [sending, setSending] = useState(false);
  const [failed, setFailed] = useState('');
  const way = who.value?.claimed === false ? 'claim' : wanted;
  const setting = way !== 'sign-in';
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
    const [code, name, password] = [told('code').trim(), told('name').trim(), told('password')];
    setSending(true);
    setFailed('');
    try {
      if (way === 'claim') {
        await claim(code, name, password);
        if (farm.value?.settled === false) go('/set-up/name'); // the first thing there is to do
      } else if (way === 'join') await join(code, name, password);
      else await signIn(name, password);
    } catch (error) {
      setFailed(text.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setSending(false);
    }
  };
  const { title, why, send: sendWord } = shown[way];
  return (
    <>
      <Heading title={title} />
      {why !== null && <p>{why}</p>}
      <form class="sign-in" onSubmit={send}>
        {setting && (
          <label>
            {text.code}
            <input
              name="code"
              required
              maxLength={40}
              autoComplete="one-time-code"
              autoCapitalize="none"
              spellcheck={false}
            />
          </label>
        )}
        <label>
          {text.name}
          <input name="name" required maxLength={60} autoComplete="username" />
        </label>
        <label>
          {setting ? text.newPassword : text.password}
          <input
            key={way}
            name="password"
            type="password"
            required
            minLength={setting ? 10 : 1}
            maxLength={200}
            autoComplete={setting ? 'new-password' : 'current-password'}
            aria-describedby={setting ? 'password-rule' : undefined}
          />
        </label>
        {setting && (
          <p class="quiet" id="password-rule">
            {text.atLeast}
          </p>
        )}
        <button type="submit" class="main" aria-disabled={sending}>
          {sending ? text.sending : sendWord}
        </button>
        <p role="status" class="failed-line">
          {failed}
        </p>
      </form>
      {way !== 'claim' && (
        <button
          type="button"
          class="plain"
          onClick={() => {
            setFailed('');
            setWanted(setting ? 'sign-in' : 'join');
          }}
        >
          {setting ? text.havePassword : text.haveCode}
        </button>
      )}
    </>
  );
}
