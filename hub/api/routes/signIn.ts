import type { FastifyBaseLogger } from 'fastify';
import * as contract from '../../contract/index.ts';
import { hashOfDrawn, hashPassword, NOBODY, passwordFits } from '../../passwords.ts';
import { CLAIM_CODE } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import type { Session, Sessions } from '../sessions.ts';
import { shownWho } from '../shownWho.ts';
import type { WayIn } from '../wayIn.ts';

/** Requests to get in, per address and minute, whether they fail or not. Ours. */
const MOST_A_MINUTE = 10;
export const few = { rateLimit: { max: MOST_A_MINUTE, timeWindow: 60_000 }, secret: true };

export type SignInParts = {
  readonly sessions: Sessions;
  readonly wayIn: WayIn;
  readonly wall: () => number;
  readonly log: FastifyBaseLogger;
};

const claimedAlready = () =>
  new Refused(409, 'Expected a hub that nobody has claimed, got one that is claimed: sign in');

/** Who is asking, and the ways in: the code of a first start, a name and its password, a code. */
export function signInRoutes(
  app: App,
  parts: ApiParts,
  { sessions, wayIn, wall, log }: SignInParts,
) {
  const { store, clock } = parts;
  const people = () => store.people; // another one after mending
  const who = (session: Pick<Session, 'name' | 'role'> | null) => shownWho(parts, session);
  const whoIsNow = (name: string) =>
    who({ name, role: contract.role.parse(people().get(name)?.role) });
  const write = (name: string, what: string, body: object = {}) =>
    store.journal.add({ t: clock.now(), who: name, what, place: null, subject: name, body });

  app.get('/api/who', { schema: { response: { 200: contract.who } } }, ({ session }) =>
    who(session),
  );

  app.post(
    '/api/claim',
    { config: few, schema: { body: contract.claim, response: { 200: contract.who } } },
    async (request, reply) => {
      const { code, name, password } = request.body;
      const kept = people().secret(CLAIM_CODE);
      if (people().claimed() || kept === undefined) throw claimedAlready();
      const attempt = wayIn.begin(request, CLAIM_CODE);
      if (!(await passwordFits(code.trim().toLowerCase(), kept)))
        throw new Refused(
          403,
          'Expected the code the hub printed when it started, got another one in code',
        );
      attempt.gotIn();
      expectFree(name);
      const hash = await hashPassword(password);
      store.transaction(() => {
        // Somebody else may have claimed it while the password was worked on.
        if (people().claimed()) throw claimedAlready();
        people().add(name, hash);
        people().dropSecret(CLAIM_CODE);
        write(name, 'claimed');
      });
      log.info({ request: request.id, person: name }, 'the hub is claimed');
      wayIn.remember(request, name);
      sessions.start(reply, name);
      return whoIsNow(name);
    },
  );

  app.post(
    '/api/sign-in',
    { config: few, schema: { body: contract.signIn, response: { 200: contract.who } } },
    async (request, reply) => {
      const { name, password } = request.body;
      const attempt = wayIn.begin(request, name);
      const hash = people().passwordOf(name);
      // As long for a name that nobody has: the answer's time tells nobody who there is.
      const fits = await passwordFits(password, hash ?? NOBODY);
      // The same, should it have been changed or taken away meanwhile.
      if (!fits || people().passwordOf(name) !== hash)
        throw new Refused(403, 'Expected a name and its password, got others');
      attempt.gotIn();
      sessions.start(reply, name);
      return whoIsNow(name);
    },
  );

  app.post(
    '/api/join',
    { config: few, schema: { body: contract.join, response: { 200: contract.who } } },
    async (request, reply) => {
      const { name, password } = request.body;
      const key = hashOfDrawn(request.body.code.trim().toLowerCase());
      const attempt = wayIn.begin(request, name);
      const find = () =>
        people()
          .codes(wall())
          .find((one) => one.key === key);
      const hash = await hashPassword(password);
      const joined = store.transaction(() => {
        const code = find();
        if (!code)
          throw new Refused(
            403,
            'Expected a code that a grower made and nobody has used, got another one in code',
          );
        if (code.name !== null && code.name !== name)
          throw new Refused(403, 'Expected the name the code was made for in name, got another');
        people().dropCode(key);
        if (code.name === null) {
          expectFree(name);
          people().add(name, hash, code.role);
        } else people().setPassword(name, hash);
        write(name, code.name === null ? 'joined' : 'password-set', { role: code.role });
        return code;
      });
      attempt.gotIn();
      if (joined.name !== null) sessions.endAllOf(name);
      log.info(
        { request: request.id, person: name, role: joined.role },
        'somebody joined with a code',
      );
      sessions.start(reply, name);
      return whoIsNow(name);
    },
  );

  /** @throws Refused 409 for a name that somebody has, or that the journal means another by. */
  function expectFree(name: string) {
    const wanted = name.toLowerCase();
    const taken = people()
      .all()
      .some((one) => one.name.toLowerCase() === wanted);
    if (taken || ['hub', 'grower', 'helper', CLAIM_CODE].includes(wanted))
      throw new Refused(409, 'Expected a name that nobody here has in name, got one that is taken');
  }

  app.post('/api/sign-out', { schema: { response: { 200: contract.who } } }, (request, reply) => {
    sessions.end(request, reply);
    return who(null);
  });

  app.post(
    '/api/sign-out-everywhere',
    { schema: { response: { 200: contract.who } } },
    (request, reply) => {
      const { session } = request;
      if (session) {
        sessions.endAllOf(session.name);
        write(session.name, 'signed-out-everywhere');
      }
      sessions.end(request, reply);
      return who(null);
    },
  );

  app.post(
    '/api/password',
    { config: few, schema: { body: contract.changePassword, response: { 200: contract.who } } },
    async (request, reply) => {
      const { session } = request;
      if (!session)
        throw new Refused(409, 'Expected somebody who is signed in, got a hub that is open');
      const { name } = session;
      const attempt = wayIn.begin(request, name);
      const before = people().passwordOf(name);
      if (!(await passwordFits(request.body.password, before ?? NOBODY)))
        throw new Refused(403, 'Expected the password as it is now in password, got another one');
      const hash = await hashPassword(request.body.newPassword);
      attempt.gotIn();
      store.transaction(() => {
        if (people().passwordOf(name) !== before)
          throw new Refused(409, 'Expected a password that stands, got one changed meanwhile');
        people().setPassword(name, hash);
        people().dropCodesOf(name);
        write(name, 'password-changed');
      });
      sessions.endAllOf(name);
      sessions.start(reply, name);
      return who(session);
    },
  );
}
