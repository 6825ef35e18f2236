import * as contract from '../../contract/index.ts';
import { hashOfDrawn, newSecret } from '../../passwords.ts';
import type { JoinCode } from '../../store/index.ts';
import { shown as quoted } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso, isoOrNull } from '../present.ts';
import type { SignInParts } from './signIn.ts';

/** A code not used by then is of no more use. ms, ours: it may be carried to somebody. */
export const CODE_COUNTS_FOR = 3 * 86_400_000;
/** Groups of four letters: 79 random bits. */
const GROUPS = 4;
/** Codes that wait at the same time. Ours. */
const MOST_CODES = 20;
/** Digits of a code's hash that name it. */
const ID = 12;

const shownCode = ({ key, role, name, until }: JoinCode) => ({
  id: key.slice(0, ID),
  role: contract.role.parse(role),
  name,
  until: iso(until),
});

/** Who may sign in: for growers. */
export function peopleRoutes(app: App, parts: ApiParts, { sessions, wall }: SignInParts) {
  const { store, clock } = parts;
  const people = () => store.people; // another one after mending

  const shown = () => ({
    people: people()
      .all()
      .map(({ name, role, seenAt }) => ({
        name,
        role: contract.role.parse(role),
        seenAt: isoOrNull(seenAt),
      })),
    codes: people().codes(wall()).map(shownCode),
  });
  const known = (name: string) => {
    const person = people().get(name);
    if (person) return person;
    throw new Refused(404, `Expected the name of somebody here, got ${quoted(name)}`);
  };
  const write = (who: string, what: string, subject: string | null, body: object) =>
    store.journal.add({ t: clock.now(), who, what, place: null, subject, body });

  function makeCode(role: contract.Role, name: string | null, who: string) {
    if (parts.open)
      throw new Refused(409, 'Expected a hub that people sign in to, got one that is open');
    const code = newSecret(GROUPS);
    const row = {
      key: hashOfDrawn(code),
      role,
      name,
      until: wall() + CODE_COUNTS_FOR,
      madeBy: who,
    };
    store.transaction(() => {
      people().dropOldCodes(wall());
      if (name !== null) people().dropCodesOf(name); // the newest one counts
      if (people().codes(wall()).length >= MOST_CODES)
        throw new Refused(409, `Expected at most ${MOST_CODES} codes that wait, got one more`);
      people().addCode(row);
      write(who, 'code-made', name, { role });
    });
    return { code, ...shownCode(row) };
  }

  app.get('/api/people', { schema: { response: { 200: contract.people } } }, shown);

  app.post(
    '/api/people/codes',
    { schema: { body: contract.inviteSomebody, response: { 200: contract.madeCode } } },
    (request) => makeCode(request.body.role, null, whoIs(request)),
  );

  app.post(
    '/api/people/codes/:id/drop',
    { schema: { params: contract.codeParam, response: { 200: contract.people } } },
    (request) => {
      const code = people()
        .codes(wall())
        .find(({ key }) => key.startsWith(request.params.id));
      if (!code)
        throw new Refused(
          404,
          `Expected the id of a code that waits, got ${quoted(request.params.id)}`,
        );
      store.transaction(() => {
        people().dropCode(code.key);
        write(whoIs(request), 'code-dropped', code.name, { role: code.role });
      });
      return shown();
    },
  );

  app.post(
    '/api/people/:name/code',
    { schema: { params: contract.personParam, response: { 200: contract.madeCode } } },
    (request) => {
      const { name, role } = known(request.params.name);
      return makeCode(contract.role.parse(role), name, whoIs(request));
    },
  );

  app.post(
    '/api/people/:name/remove',
    { schema: { params: contract.personParam, response: { 200: contract.people } } },
    (request) => {
      store.transaction(() => {
        const { name, role } = known(request.params.name);
        const growers = people()
          .all()
          .filter((one) => one.role === 'grower');
        if (role === 'grower' && growers.length === 1)
          throw new Refused(409, `Expected another grower to stay, got ${name}, the last one`);
        people().remove(name);
        write(whoIs(request), 'person-removed', name, { role });
      });
      sessions.endAllOf(request.params.name);
      return shown();
    },
  );
}
