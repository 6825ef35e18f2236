import { createServer, type Socket } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { messageId, sendEmail } from '../../../hub/alarms/index.ts';
import { anEmail, deadPort, mailTo, startMailServer } from './mailServer.ts';

test('an e-mail goes out over STARTTLS, with a name that stays the same for each try', async () => {
  const server = await startMailServer();
  const email = anEmail({ text: 'It is 7.1 °C.\n' });
  expect(await sendEmail(mailTo(server.port), email)).toEqual({
    outcome: 'delivered',
    words: '250 queued as 7F3A',
  });
  await sendEmail(mailTo(server.port), email);
  const ids = server.received.map(({ raw }) => /^Message-ID: (.*)$/im.exec(raw)?.[1]);
  expect(new Set(ids).size).toBe(1);
  expect(ids[0]).toBe(messageId(email.id, 'hub@garden.example.org'));
  // RFC 5322, section 3.6.4: left part, @, right part, in angle brackets.
  expect(ids[0]).toMatch(/^<[0-9a-f]{32}@garden\.example\.org>$/);
  const [{ raw = '', to, from } = {}] = server.received;
  expect([from, to]).toEqual(['hub@garden.example.org', ['ann@example.org']]);
  expect(raw).toMatch(/^Subject: Alarm: Shut the door$/m);
  expect(raw).toMatch(/^Auto-Submitted: auto-generated$/m);
  expect(raw).toMatch(/^Importance: high$/im);
});

test('the end of an alarm answers the message that told of it', async () => {
  const server = await startMailServer();
  await sendEmail(mailTo(server.port), anEmail({ id: 'over|a', answers: 'raised|a' }));
  const raw = server.received[0]?.raw ?? '';
  expect(raw).toContain(`In-Reply-To: ${messageId('raised|a', 'hub@garden.example.org')}`);
});

test('TLS from the first byte, with user and password', async () => {
  const server = await startMailServer({
    secure: true,
    authOptional: false,
    onAuth: ({ username, password }, _session, callback) =>
      username === 'hub' && password === 'right'
        ? callback(null, { user: 'hub' })
        : callback(new Error('Wrong user or password')),
  });
  const mail = { security: 'tls', user: 'hub', password: 'right' } as const;
  expect((await sendEmail(mailTo(server.port, mail), anEmail())).outcome).toBe('delivered');
  // A password may be put right: it is tried again, and the server's words are shown.
  const wrong = await sendEmail(mailTo(server.port, { ...mail, password: 'wrong' }), anEmail());
  expect(wrong).toEqual({ outcome: 'later', words: expect.stringMatching(/^535 .*Wrong user/) });
});

test('a certificate that nobody vouches for is not trusted, and no password is sent', async () => {
  const passwords: unknown[] = [];
  const server = await startMailServer({
    onAuth: (auth, _session, callback) => {
      passwords.push(auth.password);
      callback(null, { user: 'hub' });
    },
  });
  const mail = mailTo(server.port, { certificate: null, user: 'hub', password: 'secret' });
  const sent = await sendEmail(mail, anEmail());
  expect(sent).toEqual({ outcome: 'later', words: expect.stringMatching(/certificate/i) });
  expect(passwords).toEqual([]);
  expect(server.received).toEqual([]);
});

test('a server that offers no STARTTLS gets neither password nor message', async () => {
  const server = await startMailServer({ disabledCommands: ['STARTTLS'] });
  const sent = await sendEmail(mailTo(server.port, { user: 'hub', password: 'x' }), anEmail());
  expect(sent.outcome).toBe('later');
  expect(server.received).toEqual([]);
});

// Source: RFC 5321, section 4.2.1: 4yz is transient, 5yz permanent.
test.for([
  [450, 'later', 'Greylisted, try again'],
  [421, 'later', 'Too busy'],
  [550, 'refused', 'No such mailbox'],
  [554, 'refused', 'Not wanted here'],
] as const)('a server that answers %d means %s', async ([code, outcome, words]) => {
  const server = await startMailServer({
    onRcptTo: (_address, _session, callback) =>
      callback(Object.assign(new Error(words), { responseCode: code })),
  });
  const sent = await sendEmail(mailTo(server.port), anEmail());
  expect(sent).toEqual({ outcome, words: expect.stringContaining(`${code} ${words}`) });
});

test('a port on which nobody listens is tried later', async () => {
  const sent = await sendEmail(mailTo(await deadPort()), anEmail());
  expect(sent).toEqual({ outcome: 'later', words: expect.stringMatching(/ECONNREFUSED/) });
});

test('a server that never says a word does not hold the hub', { timeout: 60_000 }, async () => {
  const sockets: Socket[] = [];
  const server = createServer((socket) => void sockets.push(socket));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
  });
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  const sent = await sendEmail(mailTo(port), anEmail());
  expect(sent).toEqual({ outcome: 'later', words: expect.stringMatching(/greeting/i) });
});

test('a name or a subject with line breaks adds no header', async () => {
  const server = await startMailServer();
  const subject = 'Alarm\r\nBcc: eve@example.org\r\n\r\nhello';
  await sendEmail(mailTo(server.port), anEmail({ subject }));
  const [head = ''] = (server.received[0]?.raw ?? '').split('\r\n\r\n');
  expect(head).not.toMatch(/^Bcc:/im);
  expect(server.received[0]?.to).toEqual(['ann@example.org']);
});
