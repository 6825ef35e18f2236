import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { wallClock } from '../../clock.ts';
import { personName } from '../../contract/index.ts';
import { hashOfDrawn, newSecret } from '../../passwords.ts';
import { openStore } from '../../store/index.ts';
import { shown } from '../../words/index.ts';

const COUNTS_FOR = 60 * 60_000; // ms; ours: it is typed by whoever stands at the machine

/**
 * A one-time code with which somebody the hub knows sets a new password: for a last grower who has
 * forgotten it. Who can run this can read the store anyway.
 *
 * @throws Error when there is no store, or nobody of that name.
 */
export function codeForPerson(data: string, given: string): { code: string; role: string } {
  const path = join(data, 'dewpost.db');
  if (!existsSync(path)) throw new Error(`Expected a store in ${data}, got none`);
  const parsed = personName.safeParse(given);
  const store = openStore(path);
  try {
    const person = parsed.success ? store.people.get(parsed.data) : undefined;
    if (!person) throw new Error(`Expected the name of somebody here, got ${shown(given)}`);
    const { name, role } = person;
    const code = newSecret(4);
    const now = wallClock.now();
    store.transaction(() => {
      store.people.dropCodesOf(name);
      store.people.addCode({
        key: hashOfDrawn(code),
        ...{ role, name, until: now + COUNTS_FOR, madeBy: 'hub' },
      });
      store.journal.add({
        ...{ t: now, who: 'hub', what: 'code-made', place: null, subject: name, body: { role } },
      });
    });
    return { code, role };
  } finally {
    store.close();
  }
}
