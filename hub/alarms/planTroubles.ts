import { channelsOf, mayTell } from './hours.ts';
import type { AlarmSettings, Channel, Delivery } from './types.ts';

const DAY = 86_400_000; // ms
/** So many failures in a row are told to somebody on another way. Ours. */
const FAILING = 3;

/** Whether a message fails: it was refused, or could not be sent several times. */
export const fails = ({ what, state, tries }: Delivery): boolean =>
  what !== 'trouble' && (state === 'refused' || (state === 'waiting' && tries >= FAILING));

/**
 * That messages fail is told on a way that works, once a day for each person and channel: to the
 * same person first, then to the others in order, within the hours for what is not urgent.
 */
export function planTroubles(
  settings: AlarmSettings,
  deliveries: readonly Delivery[],
  minute: number,
  now: number,
): Delivery[] {
  const wanted = new Map<string, Delivery>();
  const made = new Set(deliveries.map(({ id }) => id));
  // Somebody who tests one way by hand sees the answer at once.
  const byHand = ({ id }: Delivery) => id.startsWith('test|');
  const failing = deliveries.filter((one) => fails(one) && !byHand(one) && now - one.madeAt < DAY);
  const broken = new Set(failing.map(({ person, channel }) => `${person}|${channel}`));
  for (const { person, channel, madeAt } of failing) {
    const id = `trouble|${person}|${channel}|${Math.floor(madeAt / DAY)}`;
    if (made.has(id) || wanted.has(id)) continue;
    const way = [...settings.people]
      .sort((a, b) => Number(b.id === person) - Number(a.id === person))
      .filter((one) => mayTell(one, 'today', settings, minute))
      .flatMap((one): [string, Channel][] => channelsOf(one).map((other) => [one.id, other]))
      .find(([to, other]) => !broken.has(`${to}|${other}`));
    if (!way) continue;
    const times = { madeAt: now, nextAt: now, tries: 0, endedAt: null };
    const about = { id, what: 'trouble', alarm: null, since: null, words: '' } as const;
    wanted.set(id, { ...about, ...times, person: way[0], channel: way[1], state: 'waiting' });
  }
  return [...wanted.values()];
}
