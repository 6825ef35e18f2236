import * as numbers from './enScreenNumbers.ts';

// Fixed words of the pages beyond Today.

const { temperature, counted, number, age } = numbers;

export const placeWords = {
  title: 'Places',
  none: 'The farm has no places yet.',
  opened: (opened: boolean) => (opened ? 'opened' : 'closed'),
  covered: (covered: boolean) => (covered ? 'covered' : 'not covered'),
  since: (time: string) => `since ${time}`,
  now: 'Now',
  all: 'All places',
  unknownPlace: 'No such place on this farm.',
  temperature: 'Temperature',
  humidity: 'Humidity',
  dewPoint: 'Dew point',
  water: 'Water in the air',
  spots: 'Spots',
  spot: 'Spot',
  probe: 'Probe',
  read: 'Read',
  days: 'The last 30 days',
  noDays: 'No days with readings yet.',
  year: 'A year here',
  yearWaiting: 'Drawing the year…',
  columns: {
    day: 'Day',
    low: 'Low °C',
    high: 'High °C',
    mean: 'Mean °C',
    wetHours: 'Wet h',
    longest: 'Longest spell h',
    unknown: 'Not known h',
    degreeDays: 'Heat units',
    greyMould: 'Grey mould 0–1',
  },
  dash: '–',
  dashMeans: 'A dash means not known.',
  greyMouldMeans:
    'Grey-mould index: the share of fruit a model expects to be infected in the longest wet spell. Infection risk, not proof of disease.',
  yearKey: 'Band: low to high of each day. Line: mean. Bars: hours of wet leaves.',
  hoverDay: (day: string, low: string, high: string, wet: string) =>
    `${day}: ${low} to ${high} °C, leaves wet ${wet} h`,
  yearWords: (
    known: number,
    missing: number,
    coldest: { value: number; day: string } | null,
    warmest: { value: number; day: string } | null,
    wetHours: number | null,
  ) =>
    [
      `${counted(known, 'day')} with readings, ${counted(missing, 'day')} without.`,
      coldest ? `Coldest ${temperature(coldest.value)} on ${coldest.day}.` : '',
      warmest ? `Warmest ${temperature(warmest.value)} on ${warmest.day}.` : '',
      wetHours === null ? '' : `Leaves wet for ${number(wetHours, 0)} hours in all.`,
    ]
      .filter((part) => part !== '')
      .join(' '),
};

export const probeWords = {
  title: 'Probes',
  unclaimed: 'Not placed yet',
  noUnclaimed: 'Every probe that sends has a place.',
  placed: 'Placed',
  noPlaced: 'No probe has a place yet.',
  heard: (ms: number) => `Last heard ${age(ms)}`,
  neverHeard: 'Never heard',
  every: (minutes: number) => `means to report every ${number(minutes, 0)} min`,
  values: 'Newest values',
  noValues: 'No value yet.',
  suggestion: 'Seems to belong at',
  place: 'Place',
  spot: 'Spot',
  choose: 'Choose…',
  put: 'Place it here',
  putting: 'Sending…',
  move: 'Move',
  moveFrom: 'It belongs there from now on; its record up to now stays with the old place.',
  cancel: 'Leave it',
  placedSaid: (probe: string, place: string, spot: string) =>
    `The hub has placed ${probe}: ${place}, ${spot}.`,
  notPlaced: (sentence: string) => `Not placed: ${sentence}`,
  battery: 'Battery',
  corrections: 'Corrections',
  noCorrections: 'none',
  flag: (words: string) => `doubtful: ${words}`,
  refused: (n: number) => `${counted(n, 'message')} refused or doubted in 24 hours`,
  refusedLine: (count: number, words: string, ms: number) => `${count} × ${words}, last ${age(ms)}`,
  lastMessage: 'The last one',
};

export const signInWords = {
  title: 'Sign in',
  claimTitle: 'Claim this hub',
  claimWhy:
    'Nobody has claimed this hub yet. It printed a one-time code when it first started: in its window, or in its log.',
  code: 'One-time code',
  name: 'Your name',
  password: 'Password',
  newPassword: 'A new password',
  atLeast: 'At least 10 characters.',
  signIn: 'Sign in',
  claim: 'Claim the hub',
  sending: 'Sending…',
  failed: (sentence: string) => `Not accepted: ${sentence}`,
  noNeed: 'You are signed in.',
};
