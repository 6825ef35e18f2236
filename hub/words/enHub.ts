import type { CoolRoom, Evidence, PlaceNow, Task } from '../contract/index.ts';
import { caution, title, why } from './enTasks.ts';

// Sentences the hub itself makes, in English.

const MINUTE = 60_000;

const one = (value: number) => value.toFixed(1).replace('-', '−');
const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
const clock = (t: number, zone: string) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' }).format(
    t,
  );

const ago = (ms: number) => {
  const minutes = Math.max(0, Math.round(ms / MINUTE));
  if (minutes < 1) return 'just now';
  if (minutes < 90) return `${minutes} min ago`;
  const hours = Math.round(minutes / 60);
  return hours < 48 ? `${hours} h ago` : `${Math.round(hours / 24)} days ago`;
};

type TaskFacts = Pick<Task, 'kind' | 'subject'> & {
  readonly because: readonly Evidence[];
  readonly missing: readonly string[];
};

export const taskWords = (task: TaskFacts, place: string) => ({
  title: title({ kind: task.kind, place, subject: task.subject, because: task.because }),
  why: why(task.kind, task.because, task.missing),
  caution: caution(task.kind),
});

type PlaceFacts = Pick<PlaceNow, 'temperature' | 'humidity' | 'stale' | 'wet'> & {
  readonly readAt: number | null;
};

export function placeNowWords(name: string, facts: PlaceFacts, now: number): string {
  if (facts.readAt === null) return `Cannot say how ${name} is: no readings yet.`;
  const parts = [
    facts.temperature === null ? '' : `${one(facts.temperature)} °C`,
    facts.humidity === null ? '' : `${facts.humidity.toFixed(0)} % humidity`,
  ].filter(Boolean);
  if (facts.stale)
    return `Cannot say how ${name} is now: the last reading, ${parts.join(' and ')}, came ${ago(now - facts.readAt)}.`;
  const leaves = facts.wet === null ? '' : facts.wet ? ', leaves wet' : ', leaves dry';
  return `${name}: ${parts.join(', ')}${leaves}.`;
}

type StripText = {
  readonly temperature: readonly (number | null)[];
  readonly wetSpells: readonly { from: number; to: number; wetHours: number }[];
  readonly fan: readonly { t: number; low: number; middle: number; high: number }[];
};

/** The same facts as the picture, for those who don't see it. */
export function stripWords(strip: StripText, now: PlaceNow | null, zone: string): string {
  const values = strip.temperature.filter((value) => value !== null);
  const sentences: string[] = [now?.words ?? ''];
  if (values.length > 0)
    sentences.push(
      `Since yesterday’s dusk between ${one(Math.min(...values))} and ${one(Math.max(...values))} °C.`,
    );
  if (strip.temperature.includes(null)) sentences.push('There are stretches without readings.');
  const wet = strip.wetSpells.map(
    ({ from, to, wetHours }) =>
      `from ${clock(from, zone)} to ${clock(to, zone)} (${one(wetHours)} h)`,
  );
  if (wet.length > 0) sentences.push(`Leaves wet ${listed(wet)}.`);
  const lowest = strip.fan.reduce<StripText['fan'][number] | null>(
    (low, point) => (low === null || point.middle < low.middle ? point : low),
    null,
  );
  if (lowest)
    sentences.push(
      `Tonight’s low is expected near ${one(lowest.middle)} °C, between ${one(lowest.low)} and ${one(lowest.high)} °C in eight nights of ten.`,
    );
  return sentences.filter(Boolean).join(' ');
}

export type TodayFacts = {
  readonly tasks: readonly Task[];
  readonly places: readonly PlaceNow[];
  readonly coolRooms: readonly CoolRoom[];
  readonly zone: string;
};

/** The one sentence at half past six: is anything wrong, and what comes first. */
export function todaySentence({ tasks, places, coolRooms, zone }: TodayFacts): string {
  const now = tasks.filter(({ until }) => until === null);
  const alarms = now.filter(({ alarm }) => alarm);
  const silent = places.filter(({ stale, spots }) => stale && spots.length > 0);
  const blind = coolRooms.filter(({ state }) => state === 'unknown').map(({ id }) => id);
  const by = (task: Task) =>
    task.doBy === null ? '' : ` by ${clock(Date.parse(task.doBy), zone)}`;
  const parts: string[] = [];
  const first = alarms[0] ?? now[0];
  if (alarms.length > 0 && first) {
    parts.push(`This cannot wait: ${lower(first.title)}${by(first)}.`);
    const rest = now.length - 1;
    if (rest > 0) parts.push(`${rest} more ${rest === 1 ? 'thing' : 'things'} to do.`);
  } else if (first) {
    parts.push(
      now.length === 1
        ? `One thing to do: ${lower(first.title)}${by(first)}.`
        : `${now.length} things to do, first: ${lower(first.title)}${by(first)}.`,
    );
  }
  const unseen = [
    ...new Set([
      ...silent.map(({ name }) => name),
      ...places.filter(({ id }) => blind.includes(id)).map(({ name }) => name),
    ]),
  ];
  if (unseen.length > 0) parts.push(`Cannot say how ${listed(unseen)} is: no fresh readings.`);
  if (parts.length === 0)
    parts.push(
      places.some(({ readAt }) => readAt !== null)
        ? 'Nothing asks to be done now.'
        : 'No readings have come yet.',
    );
  return parts.join(' ');
}

const lower = (title: string) => title.charAt(0).toLowerCase() + title.slice(1);

export const suggestionWords = (place: string, apart: number) =>
  `Its temperatures of the last day are within ${one(apart)} °C of those in ${place}.`;

const refusals: Readonly<Record<string, string>> = {
  'not-json': 'The message is not JSON',
  'not-a-number': 'A value is not a number',
  'unknown-form': 'The message has a form nobody described',
  'unknown-quantity': 'The quantity is not one the hub knows',
  'unknown-unit': 'The unit does not belong to the quantity',
  'bad-name': 'The name is not one a probe can have',
  'bad-time': 'The time cannot be read',
  'missing-field': 'A field is missing',
  'too-long': 'The message is too long',
  'not-used': 'The hub does not read this yet',
  'out-of-range': 'A value no probe can mean; kept, not used',
  clock: 'The probe’s clock is wrong; kept, not used',
  spike: 'A jump that the next reading did not confirm; kept, not used',
  'impossible-rate': 'A change faster than air can make; kept, not used',
  stuck: 'The value has not moved for hours; kept, not used',
};
export const refusalWords = (reason: string) => refusals[reason] ?? reason;
