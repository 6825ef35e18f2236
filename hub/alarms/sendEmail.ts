import { createHash } from 'node:crypto';
import { createTransport } from 'nodemailer';
import { oneLine, type Sent } from './sent.ts';

/** How to reach the mail server. Its certificate is always checked. */
export type MailServer = {
  readonly host: string;
  readonly port: number;
  /** `tls`: encrypted from the first byte. `starttls`: made so before anything is said. */
  readonly security: 'tls' | 'starttls' | 'none';
  readonly user: string | null;
  readonly password: string | null;
  /** Address the mail comes from. */
  readonly from: string;
  /** Certificate (PEM) to trust beside those the system trusts: that of a server of one's own. */
  readonly certificate: string | null;
};

export type Email = {
  /** Kept name of the message: the same each time it is sent, so that two copies fold into one. */
  readonly id: string;
  readonly to: string;
  readonly subject: string;
  readonly text: string;
  readonly urgent: boolean;
  /** Name of the message this one ends. */
  readonly answers: string | null;
};

const CONNECT = 10_000; // ms, ours
const SILENCE = 15_000; // ms without a word from the server, ours
const WHOLE = 60_000; // ms for one message, ours

/** Message-ID as of RFC 5322, section 3.6.4; made from the name, so the same for each try. */
export const messageId = (id: string, from: string): string => {
  const name = createHash('sha256').update(id).digest('hex').slice(0, 32);
  return `<${name}@${from.split('@').at(-1) ?? 'localhost'}>`;
};

type Fault = Error & { code?: string; responseCode?: number; response?: string };

/** Sends one e-mail over SMTP. Never throws: what went wrong is in what it returns. */
export async function sendEmail(server: MailServer, email: Email): Promise<Sent> {
  const { host, port, security, user, password, from, certificate } = server;
  const transport = createTransport({
    host,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user === null ? {} : { auth: { user, pass: password ?? '' } }),
    tls: {
      rejectUnauthorized: true,
      minVersion: 'TLSv1.2',
      ...(certificate === null ? {} : { ca: certificate }),
    },
    connectionTimeout: CONNECT,
    greetingTimeout: CONNECT,
    socketTimeout: SILENCE,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  let late: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    late = setTimeout(() => reject(new Error(`no end within ${WHOLE / 1000} s`)), WHOLE);
  });
  try {
    const { response } = await Promise.race([
      transport.sendMail({
        from,
        to: email.to,
        subject: email.subject,
        text: email.text,
        messageId: messageId(email.id, from),
        ...(email.answers === null ? {} : { inReplyTo: messageId(email.answers, from) }),
        priority: email.urgent ? 'high' : 'normal',
        // RFC 3834, section 5: no out-of-office answers to a machine.
        headers: { 'Auto-Submitted': 'auto-generated' },
      }),
      tooLong,
    ]);
    return { outcome: 'delivered', words: oneLine(response) };
  } catch (error) {
    return failed(error as Fault);
  } finally {
    clearTimeout(late);
    transport.close();
  }
}

/** What is said of this message or its reader; all else may be mended where the server is set. */
const OF_THE_MESSAGE = new Set(['EENVELOPE', 'EMESSAGE']);

/** RFC 5321, section 4.2.1: 5yz is for good, 4yz for now. */
function failed({ code = '', responseCode = 0, response, message }: Fault): Sent {
  const words = oneLine(response ?? message);
  const forGood = responseCode >= 500 && OF_THE_MESSAGE.has(code);
  return { outcome: forGood ? 'refused' : 'later', words };
}
