import type { ShownAlarmSettings } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

type Mail = NonNullable<ShownAlarmSettings['mail']>;
export type DraftMail = Pick<Mail, 'host' | 'port' | 'security' | 'from'> & {
  readonly user: string;
  readonly certificate: string;
  /** Empty: the one that is kept. */
  readonly password: string;
};

const PORTS = { tls: 465, starttls: 587, none: 25 }; // RFC 8314, RFC 6409, RFC 5321

export const draftMail = (mail: Mail | null): DraftMail => ({
  host: mail?.host ?? '',
  port: mail?.port ?? PORTS.starttls,
  security: mail?.security ?? 'starttls',
  from: mail?.from ?? '',
  user: mail?.user ?? '',
  certificate: mail?.certificate ?? '',
  password: '',
});

export function MailFields({
  mail,
  kept,
  onChange,
}: {
  mail: DraftMail;
  /** Whether a password is kept. */
  kept: boolean;
  onChange: (mail: DraftMail) => void;
}) {
  const text = words.alarms.sending;
  return (
    <>
      <label>
        {text.host}
        <input
          required
          maxLength={253}
          value={mail.host}
          onInput={(event) => onChange({ ...mail, host: event.currentTarget.value })}
        />
      </label>
      <label>
        {text.security}
        <select
          value={mail.security}
          onChange={(event) => {
            const security = event.currentTarget.value as DraftMail['security'];
            onChange({ ...mail, security, port: PORTS[security] });
          }}
        >
          {Object.entries(text.securities).map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        {text.port}
        <input
          type="number"
          required
          min={1}
          max={65535}
          value={mail.port}
          onInput={(event) => onChange({ ...mail, port: event.currentTarget.valueAsNumber })}
        />
      </label>
      <label>
        {text.user}
        <input
          maxLength={200}
          autocomplete="off"
          value={mail.user}
          onInput={(event) => onChange({ ...mail, user: event.currentTarget.value })}
        />
      </label>
      <label>
        {kept ? text.passwordKept : text.password}
        <input
          type="password"
          autocomplete="new-password"
          maxLength={500}
          value={mail.password}
          onInput={(event) => onChange({ ...mail, password: event.currentTarget.value })}
        />
      </label>
      <label>
        {text.fromAddress}
        <input
          type="email"
          required
          value={mail.from}
          onInput={(event) => onChange({ ...mail, from: event.currentTarget.value })}
        />
      </label>
      <label>
        {text.certificate}
        <textarea
          rows={3}
          value={mail.certificate}
          onInput={(event) => onChange({ ...mail, certificate: event.currentTarget.value })}
        />
      </label>
    </>
  );
}
