import type { CoolRoom, PlaceKind, PlaceNow, Quantity, Spot, Strip } from '../contract/index.ts';
import * as numbers from './enScreenNumbers.ts';
import { placeWords, probeWords, signInWords } from './enScreenPages.ts';
import { evidenceLabel } from './enTaskTerms.ts';

// Every fixed word of the screens, in English. Sentences that depend on what was measured come from
// the hub already worded; here are the labels round them and the states a page can be in.

const { temperature, chance, span, age, ageLength, counted, number } = numbers;

const spots: Record<Spot, string> = {
  canopy: 'canopy',
  air: 'air',
  'under-cover': 'under the cover',
  product: 'product',
  grass: 'grass',
  unit: 'cooling unit',
};

const quantities: Record<Quantity, string> = {
  temperature: 'temperature',
  humidity: 'humidity',
  'soil-moisture': 'soil moisture',
  'soil-temperature': 'soil temperature',
  'leaf-wetness': 'leaf wetness',
  light: 'light',
  rain: 'rain',
  wind: 'wind',
  power: 'power',
  energy: 'energy',
  door: 'door',
  battery: 'battery',
};

const kinds: Record<PlaceKind, string> = {
  tunnel: 'tunnel',
  patch: 'patch',
  outdoor: 'outdoors',
  'cool-room': 'cool room',
};

const limits: Record<Strip['limits'][number]['what'], string> = {
  damage: 'frost damage',
  chill: 'chilling',
  heat: 'too hot',
  'cool-room-limit': 'limit',
  'set-point': 'set temperature',
};

const coolRoomStates: Record<CoolRoom['state'], string> = {
  holding: 'Holding',
  warming: 'Warming',
  warm: 'Too warm',
  unknown: 'Cannot say',
};

const coolRoomCauses: Record<NonNullable<CoolRoom['cause']>, string> = {
  door: 'It looks like the door.',
  unit: 'It looks like the cooling unit.',
  power: 'It looks like the power.',
  unclear: 'The cause is not clear.',
};

const wetness = ({ wet }: Pick<PlaceNow, 'wet'>) =>
  wet === null ? 'Cannot say if wet' : wet ? 'Wet' : 'Dry';

type Low = {
  mean: number;
  /** The 10 % and 90 % chances, where the hub drew them. */
  between: readonly [number, number] | null;
  at: number;
  p: number;
  by: string | null;
  nights: number;
};

function tonightLow({ mean, between, at, p, by, nights }: Low): string {
  const range = between
    ? `, 8 nights in 10 between ${number(between[0])} and ${number(between[1])}`
    : '';
  const cross = by === null ? '' : ` by ${by}`;
  const learned =
    nights < 10 // the same ten that rules/frost asks for before it trusts a fit
      ? `a wide guess until ten nights are known (${nights} so far)`
      : `learned from ${counted(nights, 'night')}`;
  return `low ${temperature(mean)}${range}; ${chance(p)} chance below ${number(at)}${cross}; ${learned}`;
}

function coolRoom(room: CoolRoom): string {
  const is =
    room.temperature === null
      ? 'Cannot say how warm it is: no fresh reading.'
      : `${temperature(room.temperature)}; set to ${number(room.setPoint)}, limit ${number(room.limit)}.`;
  const cause = room.cause === null ? '' : ` ${coolRoomCauses[room.cause]}`;
  const left = room.holdOver.minutesToLimit;
  const hold =
    left === null
      ? ' How long it would stay below the limit with the cooling off is not known.'
      : left <= 0
        ? ''
        : ` With the cooling off it stays below the limit for about ${span(left * 60_000)}.`;
  const above = room.aboveLimit.hours;
  const over = above > 0 ? ` Above the limit for ${span(above * 3_600_000)} so far.` : '';
  return `${is}${cause}${hold}${over}`;
}

export const screens = {
  ...numbers,
  locale: 'en-GB',
  product: 'Dewpost',
  spots,
  quantities,
  kinds,
  limits,
  coolRoomStates,
  coolRoom,
  wetness,
  evidence: evidenceLabel,
  tonightLow,
  menu: { label: 'Pages', today: 'Today', places: 'Places', probes: 'Probes' },
  frame: {
    skip: 'Skip to the page',
    invented: 'Demonstration farm. Everything here is invented.',
    faster: (speed: number) => `Its clock runs ${number(speed, 0)} times as fast as yours.`,
    clock: (time: string) => `Farm time ${time}`,
    signOut: 'Sign out',
    signedInAs: (name: string) => `Signed in as ${name}`,
    alarm: 'Alarm',
    seeTasks: 'See the task',
    noPage: 'No such page',
    noPageWhy: 'The address leads nowhere here.',
    toToday: 'Go to Today',
  },
  link: {
    lost: (since: string, old: number | null) =>
      `No link to the hub since ${since}. ${
        old === null ? 'Nothing is kept to show.' : `What you see is ${ageLength(old)} old.`
      }`,
    connecting: 'Connecting to the hub…',
    again: 'Trying again by itself.',
    now: 'Try now',
  },
  state: {
    asking: 'Asking the hub…',
    failed: (sentence: string) => `The hub did not give this: ${sentence}`,
    tryAgain: 'Try again',
    noAnswer: 'no answer from the hub',
    badAnswer: (status: number) => `the hub answered with status ${status}`,
    oldReading: (ms: number) => `Old reading, ${ageLength(ms)} old`,
    neverRead: 'Never read',
    read: (ms: number) => `read ${age(ms)}`,
  },
  today: {
    title: 'Today',
    asOf: (time: string, ms: number) => `As of ${time}, ${age(ms)}`,
    tasks: 'To do',
    noTasks: 'No tasks now.',
    putOff: 'Put off',
    ended: 'Done and dropped today',
    endedNone: 'Nothing ended yet today.',
    strips: 'From dusk to dawn',
    tonight: 'Tonight’s lows',
    noTonight: 'No forecast for tonight yet.',
    coolRooms: 'Cool room',
  },
  task: {
    by: (time: string) => `by ${time}`,
    from: (time: string) => `from ${time}`,
    noDeadline: 'no deadline',
    minutes: (n: number) => `${number(n, 0)}\u00a0min of work`,
    saves: (amounts: string) => `saves about ${amounts}`,
    why: 'Why',
    evidence: { what: 'Measured', value: 'Value', limit: 'Held against', source: 'Source' },
    unknown: 'Cannot say any more whether this is needed. It stays until that is known.',
    care: 'Care',
    alarm: 'Alarm',
    done: 'Done',
    later: 'Later',
    no: 'Not doing',
    hour: 'In 1 hour',
    evening: 'This evening',
    tomorrow: 'Tomorrow morning',
    morning: 'This morning',
    back: 'Back',
    answerTo: (answer: string, title: string) => `${answer}: ${title}`,
    stored: (answer: string, title: string) => `The hub has stored: ${title}: ${answer}.`,
    sending: 'Sending…',
    notSent: (sentence: string) => `Not sent: ${sentence}`,
    until: (time: string) => `Put off until ${time}`,
    endings: { done: 'Done', no: 'Not doing', later: 'Put off', lapsed: 'No longer needed' },
  },
  strips: {
    humidity: 'Show humidity',
    key: 'Key',
    measured: 'measured temperature',
    humidityLine: 'humidity, 0 to 100 %',
    wet: 'leaves wet',
    night: 'night',
    fan: 'forecast, 8 chances in 10',
    gap: 'A break in the line is a time without readings.',
    now: 'now',
    none: 'No strips to draw yet.',
    title: (name: string, from: string, to: string) => `${name}, ${from} to ${to}`,
    inWords: 'The strips in words and figures',
    lastRead: (value: string, time: string) => `${value} at ${time}, none since`,
    columns: {
      time: 'Time',
      temperature: '°C',
      humidity: '% RH',
      wet: 'Leaves',
      chances: '8 in 10',
    },
    wetCell: 'wet',
    forecast: 'forecast',
    ownScale: 'own scale',
    pin: (time: string, titles: readonly string[]) => `Task by ${time}: ${titles.join('; ')}`,
    noReadings: 'no readings',
  },
  places: placeWords,
  probes: probeWords,
  signIn: signInWords,
};
