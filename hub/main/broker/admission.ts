import { HEARTBEAT } from '../../broker/index.ts';
import type { Mapping } from '../../contract/index.ts';
import { mappingOf } from '../../intake/index.ts';
import type { Store } from '../../store/index.ts';
import { doorKeeper } from './doorKeeper.ts';

/** Passwords of listeners are secrets of the hub: a listener is no probe. */
export const listenerSecret = (name: string) => `listener:${name}`;

/** What a lamp, a siren or a second screen may read. */
const HEARD = [HEARTBEAT, 'dewpost/task'];
/** Where the hub tells one probe its settings. */
export const settingsOf = (probe: string) => `dewpost/probe/${probe}`;

/** Whether all that a topic filter lets through lies at or under a topic without wildcards. */
const within = (filter: string, root: string) =>
  filter === root || (filter.startsWith(`${root}/`) && filter.length > root.length + 1);

/**
 * Who may connect, publish and read. A probe speaks under its own name only and reads its settings; a
 * listener hears alarms, tasks and the heartbeat, and says nothing. On an open hub anybody does all
 * that the hub does not keep for itself.
 */
export function admission(store: Store, open: boolean, mappings: () => readonly Mapping[]) {
  const passwordOf = (user: string) =>
    store.people.secret(listenerSecret(user)) ?? store.probes.get(user)?.password;
  const listens = (user: string) => store.people.secret(listenerSecret(user)) !== undefined;
  const keeper = doorKeeper(passwordOf);

  const mayPublish = (user: string | null, topic: string): boolean => {
    if (open) return true;
    if (user === null || listens(user)) return false;
    if (topic === `garden/${user}` || topic.startsWith(`garden/${user}/`)) return true;
    if (topic === 'garden' || topic.startsWith('garden/')) return false;
    const found = mappingOf(mappings(), topic);
    if (!found) return false;
    const { mapping, probe } = found;
    if (mapping.sender !== undefined) return mapping.sender === user;
    // Where the message itself names the probe, the intake holds that name against its sender's.
    return probe === null || probe === user;
  };

  const maySubscribe = (user: string | null, filter: string): boolean => {
    if (open) return true;
    if (user === null) return false;
    if (!listens(user)) return within(filter, settingsOf(user));
    return HEARD.includes(filter) || within(filter, 'dewpost/alarm');
  };

  return {
    mayConnect: open ? async () => true : keeper,
    mayPublish,
    maySubscribe,
  };
}
