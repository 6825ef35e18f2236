import { useState } from 'preact/hooks';
import type { ChangeAlarmSettings, ShownAlarmSettings } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type DraftMail, draftMail, MailFields } from './MailFields.tsx';
import { useSaving } from './useSaving.ts';

const QUARTER = 15; // min; ours, how often a dead-man elsewhere is told

const mailOf = ({ password, user, certificate, ...mail }: DraftMail) => ({
  ...mail,
  user: user === '' ? null : user,
  certificate: certificate.trim() === '' ? null : certificate,
  ...(password === '' ? {} : { password }),
});

/** Mail server, webhook secret, the address for links, and the "I am alive" message. */
export function SendingForm({ settings }: { settings: ShownAlarmSettings }) {
  const text = words.alarms.sending;
  const [address, setAddress] = useState(settings.address ?? '');
  const [mail, setMail] = useState(settings.mail ? draftMail(settings.mail) : null);
  const [secret, setSecret] = useState('');
  const [alive, setAlive] = useState(settings.alive !== null);
  const [aliveUrl, setAliveUrl] = useState('');
  const [every, setEvery] = useState(settings.alive?.everyMinutes ?? QUARTER);
  const { saving, said, save } = useSaving();
  const send = async (event: SubmitEvent) => {
    event.preventDefault();
    const change: ChangeAlarmSettings = {
      address: address === '' ? null : address,
      mail: mail && mailOf(mail),
      ...(secret === '' ? {} : { webhookSecret: secret }),
      alive: alive ? { everyMinutes: every, ...(aliveUrl === '' ? {} : { url: aliveUrl }) } : null,
    };
    if (!(await save(change))) return;
    // What was typed is with the hub now, and nowhere else.
    setSecret('');
    setAliveUrl('');
    if (mail) setMail({ ...mail, password: '' });
  };
  return (
    <form class="alarm-form" onSubmit={send}>
      <label>
        {text.address}
        <input
          type="url"
          maxLength={500}
          value={address}
          placeholder="http://192.168.1.20:8470"
          onInput={(event) => setAddress(event.currentTarget.value)}
        />
      </label>
      <fieldset>
        <legend>{text.mail}</legend>
        <label class="tick">
          <input
            type="checkbox"
            checked={mail !== null}
            onChange={(event) => setMail(event.currentTarget.checked ? draftMail(null) : null)}
          />{' '}
          {text.mailOn}
        </label>
        {mail === null ? (
          <p class="quiet">{text.mailOff}</p>
        ) : (
          <MailFields mail={mail} kept={settings.mail?.hasPassword ?? false} onChange={setMail} />
        )}
      </fieldset>
      <label>
        {settings.hasWebhookSecret ? text.secretKept : text.secret}
        <input
          type="password"
          autocomplete="new-password"
          minLength={16}
          maxLength={200}
          value={secret}
          onInput={(event) => setSecret(event.currentTarget.value)}
        />
      </label>
      <fieldset>
        <legend>{text.alive}</legend>
        <label class="tick">
          <input
            type="checkbox"
            checked={alive}
            onChange={(event) => setAlive(event.currentTarget.checked)}
          />{' '}
          {text.aliveOn}
        </label>
        {alive && (
          <>
            <label>
              {settings.alive ? text.aliveKept(settings.alive.server) : text.aliveUrl}
              <input
                type="url"
                required={settings.alive === null}
                maxLength={500}
                autocomplete="off"
                value={aliveUrl}
                onInput={(event) => setAliveUrl(event.currentTarget.value)}
              />
            </label>
            <label>
              {text.aliveEvery}
              <input
                type="number"
                required
                min={1}
                max={1440}
                value={every}
                onInput={(event) => setEvery(event.currentTarget.valueAsNumber)}
              />
            </label>
          </>
        )}
      </fieldset>
      <button type="submit" class="main" aria-disabled={saving}>
        {saving ? text.saving : text.save}
      </button>
      <p role="status" class="failed-line">
        {said}
      </p>
    </form>
  );
}
