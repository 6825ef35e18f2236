import type {
  CoolRoom,
  Evidence,
  PlaceKind,
  PlaceNow,
  Quantity,
  Spot,
  Strip,
  Task,
  TaskKind,
} from '../contract/index.ts';

// English: every word a person reads. Another language is another file with the same exports. In
// order: numbers and times; terms and reasons of tasks; sentences of the hub; fixed words of the
// screens.

// Numbers, units and lengths of time as English screens say them. U+2212 for minus and a hard space
// before a unit, so that a figure never breaks across two lines.

const HARD = '\u00a0';
const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const notKnown = 'not known';

/** `-1.25` -> `−1.3`; null is said in words, never as a zero. */
function number(value: number | null, digits = 1): string {
  if (value === null || !Number.isFinite(value)) return notKnown;
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}

const withUnit = (value: number | null, unit: string, digits = 1): string =>
  value === null || unit === '' ? number(value, digits) : `${number(value, digits)}${HARD}${unit}`;

/** With its sign, as a correction is said: `+0.2`, `−2`. */
const signed = (value: number) =>
  `${value > 0 ? '+' : ''}${number(value, Number.isInteger(value) ? 0 : 1)}`;

const temperature = (value: number | null) => withUnit(value, '°C');
const humidity = (value: number | null) => withUnit(value, '%', 0);

/** A probability from 0 to 1. Never "0 %" or "100 %": a forecast is not a promise. */
function chance(p: number): string {
  if (p < 0.01) return `under 1${HARD}%`;
  if (p > 0.99) return `over 99${HARD}%`;
  return withUnit(p * 100, '%', 0);
}

const formats = new Map<string, Intl.NumberFormat>();
/** Whole money in the farm's currency (ISO 4217). */
function money(value: number, currency: string): string {
  let format = formats.get(currency);
  if (!format) {
    format = new Intl.NumberFormat('en-GB', {
      style: 'currency',
      currency,
      maximumFractionDigits: 0,
    });
    formats.set(currency, format);
  }
  return format.format(value);
}

const counted = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;

/** A length of time in ms: `25 min`, `2 h 10`, `3 h`, `2 days 4 h`. */
function span(ms: number): string {
  const minutes = Math.round(Math.abs(ms) / MINUTE);
  if (minutes < 60) return `${minutes}${HARD}min`;
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours < 48) {
    return rest === 0
      ? `${hours}${HARD}h`
      : `${hours}${HARD}h${HARD}${String(rest).padStart(2, '0')}`;
  }
  const spare = hours % 24;
  const days = counted(Math.floor(hours / 24), 'day');
  return spare === 0 ? days : `${days} ${spare}${HARD}h`;
}

/** How long ago, rounded down: an age is never made to look older or finer than it is. */
function age(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'just now';
  return `${ageLength(past)} ago`;
}

/** The same without "ago": `4 minutes`, `2 hours`, `3 days`. */
function ageLength(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'less than a minute';
  if (past < HOUR) return counted(Math.floor(past / MINUTE), 'minute');
  if (past < 2 * DAY) return counted(Math.floor(past / HOUR), 'hour');
  return counted(Math.floor(past / DAY), 'day');
}

/** From now to a deadline, in ms: `in 2 h 10`, `now`, `25 min late`. */
function countdown(ms: number): string {
  if (Math.abs(ms) < MINUTE) return 'now';
  return ms > 0 ? `in ${span(ms)}` : `${span(ms)} late`;
}

const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

// What the terms of a task's evidence are called on screen.

/** Labels beside a value: "Leaves wet for", then 6.5 h. */
export const evidenceLabels: Readonly<Record<string, string>> = {
  'above-limit-minutes': 'Over the limit for',
  battery: 'Battery',
  'chance-of-damage': 'Chance of damage tonight',
  'closed-stays-damp': 'Humidity that stays in when closed',
  covers: 'Covers',
  'cycle-bottom-above': 'Bottom of the cooling cycle above the set temperature',
  'damage-after-sunset': 'Damage expected after sunset by',
  'daylight-in': 'Drying light begins in',
  'door-open-minutes': 'Door open for',
  'doubtful-readings': 'Doubtful readings in 24 hours',
  'drop-in-risk': 'Share of the value this is expected to spare',
  'film-not-enough': 'Night colder than the crop bears, by',
  'heard-minutes-ago': 'Last heard before',
  'heat-limit-near': 'Near the heat limit',
  'inside-humidity': 'Humidity inside',
  'inside-temperature': 'Temperature inside',
  'minutes-to-limit': 'Time until the air reaches the limit',
  'night-goes-first': 'The cold of the night goes first',
  'night-needs-warmth': 'Low outside tonight; the house needs its warmth',
  'off-minutes': 'Cooling off for',
  'one-long-rise': 'Warming without a break, now at',
  'open-air': 'Temperature in the open',
  'outside-cooler-by': 'Outside cooler by',
  'outside-damper-by': 'Outside air holds more water, by',
  'outside-drier-by': 'Outside air holds less water, by',
  'outside-freezing': 'Freezing air outside',
  'produce-estimate': 'Middle of a crate, measured or estimated',
  'purge-first': 'Damp that can be let out first',
  'room-air': 'Air in the room',
  'room-power': 'Power drawn',
  'rule-broke': 'A rule broke down',
  'silent-hours': 'Silent for',
  'since-sunrise': 'Time since sunrise',
  'stay-open-dry': 'Mild enough to stay open and dry; low outside',
  'steep-rise': 'Steepest rise of the air',
  'still-too-warm-to-close': 'Still too warm inside to close',
  'stuck-hours': 'Same value for',
  'sunset-in': 'Time to sunset',
  'too-near-sunset': 'Too near sunset to open for drying',
  'tonight-low': 'Tonight’s low',
  'tonight-outside-low': 'Tonight’s low outside',
  'under-cover': 'Temperature under the cover',
  'value-at-risk': 'Loss that covers can prevent; limit is the cost of covering',
  vents: 'Vents',
  'warms-within': 'Time constant of the room',
  'wet-hours': 'Leaves wet for',
};

/** What is missing, as it follows "Cannot say without". */
export const missingLabels: Readonly<Record<string, string>> = {
  'covers-on-or-off': 'knowing whether the covers are on',
  'door-or-room-temperature': 'the door contact or a reading of the room’s air',
  'inside-humidity': 'a humidity reading from inside',
  'inside-temperature': 'a temperature reading from inside',
  'leaf-wetness-history': 'humidity readings of the last hours',
  'night-forecast': 'a forecast for tonight from a probe in the open at this place',
  'outside-humidity': 'a humidity reading from outside',
  'outside-temperature': 'a temperature reading from outside',
  'outside-temperature-earlier': 'an earlier temperature reading from outside',
  'own-nights': 'more nights measured here',
  'probe-last-heard': 'knowing when the probe was last heard or placed',
  'room-power': 'a reading of the power the cooling draws',
  'room-temperature': 'a reading of the room’s air',
  'room-temperature-history': 'more readings of the room’s air',
  'rule-broke': 'a rule that broke down',
  'sun-times': 'a sunrise and a sunset, which this latitude does not have today',
  'tonight-outside-low': 'a forecast of tonight’s low outside',
};

// A term without a label is a fault of ours; shown as plain words it still tells more than a hole.
const plain = (term: string) => term.replaceAll('-', ' ');

export const evidenceLabel = (what: string): string => evidenceLabels[what] ?? plain(what);
export const missingLabel = (term: string): string => missingLabels[term] ?? plain(term);

// Why a task is asked for, one sentence for each fact that carries a decision.

/** At most one decimal, none where it would be zero, and a true minus sign. */
const figure = (value: Evidence['value']): string => {
  if (typeof value !== 'number') return value ?? 'not known';
  const rounded = Math.abs(value) >= 100 ? Math.round(value) : Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded).replace('-', '−');
};

/** A chance is not known to a tenth of a percent. */
const whole = (value: Evidence['value']): string =>
  typeof value === 'number' ? String(Math.round(value)) : figure(value);

const amount = (value: Evidence['value'], one: string, many: string) =>
  `${figure(value)} ${figure(value) === '1' ? one : many}`;
const hoursOf = (value: Evidence['value']) => amount(value, 'hour', 'hours');
const minutesOf = (value: Evidence['value']) =>
  typeof value === 'number' && value >= 120
    ? hoursOf(value / 60)
    : amount(typeof value === 'number' ? Math.round(value) : value, 'minute', 'minutes');

type Say = (fact: Evidence) => string;

const sentences: Readonly<Record<string, Say>> = {
  'wet-hours': ({ value }) => `Leaves have been wet for ${hoursOf(value)}.`,
  'outside-drier-by': ({ value }) => `Outside air holds ${figure(value)}${HARD}g/m³ less water.`,
  'outside-damper-by': ({ value }) =>
    `Outside air holds ${figure(value)}${HARD}g/m³ more water, but the heat goes first.`,
  'inside-temperature': ({ value, limit }) =>
    `It is ${figure(value)}${HARD}°C inside; venting starts at ${figure(limit)}${HARD}°C.`,
  'heat-limit-near': ({ value, limit }) =>
    `It is ${figure(value)}${HARD}°C inside, close to the limit of ${figure(limit)}${HARD}°C.`,
  'outside-cooler-by': ({ value }) => `Outside is ${figure(value)}${HARD}°C cooler.`,
  'night-needs-warmth': ({ value }) =>
    `Close again before dusk: the low outside tonight is about ${figure(value)}${HARD}°C.`,
  'tonight-outside-low': ({ value }) =>
    `The low outside tonight is about ${figure(value)}${HARD}°C.`,
  'film-not-enough': ({ value }) =>
    `That is ${figure(value)}${HARD}°C below what the crop bears: film alone does not keep it, so cover inside or move trays.`,
  'purge-first': ({ value }) =>
    `Outside air holds ${figure(value)}${HARD}g/m³ less water: air the house for a quarter of an hour first.`,
  'closed-stays-damp': ({ value }) =>
    `It is at ${figure(value)}${HARD}% humidity inside, and closed it stays damp.`,
  'chance-of-damage': ({ value, limit }) =>
    limit === null
      ? `The chance of damage tonight is ${whole(value)}${HARD}%.`
      : `The chance of damage tonight is ${whole(value)}${HARD}%; covering pays from ${whole(limit)}${HARD}%.`,
  'tonight-low': ({ value, limit }) =>
    `Tonight’s low is about ${figure(value)}${HARD}°C; damage begins at ${figure(limit)}${HARD}°C.`,
  'under-cover': ({ value }) => `It is ${figure(value)}${HARD}°C under the covers.`,
  'open-air': ({ value }) => `It is ${figure(value)}${HARD}°C in the open, past the danger.`,
  'door-open-minutes': ({ value }) => `The door has been open for ${minutesOf(value)}.`,
  'steep-rise': ({ value }) =>
    `The air rose by ${figure(value)}${HARD}°C in minutes and stays up, as with an open door.`,
  'room-air': ({ value, limit }) =>
    `The air in the room is at ${figure(value)}${HARD}°C; the limit is ${figure(limit)}${HARD}°C.`,
  'room-power': ({ value }) => `The cooling draws ${figure(value)}${HARD}W.`,
  'off-minutes': ({ value }) => `Cooling has been off for ${minutesOf(value)}.`,
  'minutes-to-limit': ({ value }) => `The air reaches the limit in about ${minutesOf(value)}.`,
  'above-limit-minutes': ({ value }) => `The air has been over the limit for ${minutesOf(value)}.`,
  'produce-estimate': ({ value }) => `The middle of a crate is at about ${figure(value)}${HARD}°C.`,
  'cycle-bottom-above': ({ value }) =>
    `The coldest the room gets is now ${figure(value)}${HARD}°C above the set temperature.`,
  'one-long-rise': ({ value }) =>
    `The room warms without a break and is at ${figure(value)}${HARD}°C; the cause is not clear.`,
  'silent-hours': ({ value }) => `It has been silent for ${hoursOf(value)}.`,
  'stuck-hours': ({ value }) => `It has said the same value for ${hoursOf(value)}.`,
  battery: ({ value, unit }) => `Its battery is at ${figure(value)} ${unit}.`,
  'doubtful-readings': ({ value }) => `${figure(value)} of its readings in 24 hours were doubtful.`,
  'rule-broke': ({ value }) => `Cannot say: a rule broke down (${figure(value)}).`,
  vents: ({ value }) => `The vents are ${figure(value)}, as somebody said.`,
  covers: ({ value }) => `The covers are ${figure(value)}, as somebody said.`,
  'night-goes-first': () => 'The cold of the night goes first.',
  'still-too-warm-to-close': () => 'It is still too warm inside to close.',
  'stay-open-dry': ({ value }) =>
    `With a low of about ${figure(value)}${HARD}°C outside it can stay open and dry.`,
  'outside-freezing': ({ value }) =>
    `Outside air is at ${figure(value)}${HARD}°C: frost is worse than wet leaves.`,
};

/** For each kind the pairs of facts that make its reason; the first pair that is there is said. */
const reasons: Partial<Record<TaskKind, readonly (readonly string[])[]>> = {
  'open-up': [
    ['night-goes-first'],
    ['outside-freezing'],
    ['heat-limit-near', 'outside-cooler-by'],
    ['inside-temperature', 'outside-damper-by'],
    ['wet-hours', 'outside-drier-by', 'night-needs-warmth'],
    ['wet-hours', 'outside-drier-by'],
    ['inside-temperature', 'outside-cooler-by'],
  ],
  'close-up': [
    ['still-too-warm-to-close'],
    ['stay-open-dry'],
    ['tonight-outside-low', 'film-not-enough'],
    ['tonight-outside-low', 'purge-first'],
    ['tonight-outside-low', 'closed-stays-damp'],
  ],
  cover: [['chance-of-damage', 'tonight-low']],
  'shut-door': [
    ['door-open-minutes', 'room-air'],
    ['steep-rise', 'room-air'],
  ],
  'run-generator': [
    ['off-minutes', 'minutes-to-limit'],
    ['off-minutes', 'room-air'],
  ],
  'see-to-unit': [
    ['off-minutes', 'room-air'],
    ['one-long-rise'],
    ['cycle-bottom-above', 'room-air'],
  ],
  'move-produce': [
    ['above-limit-minutes', 'produce-estimate'],
    ['minutes-to-limit', 'produce-estimate'],
  ],
};

// What is said about tasks, in English.

/** `place` is the place's name, not its id. */
type Titled = {
  readonly kind: TaskKind;
  readonly place: string;
  readonly subject: string | null;
  readonly because: readonly Evidence[];
};

// A room named for what it is takes an article; a name of its own does not.
const inText = (place: string) => (place.toLowerCase() === 'cool room' ? 'the cool room' : place);

/** A short imperative. */
export function title({ kind, place: name, subject, because }: Titled): string {
  const place = inText(name);
  const what = subject ?? place;
  const titles: Readonly<Record<TaskKind, string>> = {
    'open-up': `Open up ${place}`,
    'close-up': `Close up ${place}`,
    shade: `Shade ${place}`,
    'move-trays': `Move trays out of ${place}`,
    cover: `Cover ${place}`,
    uncover: `Uncover ${place}`,
    'pick-now': `Pick ${place} now`,
    'cut-back': `Cut back ${place}`,
    water: `Water ${place}`,
    'shut-door': `Shut ${place}’s door`,
    'see-to-unit': `See to ${place}’s cooling unit`,
    'run-generator': `Run the generator for ${place}`,
    'move-produce': `Move the produce out of ${place}`,
    'sell-first': `Sell ${what} first`,
    'throw-out': `Throw out ${what}`,
    sow: `Sow ${what}`,
    harvest: `Harvest ${what}`,
    'see-to-probe': battery(because)
      ? `Change the battery of ${probe(subject)} in ${place}`
      : `See to ${probe(subject)} in ${place}`,
  };
  return titles[kind];
}

const probe = (subject: string | null) => (subject === null ? 'a probe' : `probe ${subject}`);
const battery = (because: readonly Evidence[]) =>
  because.length === 1 && because[0]?.what === 'battery';

// A fact that asks for at least its limit carries the reason only where it reaches it.
const REACHES = new Set(['wet-hours', 'outside-drier-by', 'outside-cooler-by']);
const carries = ({ what, value, limit }: Evidence) =>
  !REACHES.has(what) || typeof value !== 'number' || typeof limit !== 'number' || value >= limit;

/** The reason in one or two sentences; what is missing, where nobody can say. */
export function why(
  kind: TaskKind,
  because: readonly Evidence[],
  missing: readonly string[] = [],
): string {
  const said = (what: string) => because.find((fact) => fact.what === what);
  const sentence = (what: string) => {
    const fact = said(what);
    return fact === undefined ? '' : (sentences[what]?.(fact) ?? '');
  };
  if (said('rule-broke') !== undefined) return sentence('rule-broke');
  if (missing.length > 0) return `Cannot say without ${listed(missing.map(missingLabel))}.`;

  const whole = reasons[kind]?.find((terms) =>
    terms.every((term) => because.some((fact) => fact.what === term && carries(fact))),
  );
  const terms = whole ?? because.map(({ what }) => what);
  // Each fact is said once, and of a long list the first and the last: cause and consequence.
  const spoken = [...new Set(terms)].map(sentence).filter((text) => text !== '');
  const short = whole !== undefined && spoken.length > 2 ? [spoken[0], spoken.at(-1)] : spoken;
  return short.slice(0, 2).join(' ');
}

const FOOD =
  'This is a record, not a verdict on the food. Ask your local food-safety officer before you act on times and temperatures.';
const cautions: Partial<Record<TaskKind, string>> = {
  'open-up': 'In wind open the lee side first, latch the doors, and never open both ends in gusts.',
  shade: 'Houses are hottest now: drink, work in pairs or early, and come out when you feel dizzy.',
  'move-trays': 'Never carry a tray with mould in among clean ones.',
  cover:
    'Weigh the edges down against wind, and take the covers off in the morning: sun under them scorches.',
  uncover: 'Air under covers grows hot fast in the sun: lift one end first and let it out.',
  'cut-back':
    'Cutting green leaves in autumn can cost strawberries their hardiness: clear dead leaves and runners, and keep the green until they lie flat.',
  'shut-door': 'Look inside first: nobody is to be shut in.',
  'see-to-unit':
    'Switch the unit off before you reach into it. Wiring and refrigerant are for licensed people, by local code.',
  'run-generator':
    'Outdoors only, at least 6\u00a0m from any door, window or vent, exhaust pointing away: the fumes kill and the worst of them has no smell. Stop it and let it cool before refuelling, no flame near. Changeover switch, earthing and fixed wiring are for a licensed electrician, by local code; never feed back through a socket.',
  'move-produce': `${FOOD} Crates that leave the cold sweat: keep them covered.`,
  'sell-first': FOOD,
  'throw-out': `${FOOD} Mould is not trimmed for sale; in doubt, throw out.`,
};

/** Care to take where the work can hurt; null where it needs no words. */
export const caution = (kind: TaskKind): string | null => cautions[kind] ?? null;

// Sentences the hub itself makes, in English.

const clock = (t: number, zone: string) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' }).format(
    t,
  );

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
    facts.temperature === null ? '' : `${number(facts.temperature)}${HARD}°C`,
    facts.humidity === null ? '' : `${facts.humidity.toFixed(0)}${HARD}% humidity`,
  ].filter(Boolean);
  if (facts.stale)
    return `Cannot say how ${name} is now: the last reading, ${parts.join(' and ')}, came ${age(now - facts.readAt)}.`;
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
      `Since yesterday’s dusk between ${number(Math.min(...values))} and ${number(Math.max(...values))}${HARD}°C.`,
    );
  if (strip.temperature.includes(null)) sentences.push('There are stretches without readings.');
  const wet = strip.wetSpells.map(
    ({ from, to, wetHours }) =>
      `from ${clock(from, zone)} to ${clock(to, zone)} (${number(wetHours)} h)`,
  );
  if (wet.length > 0) sentences.push(`Leaves wet ${listed(wet)}.`);
  const lowest = strip.fan.reduce<StripText['fan'][number] | null>(
    (low, point) => (low === null || point.middle < low.middle ? point : low),
    null,
  );
  if (lowest)
    sentences.push(
      `Tonight’s low is expected near ${number(lowest.middle)}${HARD}°C, between ${number(lowest.low)} and ${number(lowest.high)}${HARD}°C in eight nights of ten.`,
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
  const read = places.some(({ readAt }) => readAt !== null);
  if (unseen.length > 0 && read)
    parts.push(
      `Cannot say how ${listed(unseen.map(inText))} ${unseen.length === 1 ? 'is' : 'are'}: no fresh readings.`,
    );
  if (parts.length === 0)
    parts.push(read ? 'Nothing asks to be done now.' : 'No readings have come yet.');
  return parts.join(' ');
}

const lower = (title: string) => title.charAt(0).toLowerCase() + title.slice(1);

export const suggestionWords = (place: string, apart: number) =>
  `Its temperatures of the last day are within ${number(apart)}${HARD}°C of those in ${place}.`;

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

// Fixed words of the pages beyond Today.

const placeScreens = {
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
  dashMeans: 'A dash means not known. A spell may have begun on a day before.',
  greyMouldMeans:
    'Grey-mould index: the share of fruit a model expects to be infected in the longest wet spell. Infection risk, not proof of disease.',
  yearKey: 'Band: low to high of each day. Line: mean. Bars: hours of wet leaves.',
  hoverDay: (day: string, low: string, high: string, wet: string) =>
    `${day}: ${low} to ${high}${HARD}°C, leaves wet ${wet} h`,
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

const probeScreens = {
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
  strangers: 'Messages from nobody the hub knows',
  strangersWhy: 'A typing mistake in a probe’s topic shows here.',
};

const signInScreens = {
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

// Every fixed word of the screens, in English. Sentences that depend on what was measured come from
// the hub already worded; here are the labels round them and the states a page can be in.

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

/** A probe's value as it is read aloud: a door is open or shut, the rest are  */
function reading({ quantity, value, unit }: { quantity: Quantity; value: number; unit: string }) {
  if (quantity === 'door') return value > 0.5 ? 'open' : 'shut';
  const fine = unit === '°C' || unit === '%'; // what sits in one column keeps its decimals
  return withUnit(value, unit, !fine && Number.isInteger(value) ? 0 : 1);
}

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
      ? 'No fresh reading of how warm it is.'
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
  const long = span(above * 3_600_000);
  const over =
    above <= 0
      ? ''
      : room.aboveLimit.since === null
        ? ` In the last 24 hours it was above the limit for ${long}.`
        : ` It is above the limit; ${long} in the last 24 hours.`;
  return `${is}${cause}${hold}${over}`;
}

// The page that shows how a number came about.

/** Names of the numbers put into a formula. */
export const inputLabels: Readonly<Record<string, string>> = {
  'above-since': 'Above since',
  'afternoon-temperature': 'Temperature at 15:00',
  'close-up': 'The rule on closing said',
  cost: 'Cost of the work',
  'crop-floor': 'Coldest the crop bears',
  'crosses-at': 'Crosses it at',
  'damage-below': 'Damage begins below',
  'degrees-of-freedom': 'Degrees of freedom',
  drop: 'Share spared',
  'dry-ends-spell': 'Dry time that ends a wet spell',
  'evening-dew-point': 'Dew point two hours after sunset',
  'evening-temperature': 'Temperature two hours after sunset',
  'expected-beforehand': 'Low expected from past nights alone',
  'forecast-from': 'Forecast from',
  'heard-at': 'Last heard at',
  'hours-not-known': 'Hours of the spell not known',
  'inside-humidity': 'Humidity inside',
  'inside-temperature': 'Temperature inside',
  latitude: 'Latitude',
  limit: 'Limit',
  longitude: 'Longitude',
  'newest-reading': 'Newest reading',
  'nights-learned': 'Nights learned from',
  now: 'Worked out at',
  'off-since': 'Off since',
  'open-since': 'Open, or rising, since',
  'open-up': 'The rule on opening said',
  'outside-humidity': 'Humidity outside',
  'outside-temperature': 'Temperature outside',
  probability: 'Chance, 0 to 1',
  probe: 'Probe',
  quantity: 'Quantity',
  'read-at': 'Read at',
  'readings-from': 'Readings since',
  'reports-every': 'Reports every',
  'room-air': 'Air of the room',
  'room-power': 'Power drawn',
  rule: 'Rule',
  'set-point': 'Set temperature',
  'share-prevented': 'Share of the loss that the work prevents',
  'spell-from': 'Wet spell from',
  'spell-to': 'Wet spell to',
  spread: 'Spread of the forecast (standard deviation)',
  'stuck-since': 'Stuck since',
  sunrise: 'Sunrise',
  sunset: 'Sunset',
  'time-constant': 'Time constant of the room',
  'time-constant-of-produce': 'Time constant of a crate',
  'tonight-low': 'Low expected tonight',
  'usual-pause': 'Usual pause of the cooling',
  value: 'Value that hangs there',
  'value-at-risk': 'Value at risk',
  wage: 'Wage for an hour',
  'warmest-of-day': 'Warmest of the day',
  'warmest-outside-ahead': 'Warmest outside in the hours ahead',
  'wet-at': 'Leaves count as wet from',
  'wet-below': 'Leaves count as dry below',
  work: 'Time the work takes',
};

const inputValues: Readonly<Record<string, string>> = {
  evening: 'readings two hours after sunset, and past nights',
  afternoon: 'readings at 15:00, and past nights',
  'recent-nights': 'the nights just past',
  'wide-default': 'a wide guess, until nights are known',
  act: 'do it',
};

/** `ventGain` -> `vent gain`. */
const formulaName = (name: string) =>
  name.replace(/[A-Z.]/g, (letter) => (letter === '.' ? ' ' : ` ${letter.toLowerCase()}`));

/** A docstring as a grower reads it: names of things in the code as words. */
const fromCode = (text: string) =>
  text
    .replace(/\s*Null for a null\./g, '')
    .replaceAll('`', '')
    .replace(/\b[a-z]+(?:[A-Z][a-z]+)+\b/g, formulaName);

const howScreens = {
  title: 'How it is worked out',
  link: 'How it is worked out',
  toTask: 'Back to the task',
  input: (what: string) => inputLabels[what] ?? plain(what),
  inputValue: (value: string) => inputValues[value] ?? value,
  name: formulaName,
  /** `FALLEN_BY_EVENING` as it is read: fallen by evening. */
  constant: (name: string) =>
    /^[A-Z0-9_]+$/.test(name) ? name.toLowerCase().replaceAll('_', ' ') : formulaName(name),
  fromCode,
  words: 'In words',
  put: 'Numbers put in',
  noPut: 'Opened without a task, so there are no numbers to show.',
  gone: 'The task is no longer in the list; its numbers are not kept here.',
  result: 'Result',
  limits: 'Limits',
  against: (limit: string, setter: string) => `Held against ${limit}: ${setter}.`,
  noLimit: 'Not held against a limit.',
  refuses: (words: string) => `Gives no answer ${fromCode(words)}.`,
  noRange: 'No range is told for it.',
  source: 'Source',
  measured: (probe: string, time: string) =>
    `As measured by probe ${probe}, ${time}. Nothing was worked out.`,
  told: 'As somebody entered it. Nothing was worked out.',
  by: (words: string, name: string | null) =>
    name === null ? fromCode(words) : `${fromCode(words)} (${formulaName(name)})`,
  builtOn: 'Built on',
  usedBy: 'Also used for',
  code: (file: string, line: number) => `In the code: ${file}, line ${line}.`,
};

// Alarms on their way to people: what a message says, and the words of the page about them.

const alarmKindNames: Readonly<Record<string, string>> = {
  warm: 'produce too warm',
  door: 'door',
  unit: 'cooling unit',
  power: 'power',
  probe: 'probe in a cool room',
  frost: 'frost',
  test: 'test',
};
export const alarmKindName = (kind: string) => alarmKindNames[kind] ?? plain(kind);

/** What a message about an alarm is made of. Times in ms since 1970. */
export type AlarmNews = {
  readonly what: 'raised' | 'over' | 'summary' | 'trouble' | 'test';
  readonly urgent: boolean;
  readonly farm: string;
  readonly zone: string;
  readonly now: number;
  /** The alarm's own sentence; for a trouble, who cannot be reached by what, and what was said. */
  readonly words: string;
  readonly place: string;
  readonly since: number | null;
  readonly clearedAt: number | null;
  readonly seenBy: string | null;
  /** Its task was put off until then. */
  readonly putOffUntil: number | null;
  readonly count: number;
  readonly folded: readonly string[];
  readonly doBy: number | null;
  readonly minutes: number | null;
  readonly caution: string | null;
  /** Who else was told, and when. */
  readonly others: readonly { readonly name: string; readonly at: number }[];
  /** Sentences of the messages that were held back. */
  readonly held: readonly string[];
  readonly link: string | null;
};

const firstSentence = (words: string) => words.split('. ')[0]?.replace(/\.$/, '') ?? words;
const dayAndTime = (t: number, zone: string) =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    hour: '2-digit',
    minute: '2-digit',
  })
    .format(t)
    .replace(',', '');

const endWords = (
  { clearedAt, seenBy, putOffUntil }: AlarmNews,
  at: (t: number) => string,
): string =>
  putOffUntil !== null
    ? `Put off until ${at(putOffUntil)}${seenBy === null ? '' : ` by ${seenBy}`}.`
    : `It ended at ${at(clearedAt ?? 0)}; ${seenBy === null ? 'nobody has said “seen” yet' : `seen by ${seenBy}`}.`;

/** The same for e-mail and webhook: a subject of one line, and text that stands by itself. */
export function alarmMessage(news: AlarmNews): { subject: string; text: string } {
  const { what, farm, zone, now, link } = news;
  const at = (t: number) => dayAndTime(t, zone);
  const lines: (string | false)[] = [];
  let subject = '';
  if (what === 'test') {
    subject = 'Test of the alarm';
    lines.push(
      'This is a test. Nothing is wrong.',
      'Say “seen” on the page, so that it is logged.',
    );
  } else if (what === 'trouble') {
    subject = 'Alarm messages do not get through';
    lines.push(news.words, 'The hub goes on trying.');
  } else if (what === 'summary') {
    subject = `${counted(news.held.length, 'message')} held back`;
    lines.push('There were too many messages for one hour. These were held back:', ...news.held);
  } else {
    const title = firstSentence(news.words);
    const ended = news.putOffUntil === null ? 'Over' : 'Put off';
    const is = what === 'over' ? ended : news.urgent ? 'Alarm' : 'Notice';
    subject = `${is}: ${title}${title.toLowerCase().includes(news.place.toLowerCase()) ? '' : ` (${news.place})`}`;
    lines.push(
      news.words,
      news.since !== null && `Since ${at(news.since)}, ${age(now - news.since)}.`,
      what === 'over' && news.clearedAt !== null && endWords(news, at),
      what === 'raised' &&
        news.doBy !== null &&
        `Do it by ${at(news.doBy)} (${countdown(news.doBy - now)}).`,
      what === 'raised' && news.minutes !== null && `About ${number(news.minutes, 0)} min of work.`,
      news.count > 1 && `It came ${news.count} times.`,
      ...news.folded.map((words) => `With it: ${words}`),
      what === 'raised' && news.caution !== null && `Care: ${news.caution}`,
      news.others.length > 0 &&
        `Also told: ${listed(news.others.map(({ name, at: t }) => `${name} at ${at(t)}`))}.`,
      what === 'raised' && news.urgent && 'Say “seen” on the page, so that nobody else is woken.',
    );
  }
  if (link !== null) lines.push(link);
  lines.push('', farm);
  const oneLineSubject = subject.replace(/\s+/g, ' ').slice(0, 150);
  return {
    subject: oneLineSubject,
    text: `${lines
      .filter((line) => line !== false)
      .join('\n')
      .replaceAll(HARD, ' ')}\n`,
  };
}

export const alarmTroubleWords = (person: string, channel: string, said: string) =>
  `A message to ${person} by ${channel === 'email' ? 'e-mail' : 'webhook'} does not get through: ${said}`;

const alarmChannels: Readonly<Record<string, string>> = {
  email: 'e-mail',
  webhook: 'webhook',
  alive: '“I am alive” message',
};
const messageStates: Readonly<Record<string, string>> = {
  waiting: 'not sent yet',
  held: 'held back, too many in an hour',
  delivered: 'taken',
  refused: 'refused',
  dropped: 'not sent',
  summarised: 'told in a summary',
};

/** `2026-04-23` as `23 Apr`. */
const shortDay = (day: string) =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', day: 'numeric', month: 'short' }).format(
    Date.parse(`${day}T00:00:00Z`),
  );

const alarmScreens = {
  title: 'Alarms',
  none: 'No alarm stands, and none waits to be seen.',
  nobody: 'Nobody is set to be told by e-mail or webhook. Alarms show on open pages and on MQTT.',
  kind: alarmKindName,
  channel: (name: string) => alarmChannels[name] ?? plain(name),
  ranks: { urgent: 'urgent', today: 'today', note: 'note' },
  ranksWhy: 'Urgent wakes and sounds. Today is told in waking hours. A note is written down only.',
  states: {
    'active-unacknowledged': 'Stands, nobody has seen it',
    'active-acknowledged': 'Stands, seen',
    'cleared-unacknowledged': 'Over by itself, nobody has seen it',
    over: 'Over',
  },
  sinceTime: (time: string, ms: number) => `since ${time}, ${age(ms)}`,
  overAt: (time: string) => `over at ${time}`,
  count: (n: number) => `came ${n} times`,
  folded: (words: string) => `With it: ${words}`,
  seenLine: (who: string, time: string) => `Seen by ${who} at ${time}.`,
  seen: 'Seen',
  seenFalse: 'Seen, false alarm',
  wasRight: 'It was right',
  wasFalse: 'It was a false alarm',
  was: { right: 'Said to be right.', false: 'Said to be a false alarm.' },
  seenOf: (answer: string, words: string) => `${answer}: ${firstSentence(words)}`,
  notDone: (sentence: string) => `Not done: ${sentence}`,
  told: (name: string, channel: string, time: string) =>
    `${name} by ${alarmChannels[channel] ?? channel}, ${time}`,
  toldState: (state: string, words: string) =>
    `${messageStates[state] ?? plain(state)}${words === '' ? '' : `: ${words}`}`,
  toldNobody: 'Nobody was told by message.',
  toPage: 'See the alarms',
  troubles: (
    { person, channel, words }: { person: string; channel: string; words: string },
    more: number,
  ) => {
    const said =
      channel === 'alive'
        ? `The “I am alive” message does not get through: ${words}`
        : alarmTroubleWords(person, channel, words);
    const end = /[.!?…]$/.test(said) ? '' : '.';
    return `${said}${end}${more > 0 ? ` Nor ${more === 1 ? 'does' : 'do'} ${counted(more, 'other way')}.` : ''}`;
  },
  hubSilent:
    'The hub has been silent for more than five minutes. Look after the cool room yourself.',
  sound: {
    title: 'Sound on this page',
    on: 'Sound is on: this page sounds until somebody says “seen”.',
    off: 'Sound is off on this page.',
    waiting: 'This browser waits for a tap before it lets the page sound.',
    none: 'This browser cannot make sounds.',
    allow: 'Turn the sound on',
    stop: 'Turn the sound off',
    sounding: 'An alarm sounds now.',
  },
  silence: {
    title: 'Silence',
    none: 'Nothing is silent.',
    line: (what: string, until: string) => `Alarms are silent: ${what}, until ${until}.`,
    work: 'planned work',
    farm: 'the whole farm',
    by: (who: string, reason: string) => `${who}: ${reason}.`,
    end: 'End it now',
    keeps:
      'It comes back by itself. Produce that gets too warm and frost are silent for two hours at the most, and not at all for planned work.',
    where: 'Where',
    everywhere: 'The whole farm',
    which: 'Which alarms',
    all: 'All kinds',
    long: 'For',
    reason: 'Reason',
    isWork: 'Planned work: still tell of warm produce and frost',
    make: 'Make it silent',
    minutes: (n: number) => span(n * MINUTE),
  },
  people: {
    title: 'Who is woken, in this order',
    none: 'Nobody yet.',
    name: 'Name',
    email: 'E-mail address',
    webhook: 'Webhook address',
    webhookKept: (server: string) => `Webhook address (kept: ${server}; leave empty to keep it)`,
    webhookAway: 'Take the webhook away',
    urgentHours: 'May be woken by urgent alarms',
    todayHours: 'May be told of the rest',
    always: 'at any time',
    never: 'never',
    between: 'only between',
    from: 'from',
    to: 'to',
    up: (name: string) => `Earlier: ${name}`,
    down: (name: string) => `Later: ${name}`,
    upShort: 'Earlier',
    downShort: 'Later',
    remove: 'Remove',
    removeOf: (name: string) => `Remove ${name}`,
    add: 'Add somebody',
    save: 'Save',
    test: (channel: string) => `Test ${alarmChannels[channel] ?? channel}`,
    testOf: (channel: string, name: string) =>
      `Test ${alarmChannels[channel] ?? channel} to ${name}`,
    testing: 'Trying…',
    outcomes: {
      delivered: 'Taken by the other side',
      later: 'Did not get through',
      refused: 'Refused',
    },
    outcome: (outcome: string, words: string) => (words === '' ? outcome : `${outcome}: ${words}`),
    saveFirst: 'Save first, then test.',
  },
  sending: {
    title: 'How it is sent',
    rules: 'Waits, ranks, quiet hours and the weekly test',
    ways: 'Mail server, webhooks, links and the “I am alive” message',
    waits: 'Without an answer',
    second: 'the second person is told after, min',
    third: 'the third after, min',
    everybody: 'everybody after, min',
    everybodyWhy: 'Everybody includes those outside their hours.',
    most: 'Messages to one person in an hour, at most',
    quiet: 'Quiet hours, when only urgent alarms are told',
    quietOff: 'no quiet hours',
    rank: 'Rank of each kind',
    guarded: 'Produce too warm and frost are always urgent.',
    weekly: 'Weekly test alarm',
    weeklyOff: 'no weekly test',
    weekday: 'Day',
    at: 'Time',
    address: 'Address of these pages, for links in messages',
    mail: 'Mail server',
    mailOff: 'No e-mail is sent.',
    mailOn: 'Send e-mail',
    host: 'Server',
    port: 'Port',
    security: 'Encryption',
    securities: {
      tls: 'TLS from the start (port 465)',
      starttls: 'STARTTLS (port 587)',
      none: 'none: anybody on the way can read it',
    },
    user: 'User (empty when it needs none)',
    password: 'Password',
    passwordKept: 'Password (kept; leave empty to keep it)',
    fromAddress: 'From address',
    certificate: 'Certificate to trust (PEM), for a server of your own',
    secret: 'Webhook secret (16 characters or more)',
    secretKept: 'Webhook secret (kept; leave empty to keep it)',
    alive: '“I am alive” message to something outside',
    aliveOn: 'Send it',
    aliveUrl: 'Address',
    aliveKept: (server: string) => `Address (kept: ${server}; leave empty to keep it)`,
    aliveEvery: 'Every, min',
    save: 'Save',
    saving: 'Saving…',
    saved: 'The hub has stored it.',
    notSaved: (sentence: string) => `Not stored: ${sentence}`,
    rehearse: 'Test alarm to everybody now',
    rehearsed: 'The test alarm is on its way.',
  },
  weekdays: {
    sunday: 'Sunday',
    monday: 'Monday',
    tuesday: 'Tuesday',
    wednesday: 'Wednesday',
    thursday: 'Thursday',
    friday: 'Friday',
    saturday: 'Saturday',
  },
  log: {
    title: 'Log of the last 30 days',
    none: 'No alarm in this time.',
    csv: 'As a table for a spreadsheet (CSV)',
    counts: 'Counts by month and kind',
    noCounts: 'Nothing to count yet.',
    entry: (day: string, said: string, state: string) =>
      `${shortDay(day)}: ${firstSentence(said)}. ${state}.`,
    line: (raised: number, seen: number, minutes: number | null) =>
      `${counted(raised, 'alarm')}, ${number(seen, 0)} seen${
        minutes === null ? '' : `, half of them within ${span(minutes * MINUTE)}`
      }.`,
    share: (falseOnes: number, answered: number, low: number, high: number) =>
      `False: ${falseOnes} of ${answered} of which somebody said so; the true share lies between ${number(low * 100, 0)} and ${number(high * 100, 0)}${HARD}% (Wilson, 95${HARD}%).`,
    noShare: 'Nobody said whether they were false.',
    targets: 'Meant: at most one false urgent alarm in 30 days, at most three notices a day.',
  },
  testTitle: 'Test alarm',
  testWords: 'Test of the alarm. Nothing is wrong.',
  testAnswered: (who: string, time: string) => `Answered by ${who} at ${time}.`,
  testOpen: 'Nobody has answered it.',
};

export const screens = {
  notKnown,
  number,
  withUnit,
  signed,
  temperature,
  humidity,
  chance,
  money,
  counted,
  span,
  age,
  ageLength,
  countdown,
  locale: 'en-GB',
  product: 'Dewpost',
  spots,
  quantities,
  kinds,
  limits,
  coolRoomStates,
  coolRoom,
  wetness,
  reading,
  evidence: evidenceLabel,
  tonightLow,
  menu: { label: 'Pages', today: 'Today', places: 'Places', probes: 'Probes', alarms: 'Alarms' },
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
  how: howScreens,
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
  places: placeScreens,
  probes: probeScreens,
  signIn: signInScreens,
  alarms: alarmScreens,
};
