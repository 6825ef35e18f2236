import type {
  BatchLook,
  BatchWork,
  CheckedProbe,
  ComparedUnit,
  Cooling,
  CoolRoom,
  CutStage,
  Evidence,
  ExposureTerm,
  Loss,
  LossComparison,
  LossLook,
  LossUnit,
  Lot,
  LotClass,
  LotUse,
  PlaceKind,
  PlaceNow,
  Quantity,
  ReadyStage,
  ShortReason,
  Spot,
  Strip,
  Task,
  TaskKind,
  WorthGap,
  YearSeason,
} from '../contract/index.ts';
import { datesIn } from './dates.ts';
import { farmUnits } from './farmUnits.ts';
import { figuresIn, HARD } from './figures.ts';
import { moneyIn } from './money.ts';
import { factsSaid, isReason } from './reasons.ts';
import { solarTellers } from './solarTellers.ts';
import { shownIn } from './units.ts';

// English: every word a person reads. Another language is another file with the same exports; how to
// write one stands in DEVELOPERS.md under "A language". In short:
// - Copy this file, say the locale and the decimal sign below, and translate what stands in quotes. In
//   `…${…}…` the parts in braces are put in: move them where your language wants them, keep all of them.
// - Names before a colon (`'wet-hours':`, `title:`), names of functions and what they are given stay as
//   they are. `get low() {…}` is a text that depends on the units the farm reads.
// - Figures come from the functions below (temperature, difference, weight, number, clock …), which turn
//   them into the units of the farm: never write °C or kg beside a number yourself.
// - What only your language needs (another plural, cases, articles) is a function of your own in your file.
// - `hub/words/languages.ts` names the languages there are. The type check tells what is missing or
//   left over, and tests/hub/words/languages.test.ts what is still English.
// In order: figures and times; terms and reasons of tasks; sentences of the hub; words of the screens.

const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const locale = 'en-GB';
const notKnown = 'not known';

const {
  number,
  withUnit,
  signed,
  temperature, // `3.0 °C`, `37.4 °F`
  degrees, // the same without its unit
  wholeDegrees,
  degree, // `°C`, `°F`
  difference, // how much warmer, or how far off: `0.5 °C`, `0.9 °F`
  signedDifference,
  apart, // the same without its unit
  perDegree,
  heat, // heat units (°C d), without their unit
  humidity,
  figure, // of a fact that gave a reason: a number, or the text that it is
  figureDegrees,
  figureApart,
  figureHeat,
  figureWeight,
  weight, // `1.25 kg`
  kilograms, // `1.3 kg`, `3 kg`
  bareWeight, // without its unit
  perWeight, // money or minutes a kilogram -> a pound, where weights are in pounds
  weightUnit, // `kg`, `lb`
  inPounds,
  bareGrams,
  gramUnit,
} = figuresIn({ locale, decimal: '.', notKnown });
const {
  clock,
  hour,
  wallTime,
  dayAndTime,
  eventTime,
  dayName,
  longDay,
  dateAt,
  weekday,
  dayInText,
  shortDayInText,
  shortDay,
  dayAndYear,
  month,
} = datesIn(locale, { commas: 'first dropped' }); // a comma between day and time reads as an end
const { money, cents } = moneyIn(locale);

export { eventTime, withUnit };

/** What something is told for: a price a kilogram. */
const kilogramWord = () => (inPounds() ? 'pound' : 'kilogram');

/** A probability from 0 to 1. Never "0 %" or "100 %": a forecast is not a promise. */
function chance(p: number): string {
  if (p < 0.01) return `under 1${HARD}%`;
  if (p > 0.99) return `over 99${HARD}%`;
  return withUnit(p * 100, '%', 0);
}

const counted = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;

/** A price a kilogram, as a price a pound where weights are in pounds. */
const ofWeight = (range: WorthRangeSaid): WorthRangeSaid => ({
  ...range,
  ratio: perWeight(range.ratio),
  low: range.low === null ? null : perWeight(range.low),
  high: range.high === null ? null : perWeight(range.high),
});

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

// Trays that would do better elsewhere, and shade: labels of what such a task rests on.

const trayEvidence: Readonly<Record<string, string>> = {
  'better-at-least': 'Better there, at the least (99 times of 100)',
  'better-at-most': 'Better there, at the most (99 times of 100)',
  'band-hours-more': 'In the band with dry leaves there, more hours a day',
  'better-hours-a-day':
    'Better there, h a day: hours in the band, less hot ones and half of wet ones',
  'carrying-minutes': 'Minutes of carrying',
  'cold-hours-fewer': 'Too cold there, fewer hours a day',
  'days-to-ready': 'Days until they are ready; fewer than the limit are left where they are',
  'harmful-hours-fewer': 'Harmful hours fewer a day (heat, chill, disease weather)',
  'heat-ahead': 'Heat over the limit still to come today',
  'heat-now': 'Temperature inside',
  'heat-of-the-day': 'Heat over the limit, today in all',
  'heat-so-far': 'Heat over the limit so far today',
  'hot-hours-fewer': 'Too hot there, fewer hours a day',
  'hottest-ahead': 'Hottest still to come today',
  'mould-seen': 'Mould was seen on them',
  'move-to': 'Where to',
  'moved-days-ago': 'Moved, days ago',
  'moving-spares': 'Expected to spare; limit is what the carrying costs',
  'work-spares': 'Would spare; limit is what its minutes cost',
  'not-safe-there': 'Too hot or too cold there on some day, or tonight',
  'open-up-first': 'Open up first: it would have ended these hours',
  'room-there': 'Room there, in trays; limit is what is to be carried',
  'shade-first': 'Shade first; days it was shaded so far',
  'shade-off-in-the-evening': 'Off again in the evening; hours to sunset',
  'share-spared': 'Share of the crop expected to be spared',
  shaded: 'Shaded today',
  'sun-ahead': 'Hours to sunset',
  'trays-by-farm-file': 'Trays as the farm file tells them',
  'trays-of': 'Crop',
  'trays-standing': 'Trays',
  'wet-hours-fewer': 'Leaves wet there, fewer hours a day',
};
const trayMissing: Readonly<Record<string, string>> = {
  'crop-band': 'the temperatures the crop likes, in the farm file',
  'days-in-both-places': 'five days known in both places',
  'days-to-ready': 'knowing when they are ready (days of the crop in the farm file)',
  'room-in-the-place': 'knowing how many trays the better place holds',
  'yesterday-at-this-hour': 'yesterday’s readings from this hour on',
};
const trayInputs: Readonly<Record<string, string>> = {
  'bad-hours': 'Hours too hot, or wet by day',
  batches: 'Finished batches learned from',
  days: 'Days',
  'days-compared': 'Days compared',
  'days-from': 'Who says so',
  'days-left-out': 'Days left out, too little known',
  'days-worth': 'Worth as many days apart',
  free: 'Free places for trays',
  from: 'From',
  'harmful-hours-fewer': 'Harmful hours fewer a day',
  'lost-per-hour': 'Lost for each harmful hour',
  'lost-per-hour-least': 'Lost for each harmful hour, at the least',
  'lost-per-hour-most': 'Lost for each harmful hour, at the most',
  minutes: 'Minutes of carrying',
  'minutes-from': 'Who says so',
  'open-already': 'Of those, with vents open',
  place: 'Place',
  trays: 'Trays',
  'warmer-than-yesterday': 'Warmer than yesterday by',
  'would-help': 'Of those, opening would have ended',
};

// Watering by a soil probe.

const waterEvidence: Readonly<Record<string, string>> = {
  'soil-dries': 'Soil dries, at the pace of the last day',
  'soil-dry-in': 'Until the soil is at the limit, at that pace',
  'soil-moisture-now': 'Soil moisture at the driest probe',
  'water-before-evening': 'Water so early that leaves are dry by night; hours to sunset',
  'water-before-the-heat': 'Water before the heat of the day; hours to sunset',
  'water-in-the-morning': 'Water in the morning; hours to sunrise',
  'water-today': 'Water today',
};
const waterSentences: Readonly<Record<string, (fact: Spoken) => string>> = {
  'soil-moisture-now': ({ value, limit }) =>
    `Its soil probe says ${figure(value)}${HARD}%; your limit is ${figure(limit)}${HARD}%.`,
  'soil-dry-in': ({ value }) => `At the pace of the last day it is there in ${hoursOf(value)}.`,
  'water-before-evening': () => 'Do it early enough for leaves to be dry by night.',
  'water-before-the-heat': () => 'Do it before the heat of the day.',
  'water-in-the-morning': () => 'Wait for the morning: leaves wet all night rot.',
};

type Spoken = { readonly value: Evidence['value']; readonly limit: Evidence['limit'] };
const traySentences: Readonly<Record<string, (fact: Spoken) => string>> = {
  'band-hours-more': ({ value }) =>
    `It kept to the crop’s band for ${figure(value)}${HARD}h a day more there over the last days.`,
  'better-hours-a-day': ({ value }) =>
    `There it was ${figure(value)}${HARD}h a day better over the last days, hot and wet hours taken off.`,
  'days-to-ready': ({ value }) => `They stand for about ${figure(value)} more days.`,
  'heat-now': ({ value, limit }) =>
    `It is ${figureDegrees(value)} inside; the crop’s limit is ${figureDegrees(limit)}.`,
  'heat-of-the-day': ({ value }) =>
    `Heat over the limit comes to about ${figureHeat(value)} today.`,
  'hottest-ahead': ({ value, limit }) =>
    `About ${figureDegrees(value)} is to come inside; the crop’s limit is ${figureDegrees(limit)}.`,
  'mould-seen': () => 'Mould was seen on them: they are not carried among clean ones.',
  'moved-days-ago': ({ value }) => `They were moved ${figure(value)} days ago.`,
  'moving-spares': ({ value, limit }) =>
    `It is expected to spare about ${figure(value)}; the carrying costs about ${figure(limit)}.`,
  'work-spares': ({ value, limit }) =>
    `It would spare about ${figure(value)}; its minutes cost about ${figure(limit)}.`,
  'not-safe-there': ({ value }) =>
    `${value} looks better, but it got too hot or too cold there, or will tonight.`,
  'open-up-first': () => 'Open up first: outside air would do.',
  'room-there': ({ value, limit }) =>
    `There is room for ${figure(value)} trays there; ${figure(limit)} would be carried.`,
  'shade-first': () => 'Shade it first, and see for three days what that does.',
  'shade-off-in-the-evening': () => 'Take it off again in the evening.',
  shaded: () => 'It is shaded, as somebody said.',
  'trays-by-farm-file': () => 'It goes by the trays that the farm file tells of.',
};

// What the terms of a task's evidence are called on screen.

/** Those of sowing and harvest. */
const growingLabels = {
  'harvest-crop': 'Crop',
  'harvest-for': 'For the delivery on',
  'harvest-trays': 'Trays that stand there',
  'harvest-weight': 'Weight they are expected to give',
  'over-in': 'Over in about',
  'over-since': 'Over since about',
  'ready-chance': 'Chance that it is ready now',
  'ready-expected': 'Expected to be ready in',
  'seen-ready': 'Seen ready, ago',
  'sow-by-told-days': 'By the days told in the farm file, for',
  'sow-chance': 'Chance of being ready in time',
  'sow-crop': 'Crop',
  'sow-first-batches': 'Past batches, too few for a chance',
  'sow-for': 'For the delivery on',
  'sow-late': 'Its right day is past, for the delivery on',
  'sow-trays': 'Trays to sow',
};

/** Labels beside a value: "Leaves wet for", then 6.5 h. */
export const evidenceLabels: Readonly<Record<string, string>> = {
  ...growingLabels,
  ...trayEvidence,
  ...waterEvidence,
  'above-limit-minutes': 'Over the limit for',
  battery: 'Battery',
  'chance-for-ripe': 'Chance that tonight takes what is ripe',
  'chance-of-cold': 'Chance that it gets colder outside than the crop bears',
  'chance-of-damage': 'Chance of damage tonight',
  'burns-litres': 'Fuel for that run',
  'chance-under-cover': 'Chance of damage under the covers too',
  'cleaning-brings': 'Clearing out brings, its work paid',
  'closed-stays-damp': 'Humidity that stays in when closed',
  'coil-below-air': 'Coil colder than the air by',
  'colder-than-ever': 'Air colder than it ever is',
  'cover-gain': 'What covers add here in nine clear nights of ten',
  covers: 'Covers',
  'cycle-moved-by': 'Whole cycle moved by',
  'chance-of-frost': 'Chance of frost outside tonight',
  'minutes-spared': 'Minutes of shutting and opening again that it spares',
  'open-cold-hours-more': 'Hours of harmful cold more with the vents open, frost counted ten times',
  'open-damp-hours-fewer': 'Hours fit for disease fewer with the vents open',
  'open-night-spares': 'What a night with the vents open spares of what stands there',
  'usually-shut-in': 'Usually closed in',
  'cutting-allowed': 'Cutting back may be done, because of',
  'cutting-brings': 'Cutting back brings, against picking on',
  'cycle-bottom-above': 'Bottom of the cooling cycle above the set temperature',
  'damage-after-sunset': 'Damage expected after sunset by',
  'daylight-in': 'Drying light begins in',
  'door-open-minutes': 'Door open for',
  'days-since-check': 'Days it measured since its check in melting ice',
  'doubtful-readings': 'Doubtful readings in 24 hours',
  'drop-in-risk': 'Share of the value this is expected to spare',
  'film-not-enough': 'Night colder than the crop bears, by',
  'fruit-hanging': 'Fruit and flowers counted',
  'heard-minutes-ago': 'Last heard before',
  'heat-limit-near': 'Near the heat limit',
  'inside-humidity': 'Humidity inside',
  'inside-temperature': 'Temperature inside',
  'lot-above-hours': 'Over the limit since harvest',
  'lot-chilling': 'Lay colder than it bears',
  'lot-crop': 'Lot',
  'lot-days-left': 'Days left, at the least',
  'lot-days-most': 'Days left, at the most',
  'lot-freezing': 'Lay below its freezing point',
  get 'lot-heat'() {
    return `Lay above ${figureDegrees(35)}`;
  },
  'lot-over-before-sale': 'Days to spare at the next delivery',
  'lot-released': 'It may stay, somebody said',
  'lot-slack': 'Days to spare at the next delivery',
  'lot-unknown-hours': 'Not known, possibly over',
  'lot-weight': 'Weight left',
  'keep-green-leaves': 'Keep the green leaves',
  'last-picking-in': 'Last picking worth its cost, in',
  'own-picking-speed': 'Minutes a kilogram takes, by your pickings',
  'minutes-to-limit': 'Time until the air reaches the limit',
  'may-be': 'What it may be',
  'never-checked-days': 'Days it measures here without a check in melting ice',
  'no-way-down-minutes': 'Above its cycle without way down for',
  'night-goes-first': 'The cold of the night goes first',
  'night-needs-warmth': 'Low outside tonight; the house needs its warmth',
  'off-minutes': 'Cooling off for',
  'one-value-minutes': 'Same value, in a room that cycles, for',
  'open-air': 'Temperature in the open',
  'outside-cooler-by': 'Outside cooler by',
  'outside-damper-by': 'Outside air holds more water, by',
  'outside-drier-by': 'Outside air holds less water, by',
  'outside-freezing': 'Freezing air outside',
  'produce-estimate': 'Middle of a crate, measured or estimated',
  'purge-first': 'Damp that can be let out first',
  'rain-ahead': 'Rain foretold for the next 24 hours',
  'ripe-value': 'Worth of what is ripe',
  'room-air': 'Air in the room',
  'room-power': 'Power drawn',
  'rule-broke': 'A rule broke down',
  'run-for-minutes': 'The set then runs for about',
  'run-within-minutes': 'The set has to run within',
  'silent-hours': 'Silent for',
  'since-sunrise': 'Time since sunrise',
  'stay-open-dry': 'Mild enough to stay open and dry; low outside',
  'steep-rise': 'Steepest rise of the air',
  'still-to-gain': 'Still to gain by picking on',
  'still-too-warm-to-close': 'Still too warm inside to close',
  'stored-freezing': 'Temperature where lots are stored',
  'stuck-hours': 'Same value for',
  'sunset-in': 'Time to sunset',
  'top-to-bottom-minutes': 'On the way from top to bottom of the cycle for',
  'too-near-sunset': 'Too near sunset to open for drying',
  'tonight-low': 'Tonight’s low',
  'tonight-outside-low': 'Tonight’s low outside',
  'under-cover': 'Temperature under the cover',
  'under-cover-rising': 'Too hot under the cover within',
  'value-at-risk': 'Loss that covers can prevent; limit is the cost of covering',
  vents: 'Vents',
  'warms-within': 'Time constant of the room',
  'wet-hours': 'Leaves wet for',
};

/** What is missing, as it follows "Cannot say without". */
export const missingLabels: Readonly<Record<string, string>> = {
  ...trayMissing,
  'climate-of-the-place': 'years of daily temperatures, from a station or from here',
  'covers-on-or-off': 'knowing whether the covers are on',
  'delivery-days': 'delivery days in the farm file',
  'door-or-room-temperature': 'the door contact or a reading of the room’s air',
  'fresh-fruit-count': 'a count of the fruit from the last four weeks',
  'growing-days': 'past batches of the crop, or its growing days in the farm file',
  'frost-years': 'at least eight years of nightly lows, from a station or from here',
  'fruit-count': 'a count of the fruit and flowers that hang there',
  'inside-humidity': 'a humidity reading from inside',
  'inside-temperature': 'a temperature reading from inside',
  'leaf-wetness-history': 'humidity readings of the last hours',
  'lot-life': 'knowing how long this crop keeps and how warm the lot has been',
  'more-years': 'at least eight seasons of nightly lows',
  'night-forecast': 'a forecast for tonight from a probe in the open at this place',
  'outside-humidity': 'a humidity reading from outside',
  'outside-temperature': 'a temperature reading from outside',
  'outside-temperature-earlier': 'an earlier temperature reading from outside',
  'own-nights': 'more nights measured here',
  price: 'a price for the crop',
  'probe-last-heard': 'knowing when the probe was last heard or placed',
  'room-power': 'a reading of the power the cooling draws',
  'room-temperature': 'a reading of the room’s air',
  'room-temperature-history': 'more readings of the room’s air',
  'rule-broke': 'a rule that broke down',
  'no-frost-years': 'past seasons with a frost that hurts',
  'station-record': 'the past record of a weather station',
  'soil-moisture-here': 'a soil moisture reading of the last three hours from here',
  'sun-times': 'a sunrise and a sunset, which this latitude does not have today',
  'tonight-outside-low': 'a forecast of tonight’s low outside',
  'wet-days': 'rain or wet leaves on record',
};

// A term without a label is a fault of ours; shown as plain words it still tells more than a hole.
const plain = (term: string) => term.replaceAll('-', ' ');

export const evidenceLabel = (what: string): string => evidenceLabels[what] ?? plain(what);
export const missingLabel = (term: string): string => missingLabels[term] ?? plain(term);

// Why a task is asked for, one sentence for each fact that carries a decision.

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

const roomCauses: Readonly<Record<string, string>> = {
  door: 'the door',
  unit: 'the unit',
  power: 'the power',
  controller: 'the setting of the controller (read number and unit)',
  probe: 'the probe',
};

/** "Look at the power, the unit and the door: the probes here cannot tell which." */
function mayBe(causes: readonly string[]): string {
  const names = causes.map((cause) => roomCauses[cause] ?? cause);
  if (names.length < 2) return `It looks like ${names[0] ?? 'nothing known'}.`;
  return `Look at ${listed(names)}: the probes here cannot tell which.`;
}
const daysOf = (value: Evidence['value']) => amount(value, 'day', 'days');

type Say = (fact: Evidence) => string;

/** Why cutting to the crown may be done. */
const cuttingReasons: Readonly<Record<string, string>> = {
  renovation: 'The last picking was less than four weeks ago.',
  dormant: 'The plants are dormant.',
  grower: 'You want it cut; that is on record.',
};

/** A day among the facts. */
const dayOf = (value: Evidence['value']) => dayInText(figure(value));

const growingSentences: Readonly<Record<string, Say>> = {
  'sow-for': ({ value }) => `For ${dayOf(value)}.`,
  'sow-chance': ({ value }) => `The chance of being ready in time is ${whole(value)}${HARD}%.`,
  'sow-by-told-days': () => 'By the days told in the farm file, as no batch has ended yet.',
  'sow-first-batches': ({ value }) =>
    `Only ${amount(value, 'batch has', 'batches have')} ended yet, so there is no chance to give.`,
  'sow-late': ({ value }) => `Its right day is past: it may not be ready by ${dayOf(value)}.`,
  'seen-ready': () => 'Somebody saw it ready.',
  'ready-chance': ({ value }) => `It is ready by now with a chance of ${whole(value)}${HARD}%.`,
  'ready-expected': ({ value }) =>
    typeof value === 'number' && value > 0
      ? `It is expected to be ready in ${daysOf(value)}.`
      : 'By its days it is ready.',
  'harvest-for': ({ value }) => `It is for ${dayOf(value)}.`,
  'over-in': ({ value }) => `It is over in about ${daysOf(value)}.`,
  'over-since': ({ value }) =>
    `By its keeping time it has been over for ${daysOf(value)}: cut or clear it.`,
};

/** `3 trays of basil and 2 of pea shoots`, where the facts tell of trays. */
function traysNamed(because: readonly Evidence[], of: 'sow' | 'harvest'): string | null {
  const trays = new Map<string, number>();
  let crop = '';
  for (const { what, value } of because) {
    if (what === `${of}-crop`) crop = lowerFirst(figure(value));
    if (what === `${of}-trays`) trays.set(crop, (trays.get(crop) ?? 0) + Number(value));
  }
  if (trays.size === 0) return null;
  const [first, ...others] = [...trays];
  if (trays.size > 3) return counted(sumOf([...trays.values()]), 'tray');
  return listed([
    `${counted(first?.[1] ?? 0, 'tray')} of ${first?.[0]}`,
    ...others.map(([name, n]) => `${n} of ${name}`),
  ]);
}
const sumOf = (all: readonly number[]) => all.reduce((sum, each) => sum + each, 0);
const lowerFirst = (name: string) => `${name.slice(0, 1).toLowerCase()}${name.slice(1)}`;

const sentences: Readonly<Record<string, Say>> = {
  ...growingSentences,
  ...traySentences,
  ...waterSentences,
  'wet-hours': ({ value }) => `Leaves have been wet for ${hoursOf(value)}.`,
  'outside-drier-by': ({ value }) => `Outside air holds ${figure(value)}${HARD}g/m³ less water.`,
  'outside-damper-by': ({ value }) =>
    `Outside air holds ${figure(value)}${HARD}g/m³ more water, but the heat goes first.`,
  'inside-temperature': ({ value, limit }) =>
    `It is ${figureDegrees(value)} inside; venting starts at ${figureDegrees(limit)}.`,
  'heat-limit-near': ({ value, limit }) =>
    `It is ${figureDegrees(value)} inside, close to the limit of ${figureDegrees(limit)}.`,
  'outside-cooler-by': ({ value }) => `Outside is ${figureApart(value)} cooler.`,
  'night-needs-warmth': ({ value }) =>
    `Close again before dusk: the low outside tonight is about ${figureDegrees(value)}.`,
  'tonight-outside-low': ({ value }) => `The low outside tonight is about ${figureDegrees(value)}.`,
  'film-not-enough': ({ value }) =>
    `That is ${figureApart(value)} below what the crop bears: film alone does not keep it, so cover inside or move trays.`,
  'purge-first': ({ value }) =>
    `Outside air holds ${figure(value)}${HARD}g/m³ less water: air the house for a quarter of an hour first.`,
  'closed-stays-damp': ({ value }) =>
    `It is at ${figure(value)}${HARD}% humidity inside, and closed it stays damp.`,
  'chance-of-damage': ({ value, limit }) =>
    limit === null
      ? `The chance of damage tonight is ${whole(value)}${HARD}%.`
      : `The chance of damage tonight is ${whole(value)}${HARD}%; covering pays from ${whole(limit)}${HARD}%.`,
  'tonight-low': ({ value, limit }) =>
    `Tonight’s low is about ${figureDegrees(value)}; damage begins at ${figureDegrees(limit)}.`,
  'chance-for-ripe': ({ value, limit }) =>
    limit === null
      ? `The chance that tonight takes what is ripe is ${whole(value)}${HARD}%.`
      : `The chance that tonight takes what is ripe is ${whole(value)}${HARD}%; picking pays from ${whole(limit)}${HARD}%.`,
  'rain-ahead': ({ value }) =>
    `${figure(value)}${HARD}mm of rain are foretold for the next 24 hours.`,
  'under-cover-rising': ({ value }) =>
    `At this rate it is too hot under the covers in about ${minutesOf(value)}.`,
  'chance-under-cover': ({ value }) =>
    `Covers here leave a chance of damage of ${whole(value)}${HARD}%.`,
  'under-cover': ({ value }) => `It is ${figureDegrees(value)} under the covers.`,
  'open-air': ({ value }) => `It is ${figureDegrees(value)} in the open, past the danger.`,
  'door-open-minutes': ({ value }) => `The door has been open for ${minutesOf(value)}.`,
  'steep-rise': ({ value }) =>
    `The air rose by ${figureApart(value)} in minutes and stays up, as with an open door.`,
  'room-air': ({ value, limit }) =>
    `The air in the room is at ${figureDegrees(value)}; the limit is ${figureDegrees(limit)}.`,
  'room-power': ({ value }) => `The cooling draws ${figure(value)}${HARD}W.`,
  'off-minutes': ({ value }) => `Cooling has been off for ${minutesOf(value)}.`,
  'minutes-to-limit': ({ value }) => `The air reaches the limit in about ${minutesOf(value)}.`,
  'above-limit-minutes': ({ value }) => `The air has been over the limit for ${minutesOf(value)}.`,
  'produce-estimate': ({ value }) => `The middle of a crate is at about ${figureDegrees(value)}.`,
  'cycle-bottom-above': ({ value }) =>
    `The coldest the room gets is now ${figureApart(value)} above the set temperature.`,
  'no-way-down-minutes': ({ value }) =>
    `The air left its usual cycle and has made no way down for ${minutesOf(value)}.`,
  'top-to-bottom-minutes': ({ value, limit }) =>
    `The cooling has not brought the air down for ${minutesOf(value)}; ${minutesOf(limit)} is the most it takes.`,
  'colder-than-ever': ({ value, limit }) =>
    `The air is at ${figureDegrees(value)}, colder than it ever is (${figureDegrees(limit)}): produce may freeze.`,
  'cycle-moved-by': ({ value }) =>
    `The cooling goes up and down as ever, but ${figureApart(Math.abs(Number(value)))} ${Number(value) > 0 ? 'warmer' : 'colder'} than it did: somebody may have turned its setting.`,
  'one-value-minutes': ({ value }) =>
    `It has said the same value for ${minutesOf(value)}, in a room that never stands still.`,
  'coil-below-air': ({ value }) => `The coil is ${figureApart(value)} colder than the air.`,
  'may-be': ({ value }) => mayBe(String(value ?? '').split(' ')),
  'run-within-minutes': ({ value }) => `It has to run within ${minutesOf(value)}.`,
  'run-for-minutes': ({ value }) => `It then runs for about ${minutesOf(value)}.`,
  'burns-litres': ({ value }) => `That burns about ${figure(value)}${HARD}litres.`,
  'silent-hours': ({ value }) => `It has been silent for ${hoursOf(value)}.`,
  'days-since-check': ({ value, limit }) =>
    `It has measured for ${figure(typeof value === 'number' ? Math.floor(value) : value)} days since it was last checked in melting ice; every ${figure(limit)} is the plan.`,
  'never-checked-days': ({ value }) =>
    `It has measured here for ${figure(typeof value === 'number' ? Math.floor(value) : value)} days and was never checked in melting ice.`,
  'stuck-hours': ({ value }) => `It has said the same value for ${hoursOf(value)}.`,
  battery: ({ value, unit }) => `Its battery is at ${figure(value)} ${unit}.`,
  'doubtful-readings': ({ value }) => `${figure(value)} of its readings in 24 hours were doubtful.`,
  'rule-broke': ({ value }) => `Cannot say: a rule broke down (${figure(value)}).`,
  'lot-days-left': ({ value, limit }) =>
    `It keeps ${daysOf(value)} more at the least; the next delivery is in ${daysOf(limit)}.`,
  'lot-over-before-sale': () => 'It may not last until the next delivery: decide today.',
  'lot-slack': () => 'It may not last until the delivery after that.',
  'lot-days-most': ({ value }) =>
    value === 0
      ? 'By its figures its keeping time is used up.'
      : `It keeps ${daysOf(value)} more at the most.`,
  'lot-freezing': () => 'It lay below its freezing point, so no days can be given.',
  'lot-chilling': ({ limit }) =>
    `It lay below ${figureDegrees(limit)}, colder than it bears, so no days can be given.`,
  'lot-heat': () =>
    `It lay above ${figureDegrees(35)}, where the figures end, so no days can be given.`,
  'lot-above-hours': ({ value, limit }) =>
    `It has been over its limit for ${hoursOf(value)} since harvest; the agreed clock is ${hoursOf(limit)}.`,
  'lot-unknown-hours': ({ value }) =>
    value === 0 ? '' : `${hoursOf(value)} more are not known and possibly over.`,
  'lot-released': () => 'A named person said that it may stay.',
  'stored-freezing': ({ value }) =>
    `It is at ${figureDegrees(value)} where lots are stored: leaves freeze a little below zero.`,
  vents: ({ value }) => `The vents are ${figure(value)}, as somebody said.`,
  'open-damp-hours-fewer': ({ value }) =>
    `With the vents open about ${hoursOf(value)} fewer of the night suit a disease.`,
  'minutes-spared': ({ value }) =>
    `It spares about ${figure(value)}${HARD}min of closing and opening again.`,
  'usually-shut-in': () => 'You close it at its usual hour.',
  covers: ({ value }) => `The covers are ${figure(value)}, as somebody said.`,
  'night-goes-first': () => 'The cold of the night goes first.',
  'still-too-warm-to-close': () => 'It is still too warm inside to close.',
  'stay-open-dry': ({ value }) =>
    `With a low of about ${figureDegrees(value)} outside it can stay open and dry.`,
  'still-to-gain': ({ value }) =>
    typeof value === 'number' && value > 0
      ? `Picking on would still bring about ${figure(value)}.`
      : 'No further picking is worth its cost.',
  'fruit-hanging': ({ value }) => `${figureWeight(value)} of fruit and flowers were counted.`,
  'last-picking-in': ({ value }) => `The last picking worth its cost is in ${hoursOf(value)}.`,
  'own-picking-speed': ({ value }) =>
    `By this season’s pickings a ${kilogramWord()} takes ${figure(typeof value === 'number' ? perWeight(value) : value)}${HARD}min.`,
  'cleaning-brings': ({ value }) => `Clearing out brings about ${figure(value)}, its work paid.`,
  'keep-green-leaves': () =>
    'Take out runners, dead and spotted leaves and rotten fruit; keep the green leaves.',
  'cutting-allowed': ({ value }) => cuttingReasons[String(value)] ?? '',
  'cutting-brings': ({ value }) => `Cutting back brings about ${figure(value)}.`,
  'outside-freezing': ({ value }) =>
    `Outside air is at ${figureDegrees(value)}: frost is worse than wet leaves.`,
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
  const what = lotNamed(because) ?? subject ?? place;
  if (kind === 'move-produce' && subject === 'freezing')
    return `Keep the lots in ${place} from freezing`;
  const growing = kind === 'sow' || kind === 'harvest' ? traysNamed(because, kind) : null;
  if (growing !== null) return `${kind === 'sow' ? 'Sow' : 'Harvest'} ${growing} in ${place}`;
  const titles: Readonly<Record<TaskKind, string>> = {
    'open-up': subject === 'tonight' ? `Leave ${place} open tonight` : `Open up ${place}`,
    'close-up': `Close up ${place}`,
    shade: `Shade ${place}`,
    'move-trays': moving(because, place),
    cover: `Cover ${place}`,
    uncover: `Uncover ${place}`,
    'pick-now': `Pick ${place} now`,
    'cut-back': subject === 'clear-out' ? `Clear out ${place}` : `Cut back ${place}`,
    water: `Water ${place}`,
    'shut-door': `Shut ${place}’s door`,
    'see-to-unit': `See to ${place}’s cooling unit`,
    'run-generator': `Run the generator for ${place}`,
    'move-produce': `Move the produce out of ${place}`,
    'sell-first': `Sell ${what} first`,
    'throw-out': `Look at ${what}: keep or throw out`,
    sow: `Sow ${what}`,
    harvest: `Harvest ${what}`,
    'see-to-probe': battery(because)
      ? `Change the battery of ${probe(subject)} in ${place}`
      : onlyCheck(because)
        ? `Check ${probe(subject)} in ${place} in melting ice`
        : `See to ${probe(subject)} in ${place}`,
  };
  return titles[kind];
}

/** `Move 12 trays of Basil from Long House to Sun House`. */
function moving(because: readonly Evidence[], place: string): string {
  const said = (what: string) => because.find((fact) => fact.what === what)?.value;
  const to = said('move-to');
  if (to === undefined || to === null) return `Move trays out of ${place}`;
  if (said('trays-by-farm-file') !== undefined)
    return `Move the trays there, ${said('trays-of')}, from ${place} to ${to}`;
  return `Move ${figure(said('trays-standing') ?? null)} trays of ${said('trays-of')} from ${place} to ${to}`;
}

/** `8 kg of Strawberries`, where the facts tell of a lot. */
function lotNamed(because: readonly Evidence[]): string | null {
  const crop = because.find(({ what }) => what === 'lot-crop')?.value;
  const weight = because.find(({ what }) => what === 'lot-weight')?.value;
  return crop === undefined ? null : `${figureWeight(weight ?? null)} of ${crop}`;
}

const probe = (subject: string | null) => (subject === null ? 'a probe' : `probe ${subject}`);
const battery = (because: readonly Evidence[]) =>
  because.length === 1 && because[0]?.what === 'battery';

const onlyCheck = (because: readonly Evidence[]) =>
  because.length === 1 && /^(never-checked-days|days-since-check)$/.test(because[0]?.what ?? '');

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

  // Each fact is said once, and of a long list the first and the last: cause and consequence.
  const spoken = [...new Set(factsSaid(kind, because))].map(sentence).filter((text) => text !== '');
  const whole = spoken.length > 2 && isReason(kind, because);
  return (whole ? [spoken[0], spoken.at(-1)] : spoken.slice(0, 2)).join(' ');
}

const FOOD =
  'This is a record, not a verdict on the food. Ask your local food-safety officer before you act on times and temperatures.';
const cautions: Partial<Record<TaskKind, string>> = {
  'open-up': 'In wind open the lee side first, latch the doors, and never open both ends in gusts.',
  shade: 'Houses are hottest now: drink, work in pairs or early, and come out when you feel dizzy.',
  water:
    'One probe tells of one spot: feel the soil first. Water the soil and not the leaves; water that touches what is eaten raw has to be clean, by local rules.',
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
  'throw-out': `${FOOD} Only a person decides: say on the cool room’s page, by name, what became of it. Mould is not trimmed for sale.`,
};

/** Care to take where the work can hurt; null where it needs no words. */
export const caution = (kind: TaskKind): string | null => cautions[kind] ?? null;

// Sentences the hub itself makes, in English.

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
    facts.temperature === null ? '' : `${temperature(facts.temperature)}`,
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
      `Since yesterday’s dusk between ${degrees(Math.min(...values))} and ${temperature(Math.max(...values))}.`,
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
      `Tonight’s low is expected near ${temperature(lowest.middle)}, between ${degrees(lowest.low)} and ${temperature(lowest.high)} in eight nights of ten.`,
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
  `Its temperatures of the last day are within ${difference(apart)} of those in ${place}.`;

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
  'not-its-own': 'It speaks for another probe',
  'not-allowed': 'A topic that is not its own',
  'bad-packet': 'What came over the wire is not MQTT, or stopped half way',
  'sign-in': 'The name or password is wrong, or tried too often',
  'too-many-probes': 'More probes that nobody described than the hub takes',
  'out-of-range': 'A value no probe can mean; kept, not used',
  clock: 'The probe’s clock is wrong; kept, not used',
  spike: 'A jump that the next reading did not confirm; kept, not used',
  'impossible-rate': 'A change faster than air can make; kept, not used',
  stuck: 'The value has not moved for hours; kept, not used',
};
export const refusalWords = (reason: string) => refusals[reason] ?? reason;

// Where a crop does best: places compared, and trays that stand.

type Between = readonly [number, number];
const hoursBetween = ([least, most]: Between) =>
  number(least) === number(most)
    ? withUnit(least, 'h')
    : `${number(least)} to ${withUnit(most, 'h')}`;
const dayCount = (n: number) => counted(n, 'day');
type Mean = {
  readonly n: number;
  readonly mean: number;
  readonly low: number | null;
  readonly high: number | null;
};
const meanWords = (of: Mean | null, say: (value: number) => string) =>
  of === null
    ? null
    : of.low === null || of.high === null
      ? `${say(of.mean)} (${of.n}, too few for a range)`
      : `${say(of.mean)} (${say(of.low)} to ${say(of.high)})`;

type TallyText = {
  readonly days: number;
  readonly inBand: Between;
  readonly hot: Between;
  readonly cold: Between;
  readonly wet: Between;
  readonly unknown: number;
  readonly disease: Between | null;
  readonly diseaseDays: Between | null;
};
const tallyWords = (tally: TallyText) =>
  `${hoursBetween(tally.inBand)} a day in the band with dry leaves, ${hoursBetween(tally.hot)} too hot, ${hoursBetween(tally.cold)} too cold, leaves wet ${hoursBetween(tally.wet)}`;

/** One place in words, a sentence a line. */
export function placeForCropWords(told: {
  readonly name: string;
  readonly tally: TallyText | null;
  readonly leftOut: readonly string[];
  readonly before: TallyText | null;
  readonly yearsBefore: readonly string[];
  /** Days since the first that was measured there. */
  readonly daysKept: number;
  readonly trays: number;
  readonly free: number | null;
  readonly gave: {
    readonly batches: number;
    readonly perTray: Mean | null;
    readonly days: Mean | null;
    readonly lost: Mean | null;
  } | null;
}): string[] {
  const { name, tally, leftOut, before, gave } = told;
  const lines = [
    tally === null
      ? `Cannot say how ${name} was: no day is known enough.`
      : `${name}: ${tallyWords(tally)}, over ${dayCount(tally.days)}.`,
  ];
  if (tally !== null && tally.unknown >= 0.05)
    lines.push(`${withUnit(tally.unknown, 'h')} a day are not known and may have been anything.`);
  if (tally?.disease && tally.diseaseDays) {
    const [least, most] = tally.diseaseDays;
    lines.push(
      most === 0
        ? 'On none of these days did the weather suit a disease of the crop. That is no clean bill.'
        : `On ${least === most ? most : `${least} to ${most}`} of ${dayCount(tally.days)} the weather suited a disease of the crop, with wet leaves for ${hoursBetween(tally.disease)} a day on average. That is weather, not proof of disease.`,
    );
  }
  if (tally !== null && leftOut.length > 0)
    lines.push(`${dayCount(leftOut.length)} left out, because too little of them is known.`);
  if (before !== null)
    lines.push(`In the same weeks of ${listed(told.yearsBefore)}: ${tallyWords(before)}.`);
  else
    lines.push(
      `How it was in the same weeks of past years is not known yet; kept of it so far: ${dayCount(told.daysKept)}.`,
    );
  if (gave !== null) {
    const parts = [
      meanWords(gave.perTray, (kg) => `${withUnit(kg, 'kg', 2)} a tray`),
      meanWords(gave.days, (days) => `${number(days, 0)} days`),
      meanWords(gave.lost, (share) => `${withUnit(100 * share, '%', 0)} lost`),
    ].filter((part) => part !== null);
    lines.push(
      `${counted(gave.batches, 'finished batch').replace('batchs', 'batches')} stood here: ${listed(parts)}.`,
    );
  }
  lines.push(
    told.free === null
      ? `${counted(told.trays, 'tray')} here; nobody has told how many it holds.`
      : `${counted(told.trays, 'tray')} here, room for ${told.free} more.`,
  );
  return lines;
}

type Apart = { readonly mean: number; readonly low: number; readonly high: number } | null;
const signedHours = (value: number) => withUnit(value, 'h');
/** Two places day by day, of the second. */
export function placesPairWords(
  from: string,
  to: string,
  score: Apart,
  says: 'better' | 'worse' | 'no-difference' | 'unknown',
  days: number,
): string {
  if (score === null || says === 'unknown')
    return `Cannot compare ${to} with ${from}: ${dayCount(days)} known in both, or days too much alike to count as several.`;
  const range = `${number(score.low)} to ${signedHours(score.high)} a day, nineteen times of twenty`;
  if (says === 'no-difference') return `No clear difference between ${to} and ${from}: ${range}.`;
  return says === 'better'
    ? `${to} was better than ${from} by ${signedHours(score.mean)} a day (${range}).`
    : `${to} was worse than ${from} by ${signedHours(-score.mean)} a day (${number(-score.high)} to ${signedHours(-score.low)}, nineteen times of twenty).`;
}

/** Where a crop does best, in a sentence, with how sure. */
export function bestPlaceWords(told: {
  readonly crop: string;
  readonly places: number;
  readonly best: string | null;
  readonly sure: boolean;
  /** The next best place, and by how much the best was better. */
  readonly next: { readonly name: string; readonly score: Apart } | null;
  /** Places of which no day is known enough. */
  readonly notKnown: readonly string[];
}): string {
  const { crop, best, next } = told;
  const rest = told.notKnown.length === 0 ? '' : ` How ${listed(told.notKnown)} did is not known.`;
  if (told.places < 2) return 'There is only one place for trays, so there is nothing to compare.';
  if (best === null || next === null || next.score === null)
    return `Cannot say where ${crop} does best: at least five days have to be known in two places.`;
  const { mean, low, high } = next.score;
  const range = `${number(low)} to ${signedHours(high)}`;
  const sentence = told.sure
    ? `${crop} did best in ${best}: ahead of ${next.name} by ${signedHours(mean)} a day (${range}, nineteen times of twenty).`
    : `No place is clearly best for ${crop}. ${best} comes first, but its lead on ${next.name} may be chance: ${range} a day.`;
  return sentence + rest;
}

export const noBandWords = (crop: string | null) =>
  crop === null
    ? 'No crop with a comfort band is told in the farm file, so places cannot be compared.'
    : `Places cannot be compared for ${crop}: the farm file tells no comfort band of it.`;

/** How a saving by moving trays is estimated. */
export function movingSavingWords(told: {
  readonly heatLimit: number | null;
  readonly chill: number | null;
  readonly share: {
    readonly mean: number;
    readonly low: number;
    readonly high: number;
    readonly from: 'own' | 'guess';
    readonly batches: number;
  };
}): string {
  const { heatLimit, chill, share } = told;
  const percent = (value: number) => withUnit(100 * value, '%', 2);
  const harmful = [
    heatLimit === null ? '' : `over ${temperature(heatLimit)}`,
    chill === null ? '' : `under ${temperature(chill)}`,
    'wet in weather that suits a disease',
  ].filter(Boolean);
  const range = `${percent(share.mean)} (${percent(share.low)} to ${percent(share.high)})`;
  const from =
    share.from === 'own'
      ? `That share, ${range}, is learned from ${share.batches} finished batches of your own; it goes with such hours, which is no proof that they did it.`
      : `That share, ${range}, is ours, from no source, until twelve finished batches of your own tell it; so far there are ${share.batches}.`;
  return `Harmful hours are those ${harmful.join(', or ')}. A move spares: harmful hours fewer a day, times the days left, times the share of the crop that each costs, times the worth of the trays. ${from}`;
}

/** What the rule on moving says of trays that stand: to go, to stay and why, or that nobody can say. */
export function traysThereWords(told: {
  readonly name: string;
  readonly trays: number;
  readonly batch: string | null;
  readonly place: string;
  readonly verdict: 'act' | 'leave' | 'unknown' | null;
  readonly because: readonly Evidence[];
  readonly missing: readonly string[];
}): string {
  const { verdict, because, missing } = told;
  const which =
    told.batch === null
      ? `The trays there, ${told.trays} of ${told.name}, as the farm file tells`
      : `${counted(told.trays, 'tray')} of ${told.name}`;
  if (verdict === null) return `${which}.`;
  if (verdict === 'act')
    return `${which}: ${lower(moving(because, told.place))}. ${why('move-trays', because)}`;
  if (verdict === 'unknown') return `${which}. ${why('move-trays', because, missing)}`;
  const short = because.find(
    ({ what, value, limit }) =>
      ['room-there', 'days-to-ready', 'moving-spares'].includes(what) &&
      Number(value) < Number(limit),
  );
  const stays =
    ['mould-seen', 'moved-days-ago', 'open-up-first', 'shade-first', 'not-safe-there']
      .map((term) => because.find(({ what }) => what === term))
      .find((fact) => fact !== undefined) ?? short;
  if (stays !== undefined) return `${which}. They stay. ${sentences[stays.what]?.(stays) ?? ''}`;
  const said = (what: string) => because.find((fact) => fact.what === what);
  const ahead = said('better-hours-a-day');
  const unsure =
    Number(ahead?.value) >= Number(ahead?.limit) && Number(said('better-at-least')?.value) <= 0;
  return unsure
    ? `${which}. They stay: another place looks better, but that may still be chance, and carrying asks for 99 times of 100.`
    : `${which}. They stay: no other place is clearly better.`;
}

const placesComparedScreens = {
  title: (crop: string) => `Where does ${crop} do best`,
  titleNone: 'Where does a crop do best',
  crop: 'Crop',
  days: 'Days',
  lastDays: (days: number) => `the last ${days} days`,
  picture: 'Hours a day of each place, as bars from 0 to 24 hours',
  parts: {
    inBand: 'in the band, leaves dry',
    wetInBand: 'in the band, leaves wet',
    hot: 'too hot',
    cold: 'too cold',
    unknown: 'not known',
  },
  wet: 'thin bar: leaves wet, at any temperature',
  axis: (hours: number) => `${hours}${HARD}h`,
  band: (low: string, high: string) => `The band is ${low} to ${high}.`,
  limit: (limit: string) => `Over ${limit} the crop is hurt.`,
  score:
    'Compared day by day: hours in the band with dry leaves, less one for each that was too hot and half for each wet one. The weights are ours.',
  dash: '–',
  here: (crop: string) => `How ${crop} does here`,
  table: 'The same as a table, hours a day',
  columns: {
    place: 'Place',
    inBand: 'In band',
    hot: 'Too hot',
    cold: 'Too cold',
    wet: 'Wet',
    disease: 'Disease weather',
    unknown: 'Not known',
    days: 'Days',
  },
  gaveTitle: 'What batches gave there',
  gaveNone: 'No finished batch of it yet.',
  gaveColumns: {
    place: 'Place',
    batches: 'Batches',
    get perTray() {
      return `${weightUnit()} a tray`;
    },
    days: 'Days',
    lost: 'Lost',
  },
  pairs: 'Two by two',
  inWords: 'Each place in words',
  saving: 'How a saving is estimated',
  mean: (of: Mean | null, kind: 'kg' | 'days' | 'share') => {
    if (of === null) return '–';
    const say = (value: number) =>
      kind === 'kg'
        ? bareWeight(value, 2)
        : kind === 'days'
          ? number(value, 0)
          : withUnit(100 * value, '%', 0);
    return of.low === null || of.high === null
      ? say(of.mean)
      : `${say(of.mean)} (${say(of.low)} to ${say(of.high)})`;
  },
  bounds: (of: Between | null) =>
    of === null
      ? '–'
      : number(of[0]) === number(of[1])
        ? number(of[0])
        : `${number(of[0])}–${number(of[1])}`,
  standing: 'How the trays do here',
  standingNone: 'No trays stand here, as far as anybody told.',
  compare: 'Compare the places',
  undo: 'It was not moved: take it back',
  undone: 'Taken back; the record keeps both.',
  notUndone: (sentence: string) => `Not taken back: ${sentence}`,
};

// Fixed words of the pages beyond Today.

const placeScreens = {
  title: 'Places',
  none: 'The farm has no places yet.',
  opened: (opened: boolean) => (opened ? 'opened' : 'closed'),
  vents: {
    heading: 'Vents',
    unknown: 'Nobody said how the vents stand.',
    said: (open: boolean, since: string) =>
      `${open ? 'Open' : 'Closed'}, as somebody said ${since}.`,
    usual: (open: boolean) => `${open ? 'Open' : 'Closed'}, as is usual at this hour.`,
    staysOpen: 'It stays open tonight, somebody said.',
    openedNow: 'I opened it',
    closedNow: 'I closed it',
    undo: 'That was a mistake: take it back',
  },
  openedUsual: (opened: boolean) => (opened ? 'usually open now' : 'usually closed now'),
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
    get low() {
      return `Low ${degree()}`;
    },
    get high() {
      return `High ${degree()}`;
    },
    get mean() {
      return `Mean ${degree()}`;
    },
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
    `${day}: ${low} to ${high}${HARD}${degree()}, leaves wet ${wet} h`,
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

// Lots, the record of a cool room, and the page of both.

const lotUses: Record<LotUse, string> = {
  sold: 'Sold',
  used: 'Used here',
  moved: 'Moved away',
  'thrown-out': 'Thrown out',
};
const coolings: Record<Cooling, string> = {
  room: 'in the room itself',
  fan: 'with a fan',
  water: 'in cold water',
  ice: 'with ice',
  none: 'not cooled',
};
const lotClasses: Record<LotClass, string> = {
  whole: 'whole produce',
  cut: 'cut or bagged leaves',
  sprouts: 'sprouts',
};

type Days = { readonly least: number; readonly most: number };
/** `3.6 to 4.4 days`. */
function daysBetween({ least, most }: Days): string {
  if (most === 0) return 'no days';
  if (most < 1) return `${number(least * 24, 0)} to ${number(Math.ceil(most * 24), 0)} hours`;
  const [a, b] = [number(least), number(most)];
  return a === b ? `about ${a} days` : `${a} to ${b} days`;
}

/** Days left of a lot, with unknown time told apart. No word on safety. */
export function lotLifeWords(
  { life, harvestedAt }: Pick<Lot, 'life' | 'harvestedAt'>,
  chillMin: number | null,
): string {
  const { days, asLastKnown, asOutdoors, unknownHours, risk, source } = life;
  if (risk === 'freezing')
    return 'Days left cannot be said: it lay below its freezing point. Look at it.';
  if (risk === 'chilling')
    return `Days left cannot be said: it lay below ${wholeDegrees(chillMin)}, colder than it bears. Look at it.`;
  if (risk === 'heat')
    return `Days left cannot be said: it lay above ${figureDegrees(35)}, where the figures end. Look at it.`;
  if (source === null)
    return 'Days left cannot be said: nobody has told how long this crop keeps. It goes first in, first out.';
  if (days === null)
    return 'Days left cannot be said: nobody knows how warm it has been. It goes first in, first out.';
  const from = harvestedAt === null ? ' Counted from put-away, as nobody told the harvest.' : '';
  if (unknownHours < 0.05 || asLastKnown === null || asOutdoors === null) {
    const gap =
      unknownHours < 0.05
        ? ''
        : ` ${number(unknownHours)}${HARD}h of its time are not known and count as ${asOutdoors === null ? 'warm as last known' : 'warm as outdoors'}.`;
    return `${sentenceCase(daysBetween(days))} left.${gap}${from}`;
  }
  return `${sentenceCase(daysBetween(asLastKnown))} left if the ${number(unknownHours)}${HARD}h not known were as warm as last known; ${daysBetween(asOutdoors)} if as warm as outdoors.${from}`;
}
const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

export const ASK_OFFICER = 'Ask your local food-safety officer before you act on this clock.';
const NOT_A_RECORDER =
  'This is a record, not a verdict on the food. It does not come from a certified recorder (EN\u00a012830).';

const clockSpan = (minutes: number) =>
  minutes < 120 ? `${Math.round(minutes)}${HARD}min` : span(minutes * MINUTE);

/** Time over a limit since harvest. Facts, the officer's own words, and the last line last. */
export function exposureWords(
  exposure: Lot['exposure'],
  told: string | null,
  harvestKnown: boolean,
): string[] {
  const { limit, aboveMinutes, unknownMinutes, worstMinutes, clockHours, of } = exposure;
  const since = harvestKnown ? 'since harvest' : 'since put-away; the harvest was not told';
  return [
    `Over ${temperature(limit)} ${since}: ${clockSpan(aboveMinutes)} above, ${clockSpan(unknownMinutes)} unknown, worst case ${clockSpan(worstMinutes)}. Cooling again does not turn it back.`,
    clockHours === null
      ? 'No clock was agreed for it.'
      : `The agreed clock is ${number(clockHours)}${HARD}h.`,
    ...(of === 'air' ? ['Measured in the air, not in the produce: take a core reading.'] : []),
    ...(told === null ? [] : [told]),
    NOT_A_RECORDER,
    ASK_OFFICER,
  ];
}

/** Said before anything is saved. */
export const chillWarning = (crop: string, chillMin: number, room: string, at: number) =>
  `${crop} is hurt below ${wholeDegrees(chillMin)}; ${inText(room)} has been at ${temperature(at)}`;

type LotEventFacts = {
  readonly event: string;
  readonly kg?: number;
  readonly how?: LotUse;
  readonly to?: string | null;
  readonly by?: string | null;
  readonly note?: string | null;
  /** Fields and what they were corrected to, already worded. */
  readonly set?: readonly string[];
  readonly warning?: string | null;
  /** The lot it was a part of. */
  readonly of?: string;
};
export function lotEventWords(facts: LotEventFacts): string {
  const { event, kg = 0, how, to, by, note, set = [], warning, of } = facts;
  const more = `${by ? ` by ${by}` : ''}${note ? ` (${note})` : ''}`;
  if (event === 'put-away' && of !== undefined)
    return `Began as a part of ${of}, ${kilograms(kg)}, whose past it has${warning ? `; in spite of: ${warning}. Decided${more}` : ''}.`;
  if (event === 'put-away')
    return warning
      ? `Put away, ${kilograms(kg)}, in spite of: ${warning}. Decided${more}.`
      : `Put away, ${kilograms(kg)}.`;
  if (event === 'corrected') return `Corrected${more}: ${listed(set)}.`;
  if (event === 'taken')
    return `${how ? lotUses[how] : ''}: ${kilograms(kg)}${to ? `, to ${to}` : ''}${more}.`;
  if (event === 'carried') return `Carried to ${to ?? ''}${more}.`;
  if (event === 'released') return `May stay, decided${more}.`;
  return 'An entry was taken back.';
}
export const lotFields: Readonly<Record<string, string>> = {
  crop: 'crop',
  kg: 'weight',
  place: 'room',
  from: 'harvested from',
  harvestedAt: 'harvested at',
  storedAt: 'put away at',
  cooled: 'cooled',
  class: 'class',
  get price() {
    return `price per ${weightUnit()}`;
  },
};
/** Fields of a picking. */
export const pickFields = {
  place: 'place',
  crop: 'crop',
  at: 'picked at',
  kg: 'weight',
  lostKg: 'sorted out',
  minutes: 'minutes',
  walkMinutes: 'minutes of walking',
  pickers: 'pickers',
  get price() {
    return `price per ${weightUnit()}`;
  },
  note: 'note',
};
export type PickEventFacts =
  | { readonly event: 'picked'; readonly kg: number }
  | {
      readonly event: 'corrected';
      readonly set: readonly (readonly [
        field: keyof typeof pickFields,
        to: string | number | null,
      ])[];
      readonly why: string | null;
    }
  | { readonly event: 'undone' };
const pickValue = (field: keyof typeof pickFields, to: string | number | null): string | number =>
  to === null
    ? notKnown
    : typeof to !== 'number'
      ? to
      : field === 'kg' || field === 'lostKg'
        ? kilograms(to)
        : field === 'price'
          ? number(perWeight(to), 2)
          : to;
export function pickEventWords(facts: PickEventFacts): string {
  if (facts.event === 'picked') return `Picked, ${kilograms(facts.kg)}.`;
  if (facts.event === 'undone') return 'An entry was taken back.';
  const set = facts.set.map(([field, to]) => `${pickFields[field]} to ${pickValue(field, to)}`);
  return `Corrected${facts.why ? ` (${facts.why})` : ''}: ${listed(set)}.`;
}
/** What a field of a lot was corrected to; names of crops and places come worded. */
export function lotFieldValue(field: string, value: string | number | null, zone: string): string {
  if (value === null) return 'not told';
  if (/At$/.test(field) && typeof value === 'number')
    return `${dateAt(value, zone)}, ${clock(value, zone)}`;
  if (field === 'cooled') return coolings[value as Cooling] ?? String(value);
  if (field === 'class') return lotClasses[value as LotClass] ?? String(value);
  if (typeof value === 'number' && field === 'kg') return kilograms(value);
  if (typeof value === 'number' && field === 'price') return number(perWeight(value), 2);
  return String(value);
}

/** One printed rule, to be talked over with the officer. */
export const printedLimit = (rule: {
  readonly where: string;
  readonly what: string;
  readonly limit: number;
  readonly clock: number | null;
  readonly source: string;
}) =>
  `${sentenceCase(plain(rule.where))}, ${plain(rule.what)}: ${wholeDegrees(rule.limit)}${rule.clock === null ? '' : `, ${number(rule.clock, 0)}${HARD}h`} (${rule.source})`;

type CheckFacts = Pick<CheckedProbe, 'probe' | 'due'> & {
  readonly last: {
    readonly offset: number;
    readonly ageDays: number;
    readonly applied: boolean;
  } | null;
  /** After which it is due. */
  readonly days: number;
};
export function probeCheckWords({ probe: id, due, last, days }: CheckFacts): string {
  if (last === null) return `${id} has never been checked here: check it in melting ice.`;
  const ago = last.ageDays < 1 ? 'today' : age(last.ageDays * DAY);
  const then = `${id} was checked ${ago} and was off by ${signedDifference(last.offset)}${last.applied ? '; corrected since' : ''}.`;
  return due ? `${then} That is over ${days} days: check it again.` : then;
}

export const checkHow = (): string =>
  `Crushed clean ice, water just filling the gaps, stirred, the probe’s tip in the middle, five minutes: that is ${figureDegrees(0)}.`;
const doubts = {
  get 'too-near'() {
    return `The two points are nearer than ${figureApart(15)}: the slope is doubtful.`;
  },
  slope: 'The slope is outside 0.97 to 1.03: doubt the second thermometer first.',
};
/** One check in the list of them; its time is said before it. */
export const checkWords = (check: {
  readonly probe: string;
  readonly offset: number;
  readonly by: string;
  readonly applied: boolean;
  readonly doubts: readonly (keyof typeof doubts)[];
}) =>
  [
    `${check.probe}: off by ${signedDifference(check.offset)}, by ${check.by}${check.applied ? '; corrected from then on' : '; not corrected'}.`,
    ...check.doubts.map((doubt) => doubts[doubt]),
  ].join(' ');
export const clocksWhy =
  'None is set until you enter it. Whole produce is often outside such rules, cut or bagged leaves often inside, sprouts apart: the officer decides.';

/** What has to stand under every record. */
export const recordWords = (limit: number): string[] => [
  `Hours above mean above ${temperature(limit)} in the air of the room. Hours not known are time without a reading: they may have been above, and are never counted as below.`,
  NOT_A_RECORDER,
  'The limit is the farm’s own. Ask your local food-safety officer what your produce needs, before you act on these times.',
];

type RoomDayFacts = {
  readonly low: number | null;
  readonly high: number | null;
  readonly aboveHours: number;
  readonly unknownHours: number;
  readonly limit: number;
  readonly doorOpenings: number | null;
  readonly doorMinutes: number;
  readonly noPowerMinutes: number | null;
  readonly cycles: number | null;
};
/** The last day of a room, for those who don’t see the picture. */
export function roomDayWords(facts: RoomDayFacts): string {
  const { low, high, aboveHours, unknownHours, limit, doorOpenings, cycles } = facts;
  return [
    low === null || high === null
      ? 'No readings in the last 24 hours.'
      : `In the last 24 hours between ${degrees(low)} and ${temperature(high)}.`,
    aboveHours > 0
      ? `Above ${temperature(limit)} for ${span(aboveHours * HOUR)}: ask your local food-safety officer what that means for your produce.`
      : low === null
        ? ''
        : `No reading above ${temperature(limit)}.`,
    unknownHours >= 1 / 60 ? `${span(unknownHours * HOUR)} without readings: not known.` : '',
    cycles === null ? '' : `The cooling ran ${counted(cycles, 'time')}.`,
    facts.noPowerMinutes === null || facts.noPowerMinutes < 1
      ? ''
      : `Without power for ${span(facts.noPowerMinutes * MINUTE)}.`,
    doorOpenings === null
      ? ''
      : doorOpenings === 0
        ? 'The door stayed shut.'
        : `The door was opened ${counted(doorOpenings, 'time')}, ${span(facts.doorMinutes * MINUTE)} in all.`,
  ]
    .filter(Boolean)
    .join(' ');
}

/** Now against the set temperature. */
export function roomNowWords(
  temperatureNow: number | null,
  setPoint: number,
  limit: number,
): string {
  if (temperatureNow === null) return 'No fresh reading of how warm it is.';
  const apart = temperatureNow - setPoint;
  const against =
    Math.abs(apart) < 0.05
      ? 'at the set temperature'
      : `${difference(Math.abs(apart))} ${apart > 0 ? 'above' : 'below'} the set temperature of ${degrees(setPoint)}`;
  const room = limit - temperatureNow;
  return `${temperature(temperatureNow)}, ${against}, ${difference(Math.abs(room))} ${room >= 0 ? 'under' : 'over'} the limit of ${degrees(limit)}.`;
}

const lotScreens = {
  title: 'Lots',
  inOrder: 'Sell in this order',
  none: 'No lots are stored here.',
  name: (kg: number, crop: string) => `${kilograms(kg)} ${crop}`,
  of: (left: number, whole: number) => `${kilograms(left)} left of ${kilograms(whole)}`,
  since: (time: string) => `put away ${time}`,
  harvested: (time: string, from: string | null) =>
    `harvested ${time}${from === null ? '' : ` in ${from}`}`,
  harvestedFrom: (from: string) => `harvested in ${from}`,
  cooledHow: (how: Cooling) => `cooled ${coolings[how]}`,
  slack: (slack: number | null) =>
    slack === null
      ? ''
      : slack < 0
        ? 'May not last until the next delivery: decide today.'
        : `${number(slack)} days to spare at the next delivery.`,
  releasedBy: (by: string) => `${by} said that it may stay.`,
  overrideBy: (by: string) => `Put away in spite of the warning, by ${by}.`,
  clock: 'Time over the limit',
  enter: 'Put away',
  quickTitle: 'Put produce away',
  same: (kg: number, crop: string) => `Same as last time: ${kilograms(kg)} ${crop}`,
  which: 'Crop',
  otherCrop: 'Other crop',
  get weight() {
    return `Weight in ${weightUnit()}`;
  },
  lastWeights: 'Weights of last time',
  room: 'Cool room',
  more: 'More about it',
  from: 'Harvested from',
  fromNone: 'Not told',
  wait: 'Harvested',
  waits: {
    none: 'Not told',
    0: 'Just now',
    60: '1 hour ago',
    120: '2 hours ago',
    240: '4 hours ago',
    480: '8 hours ago',
  },
  lastWait: (minutes: number) => `As last time, ${span(minutes * MINUTE)} ago`,
  firstRoom: 'Room it was put into',
  get price() {
    return `Price per ${weightUnit()}`;
  },
  moveTo: 'Into which room',
  elsewhere: 'Somewhere else',
  partOf: (id: string) => `a part of ${id}`,
  cooling: 'Cooled',
  coolingNone: 'Not told',
  class: 'Food rules see it as',
  classDefault: 'As the crop usually is',
  sending: 'Sending…',
  stored: (kg: number, crop: string, room: string) =>
    `The hub has stored: ${kilograms(kg)} ${crop}, ${room}.`,
  undo: 'Undo',
  undone: 'Taken back; its history keeps both.',
  failed: (sentence: string) => `Not stored: ${sentence}`,
  warned: 'Warning',
  anyway: 'Put it there anyway',
  yourName: 'Your name',
  nameWhy: 'A decision needs a name.',
  use: 'Take from it',
  uses: lotUses,
  get howMuch() {
    return `How much, in ${weightUnit()}`;
  },
  to: 'Where to',
  take: 'Store it',
  taken: (use: LotUse, kg: number, crop: string) =>
    `The hub has stored: ${lotUses[use].toLowerCase()}, ${kilograms(kg)} ${crop}.`,
  mayStay: 'It may stay',
  mayStaySaid: (crop: string) => `The hub has stored: ${crop} may stay.`,
  correct: 'Correct it',
  corrected: 'The hub has stored the correction; its history keeps both.',
  history: 'History',
  historyLine: (time: string, who: string, what: string) => `${time}, ${who}: ${what}`,
  takenBack: 'taken back',
  takeBack: 'Take back',
  takeBackWhich: (what: string) => `Take back: ${what}`,
  back: 'Back',
  coolings,
  classes: lotClasses,
};

// Batches of trays, and the page about them.

const batchLooks: Record<BatchLook, string> = {
  well: 'Looks well',
  ready: 'Ready to cut',
  mould: 'Mould',
  leggy: 'Leggy',
  wilted: 'Wilted',
  scorched: 'Scorched',
  'cold-hurt': 'Hurt by cold',
  eaten: 'Eaten by pests',
  uneven: 'Came up uneven',
  other: 'Something else',
};
const cutStages: Record<CutStage, string> = { young: 'young leaves', later: 'the later cut' };
const batchWorks: Record<BatchWork, string> = {
  sowing: 'Sowing',
  tending: 'Watering and tending',
  moving: 'Moving',
  cutting: 'Cutting',
  packing: 'Packing',
};
const trayCount = (n: number) => `${n}${HARD}${n === 1 ? 'tray' : 'trays'}`;

/** Said before anything is saved. */
export const roomWarning = (place: string, would: number, capacity: number) =>
  `${place} would hold ${trayCount(would)}, and has room for ${capacity}`;

/** How a batch is, in one sentence. */
export function batchWords(told: {
  readonly state: 'growing' | 'ended' | 'withdrawn';
  readonly trays: number;
  readonly traysLeft: number;
  readonly kg: number;
  readonly look: BatchLook | null;
  /** ms since that was seen. */
  readonly seenAgo: number | null;
}): string {
  const { state, trays, traysLeft, kg, look, seenAgo } = told;
  if (state === 'withdrawn') return 'Taken back: it was not sown.';
  const cut = kg > 0 ? `, ${kilograms(rounded3(kg))} cut` : '';
  if (state === 'ended') return `Ended${cut === '' ? ', nothing cut' : cut}.`;
  const left = traysLeft < trays ? `${traysLeft} of ${trayCount(trays)} left` : 'All trays growing';
  const seen =
    look === null || seenAgo === null
      ? ''
      : ` Last seen: ${lower(batchLooks[look])}, ${age(seenAgo)}.`;
  return `${left}${cut}.${seen}`;
}
const rounded3 = (kg: number) => Number(kg.toFixed(3));

type BatchEventFacts = {
  readonly event: string;
  readonly zone: string;
  /** When it happened, ms since 1970; null where the entry has no time of its own. */
  readonly at: number | null;
  readonly trays?: number;
  readonly kg?: number;
  readonly stage?: CutStage;
  readonly clears?: boolean;
  readonly minutes?: number | null;
  readonly price?: number | null;
  readonly lostKg?: number | null;
  readonly look?: BatchLook;
  readonly work?: BatchWork;
  readonly photo?: string | null;
  readonly note?: string | null;
  /** Place by its name. */
  readonly to?: string;
  /** The batch it was carried off from. */
  readonly from?: string | null;
  readonly into?: string;
  readonly set?: readonly string[];
  readonly warning?: string | undefined;
  readonly by?: string | undefined;
};

/** One entry of a batch's history, with when it happened. */
export function batchEventWords(facts: BatchEventFacts): string {
  const { event, at, zone, trays = 0, kg = 0, minutes, note, look, to = '', warning, by } = facts;
  const when = at === null ? '' : ` (${eventTime(at, zone)})`;
  const took = minutes ? `, ${number(minutes, 0)}${HARD}min` : '';
  const more = `${note ? `: ${note}` : ''}${warning ? `, in spite of: ${warning}; decided by ${by ?? ''}` : ''}`;
  if (event === 'sown')
    return facts.from
      ? `${trayCount(trays)} of ${facts.from} carried to ${to}${when}${more}.`
      : `Sown in ${trayCount(trays)}, ${to}${when}${more}.`;
  if (event === 'moved') return `Moved to ${to}${took}${when}${more}.`;
  if (event === 'parted') return `${trayCount(trays)} go on as ${facts.into ?? ''}${when}.`;
  if (event === 'cut') {
    const price =
      facts.price === undefined || facts.price === null
        ? ''
        : `, at ${number(perWeight(facts.price), 2)} a ${weightUnit()}`;
    const lost = facts.lostKg ? `, ${kilograms(facts.lostKg)} of it not sold` : '';
    const again = facts.clears === false ? ', it grows again' : '';
    return `Cut ${kilograms(rounded3(kg))} from ${trayCount(trays)}, ${cutStages[facts.stage ?? 'later']}${again}${took}${price}${lost}${when}${more}.`;
  }
  if (event === 'thrown-out')
    return `Thrown out ${trayCount(trays)}: ${look ? lower(batchLooks[look]) : ''}${when}${more}.`;
  if (event === 'noted')
    return `Seen: ${look ? lower(batchLooks[look]) : ''}${facts.photo ? ', with a photo' : ''}${when}${more}.`;
  if (event === 'worked') return `${facts.work ? batchWorks[facts.work] : ''}${took}${when}.`;
  if (event === 'cleared') return `Cleared, with no cut${when}${more}.`;
  if (event === 'corrected')
    return `Corrected: ${listed(facts.set ?? [])}${note ? ` (${note})` : ''}.`;
  return 'An entry was taken back.';
}
export const batchFields: Readonly<Record<string, string>> = {
  crop: 'crop',
  variety: 'variety',
  trays: 'trays',
  sownAt: 'sown at',
  place: 'sown in',
  seedCost: 'cost of seed',
  otherCost: 'other costs',
  meantFor: 'meant for',
};

const several = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
const batchScreens = {
  title: 'Batches',
  none: 'Nothing grows in trays now, as far as the hub knows.',
  here: 'What stands here',
  hereNone: 'No batch stands here now.',
  toBatches: 'All batches',
  standing: (name: string, trays: number) => `${trayCount(trays)} ${name}`,
  name: (trays: number, crop: string, variety: string | null) =>
    `${trayCount(trays)} ${crop}${variety === null ? '' : ` (${variety})`}`,
  trays: trayCount,
  sown: (days: number, time: string) =>
    days < 1
      ? `sown today (${time})`
      : `sown ${several(Math.floor(days), 'day', 'days')} ago (${time})`,
  grew: (days: number, time: string) =>
    `sown ${time}, ended after ${several(Math.floor(days), 'day', 'days')}`,
  meantFor: (day: string) => `meant for ${day}`,
  quoted: (note: string) => `“${note}”`,
  partOf: (id: string) => `part of ${id}`,
  room: (name: string, standing: number, capacity: number | null) =>
    capacity === null
      ? `${name}: ${trayCount(standing)}`
      : `${name}: ${standing} of ${trayCount(capacity)}`,
  freeRoom: (room: number | null) =>
    room === null ? '' : room === 0 ? 'full' : `room for ${room}`,
  strip: (parts: readonly string[]) => `Where it stood: ${parts.join(', then ')}`,
  stripStay: (name: string, days: number) =>
    days < 1 ? `${name}, under a day` : `${name}, ${several(Math.round(days), 'day', 'days')}`,
  now: 'now',
  looks: batchLooks,
  stages: { young: 'Young leaves', later: 'The later cut' } satisfies Record<CutStage, string>,
  works: batchWorks,
  sow: 'Sow',
  sowTitle: 'Sow a batch',
  sowThis: 'Sow it',
  asLastWeek: 'As last week',
  asLastWeekNone: 'Nothing was sown on this day of last week.',
  again: (trays: number, crop: string, variety: string | null, place: string) =>
    `${trayCount(trays)} ${crop}${variety === null ? '' : ` (${variety})`}, ${place}`,
  againAll: (n: number) => `Sow all ${n} as last week`,
  againDone: 'done',
  crop: 'Crop',
  otherCrop: 'Other crop',
  place: 'Place',
  howMany: 'Trays',
  fewer: 'One tray fewer',
  moreTrays: 'One tray more',
  more: 'More about it',
  variety: 'Variety, if it matters',
  sownAt: 'Sown at',
  seedCost: (currency: string) => `Seed for all of it, in ${currency}`,
  otherCost: (currency: string) => `Trays, soil and packing for all of it, in ${currency}`,
  meant: 'Meant for the delivery on',
  minutes: 'Minutes it took, if known',
  move: 'Move',
  moveTo: (name: string) => `Move to ${name}`,
  some: 'Only some of the trays',
  someHow: (n: number) => `How many of the ${n} trays`,
  moved: (what: string, place: string) => `The hub has stored: ${what} moved to ${place}.`,
  cut: 'Cut',
  get kg() {
    return `Weight in ${weightUnit()}`;
  },
  lastWeights: 'As the last cuts',
  stage: 'Which cut',
  clears: 'These trays are done with',
  price: (currency: string) => `Price a ${weightUnit()}, if another, in ${currency}`,
  get lost() {
    return `Of it not sold, in ${weightUnit()}`;
  },
  nothingLost: 'Nothing of it was lost',
  cutStored: (kg: number, crop: string) => `The hub has stored: ${kilograms(kg)} ${crop} cut.`,
  note: 'Note',
  noteTitle: 'What do you see?',
  noteMore: 'A word about it, if you like',
  noted: (look: BatchLook) => `The hub has stored: ${lower(batchLooks[look])}.`,
  throwOut: 'Throw out',
  why: 'Why',
  thrownOut: (trays: number, crop: string) =>
    `The hub has stored: ${trayCount(trays)} ${crop} thrown out.`,
  moreOn: 'More',
  work: 'Minutes of work',
  workKind: 'Which work',
  workMinutes: 'Minutes',
  worked: (minutes: number) => `The hub has stored: ${number(minutes, 0)}${HARD}min of work.`,
  clear: 'Clear it with no cut',
  cleared: (crop: string) => `The hub has stored: ${crop} cleared.`,
  correct: 'Correct it',
  corrected: 'The hub has stored the correction; its history keeps both.',
  history: 'History',
  historyLine: (time: string, who: string, what: string) => `${what} Entered ${time} by ${who}.`,
  takenBack: 'taken back',
  store: 'Store it',
  sending: 'Sending…',
  stored: (what: string) => `The hub has stored: ${what}.`,
  sownStored: (what: string) => `The hub has stored: ${what} sown.`,
  undo: 'Undo',
  undone: 'Taken back; its history keeps both.',
  failed: (sentence: string) => `Not stored: ${sentence}`,
  warned: 'Warning',
  anyway: 'Do it anyway',
  nameWhy: 'A decision needs a name.',
  back: 'Back',
  elsewhere: 'Elsewhere',
  ended: 'Batches that have ended',
  endedNone: 'None has ended in the last 90 days.',
  growing: 'What grows now',
  cutLine: (kg: number, trays: number, perTray: number) =>
    `${kilograms(rounded3(kg))} from ${trayCount(trays)}, ${withUnit(perTray, 'kg', 2)} a tray`,
  file: 'Batches as a file',
  fileWhy:
    'A table (CSV) with one row for each thing that was done, or a simple one with the columns crop, trays, sown, place, and cut, kg, minutes if known.',
  fileOut: 'All batches as a file (CSV)',
  fileIn: 'Take in a file (CSV)',
  fileNothing: 'The file has nothing new for the hub.',
  fileWould: (batches: number, entries: number) =>
    `It would enter ${several(entries, 'entry', 'entries')} for ${several(batches, 'batch', 'batches')}.`,
  fileKnown: (n: number) => `${several(n, 'row is', 'rows are')} in the hub already.`,
  fileRefused: (n: number) => `${several(n, 'row', 'rows')} cannot be entered:`,
  fileLine: (line: number, reason: string) => `line ${line}: ${reason}`,
  fileIgnored: (columns: string) => `These columns say nothing to the hub: ${columns}.`,
  fileEnter: 'Enter it',
  fileEntered: (batches: number, entries: number) =>
    `The hub has stored ${several(entries, 'entry', 'entries')} for ${several(batches, 'batch', 'batches')}.`,
  fileBatch: (what: string, sown: string, place: string, entries: number, fresh: boolean) =>
    `${what}, sown ${sown}, ${place}: ${fresh ? 'new, ' : 'known, '}${several(entries, 'entry', 'entries')}`,
  fileMore: (n: number) => `and ${n} more`,
  fileTooLong: 'Expected a file of at most 2 MB, got a longer one',
};

const recordScreens = {
  title: 'Temperature record',
  week: 'The record of this week',
  print: 'The record to print',
  csv: 'As a file (CSV)',
  printNow: 'Print',
  heading: (room: string) => `Temperature record: ${room}`,
  range: (from: string, to: string) => `${from} to ${to}`,
  from: 'From',
  to: 'To',
  show: 'Show',
  columns: {
    day: 'Day',
    above: 'Above limit h',
    below: 'At or below h',
    unknown: 'Not known h',
    get highest() {
      return `Highest ${degree()}`;
    },
    get lowest() {
      return `Lowest ${degree()}`;
    },
    get mean() {
      return `Mean kinetic ${degree()}`;
    },
    known: 'Known',
  },
  gaps: 'Times without readings',
  noGaps: 'None in these days.',
  gap: (day: string, from: string, to: string, long: number) =>
    `${day}, ${from} to ${to} (${span(long)})`,
  moreGaps: (n: number) => `and ${n} more in the file`,
  actions: 'What was done',
  noActions: 'Nothing was entered for these days.',
  action: (saw: string, did: string) => `Seen: ${saw} Done: ${did}`,
  core: (value: number) => `Core reading ${temperature(value)}.`,
  correctedLater: 'corrected later',
  correctsEarlier: 'corrects another',
  enterAction: 'Enter what was done',
  saw: 'What was seen',
  did: 'What was done',
  by: 'By whom',
  get coreReading() {
    return `Core reading in ${degree()}, if taken`;
  },
  store: 'Store it',
  storedAction: 'The hub has stored what was done.',
  checks: 'Probe checks',
  check: (id: string) => `Check ${id}`,
  get reading() {
    return `It reads, in ${degree()}`;
  },
  readingNow: (value: number | null) =>
    value === null ? 'No fresh reading of it.' : `The hub reads ${temperature(value)} now.`,
  get second() {
    return `A second point, ${figureApart(15)} or more away`;
  },
  get secondReading() {
    return `It reads there, in ${degree()}`;
  },
  get secondTrue() {
    return `True there, in ${degree()}`;
  },
  apply: 'Correct what it sends from now on; what is stored stays.',
  storedCheck: 'The hub has stored the check.',
  none: 'No probe measures temperature in this room.',
  clocks: 'Limits and clocks, as agreed',
  printed: 'What some countries print',
  clockOf: (name: string, limit: number | null, hours: number | null) =>
    `${sentenceCase(name)}: ${limit === null ? 'the room’s own limit' : `limit ${temperature(limit)}`}, ${hours === null ? 'no clock' : `clock ${number(hours)}${HARD}h`}`,
  clockSet: (by: string, time: string) => `entered by ${by}, ${time}`,
  change: 'Change',
  get limit() {
    return `Limit in ${degree()}, or the room’s own`;
  },
  hours: 'Clock in hours over it, or none',
  words: 'Words to show with it, or none',
};

// How sure the cause of a cool room's trouble is, and how long it holds: times come as words.

type Sure = NonNullable<CoolRoom['sure']>;
const sureWords: Record<Sure, string> = {
  sure: 'That is sure: a probe here sees it.',
  likely: 'That is likely, not sure.',
  'cannot-tell': '',
};
const contentsWords: Record<NonNullable<CoolRoom['holdOver']['contents']>, string> = {
  empty: 'nearly empty',
  half: 'half full',
  full: 'full',
};

/** "the air is at 5 °C between 03:10 and 04:00"; one time where both are the same minute. */
const betweenTimes = (from: string, to: string | null) =>
  to === null ? `after ${from}` : from === to ? `at about ${from}` : `between ${from} and ${to}`;

/** What the range of the hold-over rests on. */
function holdLearned({
  learnedFrom,
  sameContents,
  contents,
  kilograms: inside,
  tauHours,
}: CoolRoom['holdOver']) {
  const lies =
    contents === null
      ? 'Nobody has told what lies in it.'
      : `By its lots it is ${contentsWords[contents]} now (${inside === null ? notKnown : kilograms(inside)}; of the most in four weeks).`;
  const fast = `It makes up 63${HARD}% of the way to outside in about ${number(tauHours)}${HARD}h.`;
  if (learnedFrom === 0)
    return `Nothing is learned of this room yet: ${number(tauHours)}${HARD}h is a guess of ours. It learns from stops of half an hour and more with the door shut. ${lies}`;
  const stops = counted(learnedFrom, 'stop');
  if (contents === null) return `${fast} Learned from ${stops}. ${lies}`;
  return sameContents > 0
    ? `${fast} Learned from ${stops} with about as much in it. ${lies}`
    : `${fast} Learned from ${stops} with more or less in it than now; of a room this full nothing is learned yet. ${lies}`;
}

/** The room's own cycle, or that it is not learned. */
function cycleLine(habits: CoolRoom['habits'], defrostTimes: readonly string[]): string {
  if (!habits.learned)
    return `Its cycle is not learned yet: that takes two whole days of readings of its air every few minutes (${habits.days} so far).`;
  const { bottom, top, minutes, runningShare, defrosts, days } = habits;
  const round = minutes === null ? '' : `, once in about ${span(minutes * MINUTE)}`;
  const runs =
    runningShare === null
      ? ''
      : ` The cooling runs ${number(runningShare * 100, 0)}${HARD}% of the time.`;
  const thaws =
    defrosts === null
      ? ' No defrost by a timer is seen.'
      : ` Defrosts at about ${listed(defrostTimes)}; the air rises for about ${number(defrosts.minutes, 0)}${HARD}min.`;
  return `Usually from ${degrees(bottom)} to ${temperature(top)}${round}.${runs}${thaws} Learned from ${counted(days, 'day')}.`;
}

/** Whether the room needs more than its weather explains. */
function trendLine({ trend, energyDays }: Pick<CoolRoom, 'trend' | 'energyDays'>, since: string) {
  const days = energyDays.filter((day) => day.kilowattHours !== null && day.gap !== null).length;
  if (trend.line === null || trend.above === null)
    return `Whether it needs more than its weather explains is not known yet: that takes more than two weeks of days with a meter and a probe outside (${days} so far).`;
  const much = `${number(Math.abs(trend.above))}${HARD}kWh a day${trend.share === null ? '' : ` (${number(Math.abs(trend.share) * 100, 0)}${HARD}%)`}`;
  if (trend.signal === 'more')
    return `It needs ${much} more than its weather explains${since === '' ? '' : `, since ${since}`}. Look for ice on the coil, a worn door seal, a dirty condenser, or a door used more.`;
  if (trend.signal === 'less')
    return `It needs ${much} less than its weather explains${since === '' ? '' : `, since ${since}`}: less in it, a door used less, or a meter that does not count all.`;
  return 'It needs as much as its weather explains.';
}

const solarLines: Readonly<Record<string, readonly [name: string, from: string]>> = {
  get 'energy-per-kelvin'() {
    return [
      `Energy a day for each ${degree()} that outside is warmer than inside`,
      'least squares through the measured days',
    ] as const;
  },
  'energy-without-weather': [
    'Energy a day that does not hang on the weather: doors, produce, fans, defrosts',
    'least squares through the measured days',
  ],
  'outside-less-inside': [
    'Outside warmer than inside, by the most of the measured days',
    'measured here; stands for the worst month until you put in a hotter one',
  ],
  'energy-a-day': [
    'Energy a day to be made',
    'by the three lines above; without them the mean of the measured days',
  ],
  'sun-hours': [
    'Hours of full sun a day in the worst month of use',
    'common practice, no source: look up your own',
  ],
  'system-factor': [
    'Share of the rated power that arrives',
    'common practice, no source: heat, dirt, wiring, charger',
  ],
  panels: ['Panels', 'energy ÷ (sun hours × share that arrives)'],
  'days-without-sun': ['Days to bridge without sun', 'common practice, no source'],
  'depth-of-discharge': [
    'Share of the battery that may be used',
    'common practice, no source: the maker tells',
  ],
  'battery-efficiency': ['Share that comes out of what goes in', 'common practice, no source'],
  battery: ['Battery', 'energy × days ÷ (share used × share that comes out)'],
};

const roomScreens = {
  title: 'Cool room',
  none: 'The farm file has no cool room.',
  unknown: 'No such cool room on this farm.',
  rooms: 'Cool rooms',
  now: roomNowWords,
  /** Since when what is wrong is wrong. */
  wrongSince: (time: string, long: number) => `Something is wrong since ${time} (${span(long)}).`,
  cause: (among: readonly string[], sure: Sure | null) =>
    `${among.length === 0 ? 'The cause is not clear.' : mayBe(among)} ${sure === null ? '' : sureWords[sure]}`.trim(),
  wellSince: 'Nothing is wrong, as far as its probes see.',
  defrosting: 'It defrosts now, as it usually does at this time. That is no fault.',
  pullDown: (since: string, peak: number, back: string | null) =>
    `It is being cooled down after warm produce, an open door or a stop: ${temperature(peak)} at the most, since ${since}. ${back === null ? 'When it is back in its cycle cannot be said yet.' : `Expected back in its cycle at about ${back}.`} That is no fault.`,
  above: (hours: number, limit: number) =>
    hours <= 0
      ? ''
      : `Above ${temperature(limit)} for ${span(hours * HOUR)} of the last 24 hours: ask your local food-safety officer what that means for your produce.`,
  why: 'What the probes say to that',
  held: (limit: string) => `usual limit here ${limit}`,
  source: (source: string) => `Source: ${source}`,
  holdOver: 'With the cooling off',
  hold: (minutes: number | null, limit: number) =>
    minutes === null
      ? 'How long it would stay cold with the cooling off is not known, or it would never get too warm.'
      : minutes <= 0
        ? `The air is over ${temperature(limit)} already.`
        : `About ${span(minutes * MINUTE)} until ${temperature(limit)}.`,
  /** Clock times between which the air, and the middle of a crate, reach the limit. */
  holdAir: (limit: number, from: string, to: string | null) =>
    `With the cooling off from now: air at ${temperature(limit)} ${betweenTimes(from, to)}`,
  holdCrates: (from: string, to: string | null) => `crates ${betweenTimes(from, to)}`,
  cratesThere: (limit: number) => `The middle of a crate is at ${temperature(limit)} already.`,
  holdSpan: (least: number, most: number | null) =>
    `The air takes ${span(least * MINUTE)}${most === null ? ' or longer' : ` to ${span(most * MINUTE)}`}; go by the short end.`,
  holdPicture: 'From now on with the cooling off',
  rows: { air: 'air', crates: 'crates' },
  holdKey: (limit: number) =>
    `Filled: below ${temperature(limit)}. Outlined: reaches it somewhere in here.`,
  holdLearned,
  cycleTitle: 'Its cycle',
  cycleLine,
  generator: 'The generator',
  mustRun: (at: string, minutes: number | null, litres: number | null) =>
    `If it stands from now on it must run by ${at}${minutes === null ? '' : `, for about ${span(minutes * MINUTE)}`}${litres === null ? '' : `, about ${number(litres)}${HARD}l`}.`,
  mustRunNow: (minutes: number | null, litres: number | null) =>
    `It has to run now${minutes === null ? '' : `, for about ${span(minutes * MINUTE)}`}${litres === null ? '' : `, about ${number(litres)}${HARD}l`}.`,
  needNotRun:
    'Outside is not warm enough to bring the room to its limit, or how warm it is outside is not known: no run is planned.',
  thenHolds: (minutes: number) =>
    `From the bottom of its cycle it then holds about ${span(minutes * MINUTE)} by itself.`,
  runCosts: (kg: number | null, money: string | null) =>
    [kg === null ? '' : `${withUnit(kg, 'kg')} of CO₂`, money === null ? '' : `about ${money}`]
      .filter(Boolean)
      .join(', '),
  runCostsLine: (costs: string) => `That run: ${costs}.`,
  burnsNotTold: 'What the set burns is not told in the farm file (power: litresPerHour).',
  plannedOn: (until: string | null) =>
    `By its hours it is on now${until === null ? '' : ` until ${until}`}.`,
  plannedOff: (until: string | null) =>
    `By its hours it stands now${until === null ? '' : ` until ${until}`}; that is no fault.`,
  usualHours: (hours: readonly string[], days: number) =>
    `Learned from the meter: it usually runs ${listed(hours.map((one) => one.split('-').map(wallTime).join(' to ')))} (${days} of the last 14 days). The farm file tells no hours; when it does, they count.`,
  fumes:
    'Outdoors only, at least 6\u00a0m from any door, window or vent, exhaust pointing away: the fumes kill and the worst of them has no smell. Stop it and let it cool before refuelling.',
  wiring:
    'Changeover switch, earthing and fixed wiring are for a licensed electrician, by local code; never feed back through a socket.',
  day: 'The last day',
  dayKey: 'Line: air; thin line: a crate. A break is time without readings.',
  lines: { set: 'set', limit: 'limit' },
  lanes: {
    door: 'door open',
    running: 'cooling runs',
    noPower: 'no power',
    defrost: 'usual defrosts',
  },
  dayWords: 'The last day in figures',
  columns: {
    hour: 'Hour',
    get low() {
      return `Lowest ${degree()}`;
    },
    get high() {
      return `Highest ${degree()}`;
    },
  },
  energy: 'Energy',
  energyNone: 'Not known: no meter is fitted.',
  perDay: (kWh: number | null) =>
    kWh === null
      ? 'Energy of the last day is not known.'
      : `${number(kWh)}${HARD}kWh in the last 24 hours.`,
  duty: (share: number | null) =>
    share === null ? '' : `The cooling ran ${number(share * 100, 0)}${HARD}% of the time.`,
  fuel: ({ hours, litres, fuel }: NonNullable<CoolRoom['fuel']>, money: string | null) =>
    `The set ran ${span(hours * HOUR)} of the last 24 hours: about ${number(litres)}${HARD}l of ${fuel}${money === null ? '' : `, ${money}`}.`,
  carbon: (kg: number) => `Burning it makes about ${withUnit(kg, 'kg')} of CO₂.`,
  fuelFrom: ({ litresPerHour, fuel, money }: NonNullable<CoolRoom['fuel']>) =>
    `${number(litresPerHour, 2)}${HARD}l an hour${money === null ? '' : ' and the price'}: told in the farm file; hours: the room’s own meter. CO₂: ${fuel === 'petrol' ? '2.348' : '2.689'}${HARD}kg a litre of ${fuel} (US EPA, greenhouse gas equivalencies), burning only; a blend needs a local factor.`,
  fuelUnlikely: (perKwh: number) =>
    `${number(perKwh)}${HARD}l for a kWh is beyond what sets burn (0.25 to 1.2): it feeds more than this room, or an entry is wrong.`,
  trendLine,
  energyPicture: 'Energy of each day, and what its weather explains',
  energyKey:
    'Bars: kWh measured. Line: what the first two weeks’ days say of such weather. A day without a bar is not known.',
  energyTable: 'Energy by day in figures',
  energyColumns: {
    day: 'Day',
    energy: 'kWh',
    get gap() {
      return `Outside warmer by ${degree()}`;
    },
    duty: 'Runs %',
    get index() {
      return `kWh for each ${degree()}`;
    },
    usual: 'Its weather explains, kWh',
  },
  energyLine: (slope: number, low: number, high: number, rest: number) =>
    `Each ${degree()} that outside is warmer takes ${number(perDegree(slope), 2)}${HARD}kWh a day (${number(perDegree(low), 2)} to ${number(perDegree(high), 2)} in 95 of 100 such fits), and ${number(rest)}${HARD}kWh come in any weather. By least squares; a day with less than ${figureApart(3)} between has no kWh for each ${degree()}.`,
  kilowattHours: (value: number) => `${number(value, 0)}`,
  solar: 'Solar and battery on paper',
  solarNone: 'Not known yet: it needs three whole days with a meter.',
  solarShort: (kWh: number, panels: number, battery: number) =>
    `${number(kWh)}${HARD}kWh a day: about ${number(panels)}${HARD}kW of panels and ${number(battery)}${HARD}kWh of battery.`,
  solarOpen: 'The sheet, line by line, to print',
  solarOwn: 'Your own numbers',
  solarWork: 'Work it out',
  solarAsked: {
    get gap() {
      return `Outside warmer than inside in the worst month, in ${degree()}`;
    },
    sunHours: 'Hours of full sun a day in the worst month',
    systemFactor: 'Share of the rated power that arrives, 0.1 to 1',
    days: 'Days to bridge without sun',
    depth: 'Share of the battery that may be used, 0.1 to 1',
    efficiency: 'Share that comes out of what goes in, 0.1 to 1',
  },
  solarSheet: (room: string) => `Solar and battery, worked on paper: ${room}`,
  solarLine: (what: string) => solarLines[what]?.[0] ?? plain(what),
  solarFrom: (what: string, own: readonly string[] = []) =>
    own.includes(solarTellers[what] ?? '') ? 'your own number' : (solarLines[what]?.[1] ?? ''),
  solarCautions: [
    'These are figures to talk over, no plan to build by. A licensed person sizes, wires, fuses and earths panels, battery and inverter, by local code.',
    'A compressor starts with three to six times its running current (common practice): that sets the inverter, and the generator kept beside it.',
    'Batteries burn and give off gas: where they stand, how they are aired and what charges them is for the licensed person and the maker’s instructions. Keep the generator until a winter has shown what the panels bring.',
  ],
  solarValue: (value: number, unit: string) =>
    unit === 'd'
      ? `${number(value, 0)} days`
      : unit === 'K'
        ? difference(value, 2)
        : unit === 'kWh/K'
          ? `${number(perDegree(value), 2)}${HARD}kWh/${degree()}`
          : withUnit(value, unit, unit === 'h' ? 0 : 2),
  solarMeasured: (days: number, from: string, to: string) =>
    `Measured here on ${counted(days, 'day')}, ${from} to ${to}.`,
  toRoom: 'Cool room',
  checkDue: 'Probe checks',
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
  haveCode: 'I have a code',
  havePassword: 'I have a password',
  joinTitle: 'Join with a code',
  joinWhy:
    'A grower has made a code for you. With it you set your name and your password. If it is for a new password, give your name as it stands.',
  join: 'Join',
};

// What a change of the farm's description is, in words.

export type FarmPart = 'farm' | 'place' | 'crop' | 'mix' | 'delivery' | 'probe' | 'mapping';

const farmParts: Record<FarmPart, string> = {
  farm: 'Farm',
  place: 'Place',
  crop: 'Crop',
  mix: 'Mix',
  delivery: 'Delivery day',
  probe: 'Probe',
  mapping: 'Message form',
};

/** Each field of a description, by the part it belongs to. */
export const farmFieldNames: Readonly<Record<FarmPart, Readonly<Record<string, string>>>> = {
  farm: {
    name: 'name',
    zone: 'time zone',
    lat: 'degrees north',
    lon: 'degrees east',
    altitude: 'metres above the sea',
    money: 'money',
    wage: 'wage per hour',
    language: 'language',
    units: 'units',
    'units.temperature': 'temperatures in',
    'units.weight': 'weights in',
    'units.clock': 'hours of the clock',
    'units.weekStart': 'first day of the week',
  },
  place: {
    id: 'short name',
    name: 'name',
    kind: 'kind',
    vents: 'vents',
    airing: 'usual airing',
    'airing.opens': 'usually opened at',
    'airing.shuts': 'usually closed at',
    capacity: 'room for trays',
    crop: 'crop',
    trays: 'trays standing there',
    covers: 'covers',
    cover: 'covering',
    'cover.minutes': 'minutes to cover and uncover',
    'cover.value': 'value under the cover',
    'cover.damage': 'temperature at which damage begins',
    'cover.effect': 'share of the damage a cover keeps off',
    stage: 'stage of the crop',
    picking: 'picking',
    'picking.from': 'first day of picking',
    'picking.to': 'last day of picking',
    'picking.minutes': 'minutes to pick',
    'picking.value': 'value of what hangs ripe',
    wet: 'limits of wet leaves',
    water: 'when to water',
    'water.below': 'water below, % of soil moisture',
    'water.minutes': 'minutes of watering',
    'wet.at': 'humidity from which leaves count as wet',
    'wet.below': 'humidity below which leaves count as dry',
    'wet.hours': 'wet hours that ask for air',
    setPoint: 'set temperature',
    limit: 'limit',
    volume: 'volume',
    value: 'value of the produce inside',
    checkDays: 'days between checks of its probes',
    power: 'power',
    'power.hours': 'hours with power',
    'power.litresPerHour': 'litres per hour',
    'power.fuel': 'fuel',
    'power.litrePrice': 'price of a litre',
  },
  crop: {
    id: 'short name',
    name: 'name',
    base: 'base temperature',
    band: 'comfort band',
    heatLimit: 'heat limit',
    chill: 'chill limit',
    disease: 'diseases',
    get price() {
      return `price per ${weightUnit()}`;
    },
    get perTray() {
      return `${weightUnit()} per tray`;
    },
    keeps: 'keeping',
    'keeps.like': 'keeps like',
    'keeps.days': 'days it keeps',
    'keeps.at': 'at the temperature',
    get 'keeps.q10'() {
      return `times faster per ${figureApart(10)}`;
    },
    'keeps.freezes': 'freezes at',
    'keeps.chill': 'hurt by cold in store below',
    'keeps.class': 'kind of produce',
    days: 'days from sowing to the cut',
    seed: 'seed for a tray',
    other: 'other cost of a tray',
    minutes: 'work',
    'minutes.sow': 'minutes to sow a tray',
    'minutes.tend': 'minutes a week to look after a tray',
    'minutes.cut': 'minutes to cut a tray',
    get 'minutes.pack'() {
      return `minutes to pack a ${weightUnit()}`;
    },
    'minutes.move': 'minutes to move a tray',
    young: 'cut young',
    'young.days': 'days to a young cut',
    get 'young.perTray'() {
      return `${weightUnit()} per tray, cut young`;
    },
    get 'young.price'() {
      return `price per ${weightUnit()}, cut young`;
    },
    regrows: 'grows again after a cut',
  },
  mix: {
    id: 'short name',
    name: 'name',
    get price() {
      return `price per ${weightUnit()}`;
    },
    parts: 'parts',
  },
  delivery: { day: 'day', wants: 'wanted' },
  probe: {
    id: 'name',
    place: 'place',
    spot: 'spot',
    every: 'time between readings',
    bare: 'bare bead',
    offset: 'correction',
  },
  mapping: {
    topic: 'topic',
    probe: 'where the probe’s name stands',
    sender: 'sender',
    time: 'where the time stands',
    fields: 'fields',
  },
};

const farmDays: Readonly<Record<string, string>> = {
  monday: 'Monday',
  tuesday: 'Tuesday',
  wednesday: 'Wednesday',
  thursday: 'Thursday',
  friday: 'Friday',
  saturday: 'Saturday',
  sunday: 'Sunday',
};

const farmValue = (value: unknown): string => {
  if (value === undefined || value === null) return 'not told';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return value < 0 ? `−${-value}` : String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(farmValue).join(', ');
  if (typeof value === 'object') return Object.values(value).map(farmValue).join(' ');
  return String(value);
};

/** A field of the farm's description, turned into the units of the farm where it has one. */
const farmFigure = (part: FarmPart, field: string, given: unknown): string => {
  const unit = farmUnits[part]?.[field];
  if (unit === undefined) return farmValue(given);
  const one = (value: unknown) =>
    typeof value !== 'number'
      ? farmValue(value)
      : unit === '/kg'
        ? number(perWeight(value), 2)
        : unit === '°C'
          ? figureDegrees(value)
          : unit === 'K'
            ? figureApart(value)
            : weight(value);
  return Array.isArray(given) ? given.map(one).join(', ') : one(given);
};

const farmName = (part: FarmPart, name: string): string =>
  part === 'farm'
    ? 'Farm'
    : part === 'place'
      ? name
      : `${farmParts[part]} ${part === 'delivery' ? (farmDays[name] ?? name) : name}`;

/** @param placeName what people call the place with this short name. */
export const farmChangeWords = (
  placeName: (id: unknown) => string,
  cropName: (id: unknown) => string = String,
) => {
  const value = (part: FarmPart, field: string, given: unknown) =>
    given === undefined
      ? farmValue(given)
      : field === 'place'
        ? placeName(given)
        : field === 'spot'
          ? (spots[given as Spot] ?? farmValue(given))
          : field === 'kind'
            ? (kinds[given as PlaceKind] ?? farmValue(given))
            : field === 'crop'
              ? cropName(given)
              : Array.isArray(given) && ['wants', 'parts'].includes(field)
                ? shares(given)
                : farmFigure(part, field, given);
  /** `4 kg Basil`, `20 % Basil`. */
  const shares = (list: readonly Readonly<Record<string, unknown>>[]) =>
    list.length === 0
      ? farmValue(list)
      : list
          .map(({ of, kg, crop, share }) =>
            share === undefined
              ? `${weight(Number(kg))} ${cropName(of)}`
              : `${number(Number(share) * 100, 0)}${HARD}% ${cropName(crop)}`,
          )
          .join(', ');
  return {
    added: (part: FarmPart, name: string, fields: Readonly<Record<string, unknown>>): string => {
      if (part === 'probe')
        return `Probe ${name} is added: ${value('probe', 'place', fields.place)}, ${value('probe', 'spot', fields.spot)}`;
      if (part === 'place') return `${name} is added: ${value('place', 'kind', fields.kind)}`;
      return `${farmName(part, name)} is added`;
    },
    gone: (part: FarmPart, name: string): string => `${farmName(part, name)} is taken out`,
    moved: (name: string, fields: Readonly<Record<string, unknown>>): string =>
      `Probe ${name} moves to ${value('probe', 'place', fields.place)}, ${value('probe', 'spot', fields.spot)}, from now on`,
    changed: (
      part: FarmPart,
      name: string,
      { field, before, after }: { field: string; before?: unknown; after?: unknown },
    ): string => {
      const what = farmFieldNames[part][field] ?? plain(field.split('.').join(' '));
      return `${farmName(part, name)}: ${what} ${value(part, field, before)} → ${value(part, field, after)}`;
    },
  };
};

/** What a check of the farm file wants, as it is said beside a field of a page. */
export const wantedSaid: readonly (readonly [RegExp, string])[] = [
  [/^(?:number|int) to be <=(.+)$/, 'a number, $1 at the most'],
  [/^(?:number|int) to be >=(.+)$/, 'a number, $1 at the least'],
  [/^(?:number|int) to be >(.+)$/, 'a number above $1'],
  [/^int$/, 'a whole number'],
  [/^number$/, 'a number'],
  [/^string$/, 'a word'],
  [/^string to have >=1 characters$/, 'a word'],
  [/^string to have <=(\d+) characters$/, '$1 letters at the most'],
  [/^array to have >=1 items$/, 'one at the least'],
  [/^one of "(.*)"$/, 'one of $1'],
  [/"\|"/g, ', '],
  [/setPoint/, 'the set temperature'],
  [/`at`/, 'the first of the two'],
  [/cover\.damage/, 'a temperature at which damage begins'],
  [/^shares that make one whole$/, 'shares that make 100 % together'],
];

/** How a refusal is framed: `Expected number in places[0].limit, got "cold"`. */
export const refused = {
  sentence: (wanted: string, where: string, got: string) =>
    `Expected ${wanted}${where}, got ${got}`,
  noField: (field: string) => `no field ${field}`,
  inField: (field: string) => ` in ${field}`,
  valid: (what: string) => `a valid ${what}`,
  nothing: 'nothing',
  /** In place of a secret. */
  another: 'another one',
  tooDeep: 'something nested too deep to show',
  /** What a schema asks for, where it is said in other words than the schema’s own. */
  wants: [] as readonly (readonly [RegExp, string])[],
};

/** Where nothing can be told because nobody has said where the farm lies. */
export const noFarmYet =
  'Expected a farm that is told where it lies, got none yet: a grower describes it under Set-up';

// Describing a farm step by step.

/** Minutes of work, for a tray or a kilogram. */
const workWords: Readonly<Record<string, string>> = {
  sow: 'sowing',
  tend: 'looking after it for a week',
  cut: 'cutting',
  pack: 'packing a kg',
  move: 'carrying',
};

const setUpSteps = {
  title: 'Describe the farm',
  why: 'Each step is kept in the hub. Leave it where you like, and come back.',
  step: (n: number, of: number) => `Step ${n} of ${of}`,
  names: {
    name: 'Name and money',
    position: 'Where it lies',
    units: 'Language and units',
    places: 'Places',
    crops: 'Crops',
    deliveries: 'Delivery days',
    probes: 'Probes',
    alarms: 'Alarms',
    first: 'First look',
  } as Readonly<Record<string, string>>,
  states: { done: 'done', open: 'to do', optional: 'may wait' },
  nameFirst: 'Give the farm a name first: the first step.',
  next: (name: string) => `Next: ${name}`,
  goOn: (name: string) => `Go on: ${name}`,
  all: 'All steps',
  store: 'Store this',
  storeAndGo: 'Store this, and go on',
  add: 'Add this',
  storing: 'Storing…',
  stored: 'The hub has stored this.',
  notStored: (sentence: string) => `Not stored: ${sentence}`,
  preview: 'Storing this changes:',
  seeAbove: 'Not yet right: see above.',
  lost: (comment: string) => `The note “${comment}” in the farm file would be gone.`,
  overtaken:
    'Not stored: somebody changed the farm meanwhile. What you typed is still here, over what the farm is now: look, and store it again.',
  theirs: (who: string, at: string) => `${who} changed at ${at}:`,
  begin: 'Nobody has described this farm yet. It takes some minutes.',
  beginNow: 'Describe the farm',
  waits: 'A grower has yet to tell where this farm lies. Readings are kept; nothing is decided.',
  here: 'Use the position of this device',
  hereNot:
    'A browser tells its position only to a page that comes over https or from this machine: type it here.',
  hereFailed: 'This device did not tell where it is: type it here.',
  sun: (rise: string, set: string) =>
    `Today the sun rises at ${rise} and sets at ${set} there. Is that right?`,
  noSun: 'The sun does not rise or set there today.',
  clockThere: (time: string, offset: string) => `It is ${time} there now (${offset}).`,
  zoneName: (zone: string) => zone.replaceAll('_', ' '),
  zoneTown: (zone: string) => (zone.split('/').at(-1) ?? zone).replaceAll('_', ' '),
  startAt: (town: string) => `Start at ${town}`,
  away: (km: number, town: string, far: boolean) =>
    far
      ? `That is ${km}${HARD}km from ${town}: is a sign wrong, or the time zone?`
      : `That is ${km}${HARD}km from ${town}.`,
  globe: {
    label: 'Where the farm lies: arrow keys move the point, plus and minus go closer and wider',
    how: 'Tap or drag to move the point; closer for a finer step. The dots are towns that time zones are named after.',
    closer: 'Closer',
    wider: 'Wider',
    degrees: (value: number) => `${number(value, Number.isInteger(value) ? 0 : 1)}°`,
    town: (zone: string) => (zone.split('/').at(-1) ?? zone).replaceAll('_', ' '),
  },
  unitsWhy:
    'For what people read and type. The hub keeps °C and kg; programs that ask it get those.',
  language: 'Language',
  temperatures: 'Temperatures',
  temperatureUnits: { C: 'Celsius (°C)', F: 'Fahrenheit (°F)' },
  weights: 'Weights',
  weightUnits: { kg: 'kilograms (kg)', lb: 'pounds (lb)' },
  clock: 'Clock',
  clocks: { 24: '24 hours (19:40)', 12: '12 hours (7:40 pm)' },
  weekStart: 'First day of the week',
  farmMoney: (name: string) => `Money is that of the first step: ${name}.`,
  none: 'None yet.',
  addPlace: 'Add a place',
  changePlace: (name: string) => `Change ${name}`,
  change: 'Change',
  takeOut: 'Take out',
  forName: (what: string, name: string) => `${what}: ${name}`,
  addAnother: 'Add another instead',
  outdoorWhy: 'One place outdoors is what all others are compared with.',
  placesElse:
    'A place’s short name never changes: its readings hang on it. Message forms of other probes are told in the farm file.',
  addCrop: 'Add a crop',
  otherCrop: 'another crop',
  cropLine: (name: string, price: unknown, perTray: unknown, currency: string) =>
    [
      name,
      price === undefined ? 'price not told' : `${String(price)} ${currency} a kg`,
      perTray === undefined ? 'yield not told' : `${String(perTray)} kg from a tray`,
    ].join(', '),
  retire: 'Give up this crop',
  retireWhy: 'What was written down about a crop that is given up stays in the record.',
  keepIt: 'Keep it',
  minutesLine: (minutes: Readonly<Record<string, number>>) =>
    Object.entries(minutes)
      .map(([what, min]) => `${workWords[what] ?? what} ${min}`)
      .join(', '),
  mixes: 'Mixes',
  mixesLater: 'With two crops or more there can be mixes that are sold as one.',
  addMix: 'Add a mix',
  mixLine: (name: string, parts: readonly { crop: string; share: number }[]) =>
    `${name}: ${parts.map(({ crop, share }) => `${crop} ${number(share * 100, 0)}${HARD}%`).join(', ')}`,
  choose: 'Choose',
  cropNames: {
    basil: 'Basil',
    'pea-shoots': 'Pea shoots',
    radish: 'Radish',
    'brassica-microgreens': 'Brassica microgreens',
    lettuce: 'Lettuce and salad leaves',
    strawberry: 'Strawberry',
    eggplant: 'Eggplant',
  } as Readonly<Record<string, string>>,
  figures: 'Figures to begin with, and who says so',
  figure: 'Figure',
  value: 'Value',
  source: 'Who says so',
  addDelivery: 'Add a delivery',
  days: farmDays,
  deliveryLine: (day: string, wants: readonly { of: string; kg: number }[]) =>
    [day, ...wants.map(({ of, kg }) => `${withUnit(kg, 'kg')} ${of}`)].join(', '),
  probesWhy: 'A probe that speaks appears here by itself. Say where it hangs.',
  noProbes: 'No probe has spoken yet.',
  newProbe: 'A password for a probe',
  newProbeWhy:
    'Give the probe this name and password, and the address of the hub. The password is shown once.',
  probeName: 'Name of the probe',
  makePassword: 'Make a password',
  probeUser: (user: string) => `MQTT name ${user}, password`,
  placesFirst: 'It has no places yet: add one first, under Places.',
  speaks: (id: string, values: readonly string[]) =>
    values.length === 0
      ? `A probe named ${id} speaks: where is it?`
      : `A probe named ${id} speaks: ${values.join(' ')}. Where is it?`,
  itIs: 'Yes, it hangs there',
  elsewhere: 'Somewhere else',
  silent: (ids: readonly string[]) => `With a password, not heard yet: ${ids.join(', ')}.`,
  moreOf: (id: string) => `How often ${id} speaks, and its corrections`,
  publishTo: (user: string, host: string) =>
    `It publishes to garden/${user}/temperature and the like, at ${host}. The password is not shown again.`,
  passedOn: 'I have passed it on',
  soundHere: 'Sound on this screen',
  trySound: 'Sound it once',
  sounded: 'It has sounded. Was it loud enough?',
  notSounded: 'This browser did not let it sound.',
  alarmsWhy: 'Add somebody with an e-mail address or a webhook, save, and send a test from here.',
  asIf: 'A whole alarm, as a test',
  asIfWhy: 'It goes the way of a real one: to the first person, and on if nobody answers.',
  toAlarms: 'All about alarms',
  fileWhy:
    'Everything here is one farm file; message forms of other probes and more corrections are told there, and taken in with “dewpost farm import”.',
  file: 'See the farm file',
  missing: {
    position: 'It is not told where the farm lies.',
    places: 'It has no places.',
    probes: 'No probe hangs anywhere yet.',
    reading: 'No reading has come in yet.',
  },
  ready: 'Everything that a first look needs is there.',
  toToday: 'Go to Today',
  changes: 'Changes of the farm',
  changesWhy:
    'Undoing puts the farm back as it was before that change; what was changed later goes too.',
  undo: 'Undo',
  undone: 'The hub has put it back.',
  undoes: 'Put back.',
  by: (who: string, when: string) => `${who}, ${when}`,
};

// Every field of the farm's description, as it is asked for on a page: its label with its unit, and
// what it means, with what is usual. Those without a hint say all in their label.

const setUpFields = {
  from: (label: string) => `${label}, from`,
  to: (label: string) => `${label}, to`,
  nth: (label: string, n: number) => `${label} (${n})`,
  oneMore: 'One more',
  notTold: 'not told',
  nothing: 'nothing',
  noCovers: 'none',
  covers: { cloches: 'cloches', fleece: 'fleece' },
  fuels: { petrol: 'petrol', diesel: 'diesel' },
  keptCrops: (id: string) => plain(id),
  /** What a place of a kind is mostly called; a house has a name of its own. */
  placeNames: { outdoor: 'Outside', 'cool-room': 'Cool room' } as Readonly<Record<string, string>>,
  groups: {
    grows: 'What grows there',
    cover: 'Covers and frost',
    picking: 'When ripe fruit hangs there',
    wet: 'When leaves count as wet',
    airing: 'When it is usually aired',
    water: 'Watering by a soil probe',
    room: 'More about this room',
    power: 'What feeds it',
    climate: 'Its climate and diseases',
    work: 'Work and costs',
    young: 'Cut as young leaves instead',
    keeps: 'How it keeps once it is cut',
  } as Readonly<Record<string, string>>,
  diseases: {
    'grey-mould': 'grey mould',
    anthracnose: 'anthracnose',
    'powdery-mildew': 'powdery mildew',
    'basil-downy-mildew': 'basil downy mildew',
    'lettuce-downy-mildew': 'lettuce downy mildew',
    'brassica-downy-mildew': 'brassica downy mildew',
    'late-blight': 'late blight',
    'early-blight': 'early blight',
    'tray-mould': 'mould on trays',
  } as Readonly<Record<string, string>>,
  stages: {
    'tight-bud': 'tight bud',
    balloon: 'balloon',
    'open-flower': 'open flower',
    'green-fruit': 'green fruit',
    'late-autumn-flower': 'flower in late autumn',
    'dormant-crown': 'dormant crown',
    'flower-bud-in-crown': 'flower bud in the crown',
    plant: 'plant',
    fruit: 'fruit',
    spring: 'in spring',
    winter: 'in winter',
    seedling: 'seedling',
  } as Readonly<Record<string, string>>,
  farm: {
    name: ['Name of the farm'],
    money: ['Money, three letters', 'EUR, USD, GBP …'],
    wage: ['What an hour of work costs', 'What you would pay somebody for it.'],
  },
  where: {
    zone: ['Time zone'],
    lat: ['Degrees north (south is negative)', '−90 to 90; a tenth is 11 km.'],
    lon: ['Degrees east (west is negative)', '−180 to 180.'],
    altitude: ['Metres above the sea', 'Left empty: 0. It counts for the pressure of the air.'],
  },
  place: {
    kind: ['Kind'],
    name: ['Its name'],
    capacity: ['Room for trays', 'How many fit at once. Left empty: not known.'],
    vents: ['It can be opened up'],
    get setPoint() {
      return [
        `Set temperature, ${degree()}`,
        'What its controller is set to; 2 to 4 for most salads.',
      ] as const;
    },
    get limit() {
      return [
        `Too warm from, ${degree()}`,
        'Which limit holds for your produce is for your local food-safety rules to say.',
      ] as const;
    },
    volume: ['Volume, m³', 'Length × width × height inside.'],
    value: ['Worth of what usually lies in it', 'In money: what a warm room would cost you.'],
    checkDays: ['Days between checks of its probes', '7 to 1000. Left empty: 90.'],
    'power.hours': [
      'Hours in which it has power',
      'As 06:00-10:00, 16:00-22:00. Left empty: always, or as learned.',
    ],
    'power.litresPerHour': ['Litres an hour of the generator'],
    'power.fuel': ['Fuel'],
    'power.litrePrice': ['Price of a litre'],
    crop: ['Crop'],
    trays: ['Trays standing there', 'Counts only until batches are kept.'],
    covers: ['Covers'],
    'cover.minutes': ['Minutes to put the covers on', 'For the whole place: 20 to 60 is usual.'],
    'cover.value': ['Worth of what a frost would spoil', 'In money.'],
    get 'cover.damage'() {
      return [
        `Damage begins at, ${degree()}`,
        'What the probe reads then. Left empty: the stage below tells it.',
      ] as const;
    },
    'cover.effect': [
      'Share of the damage the covers keep off, %',
      'Over 0, to 100; 80 where you do not know.',
    ],
    stage: ['Stage of the crop', 'For crops with a published frost limit.'],
    'picking.from': ['First day of picking', 'Month and day, as 05-20.'],
    'picking.to': ['Last day of picking', 'Month and day, as 10-31.'],
    'picking.minutes': ['Minutes to pick it once'],
    'picking.value': ['Worth of what hangs ripe', 'In money.'],
    'airing.opens': ['Usually opened at', 'As 08:30. Then only what is not usual is asked for.'],
    'airing.shuts': ['Usually closed at', 'As 19:00. Left empty: an hour before sunset.'],
    'water.below': [
      'Water when the soil says less than, %',
      '0 to 100. It needs a soil moisture probe.',
    ],
    'water.minutes': ['Minutes of watering'],
    'wet.hours': ['Wet hours that ask for air', '1 to 48. Left empty: 4.'],
    'wet.at': ['Wet from this humidity on, %', '50 to 100. Left empty: 90.'],
    'wet.below': [
      'Dry again below this humidity, %',
      '50 to 100, not above the first. Left empty: 87.',
    ],
  },
  crop: {
    starter: ['Crop'],
    stands: ['It grows in'],
    get price() {
      return [`Your price for a ${weightUnit()}`, 'Yours to say: no list knows it.'] as const;
    },
    get perTray() {
      return [
        `${weightUnit()} from a tray`,
        'Yours to say: a guess is enough, your batches correct it.',
      ] as const;
    },
    days: ['Days from sowing to the cut', 'Fewest and most, until your own batches tell.'],
    name: ['Its name'],
    get base() {
      return [
        `It stands still below, ${degree()}`,
        'Base of its heat units. Left empty: 10.',
      ] as const;
    },
    get band() {
      return [`It likes, ${degree()}`] as const;
    },
    get heatLimit() {
      return [`Too hot from, ${degree()}`] as const;
    },
    get chill() {
      return [`Hurt by cold below, ${degree()}`] as const;
    },
    disease: ['Diseases to look out for'],
    seed: ['Seed for a tray, in money'],
    other: ['Other costs of a tray, in money', 'Medium, wear of the tray, packing.'],
    'minutes.sow': ['Minutes to sow a tray'],
    'minutes.tend': ['Minutes a week to look after a tray'],
    'minutes.cut': ['Minutes to cut a tray'],
    get 'minutes.pack'() {
      return [`Minutes to wash and pack a ${weightUnit()}`] as const;
    },
    'minutes.move': ['Minutes to carry a tray elsewhere'],
    regrows: ['It grows again after a cut'],
    'young.days': ['Days to the young cut'],
    get 'young.perTray'() {
      return [`${weightUnit()} from a tray, cut young`] as const;
    },
    get 'young.price'() {
      return [`Price for a ${weightUnit()}, cut young`] as const;
    },
    'keeps.like': ['It keeps like', 'Left empty: like itself, where a source speaks of it.'],
    'keeps.days': ['Days it keeps'],
    get 'keeps.at'() {
      return [`at this temperature, ${degree()}`, '0 to 35. Left empty: 0.'] as const;
    },
    get 'keeps.q10'() {
      return [
        `Times faster it ages ${difference(10)} warmer`,
        '1 to 10; 2 to 3 is usual.',
      ] as const;
    },
    get 'keeps.freezes'() {
      return [`It freezes at, ${degree()}`] as const;
    },
    get 'keeps.chill'() {
      return [`Hurt by cold in store below, ${degree()}`] as const;
    },
    'keeps.class': ['For food rules it is'],
  },
  mix: {
    name: ['Its name'],
    parts: ['What is in it', 'Shares by weight, 100 % together.'],
    'parts.crop': ['Crop'],
    'parts.share': ['Share, %'],
    get price() {
      return [`Your price for a ${weightUnit()}`] as const;
    },
  },
  delivery: {
    day: ['Day of every week'],
    wants: ['What is wanted on it', 'May be left empty, and changed for single days later.'],
    'wants.of': ['Wanted'],
    get 'wants.kg'() {
      return [`${weightUnit()}`] as const;
    },
  },
  probe: {
    every: ['It speaks every', 'As 30s, 5m or 1h.'],
    bare: ['A bare bead among the leaves, without a roof'],
    get 'offset.temperature'() {
      return [`Added to its temperature, ${degree()}`, 'Left empty: nothing.'] as const;
    },
    'offset.humidity': ['Added to its humidity, %', 'Left empty: nothing.'],
    'offset.soil-moisture': ['Added to its soil moisture, %', 'Left empty: nothing.'],
    get 'offset.soil-temperature'() {
      return [`Added to its soil temperature, ${degree()}`, 'Left empty: nothing.'] as const;
    },
  },
} as const;
/** The fields of one part, each by its path. */
export type FieldWords = Readonly<Record<string, readonly [label: string, hint?: string]>>;

// The page Set-up: who may sign in, and one’s own sign-in.

const setUpScreens = {
  title: 'Set-up',
  open: 'Nobody needs to sign in to this hub: it listens on its own machine only. People and passwords begin when it is started without --open.',
  helper: 'Farm, places, probes and people are changed by a grower.',
  people: 'People',
  roles: { grower: 'grower', helper: 'helper' },
  rolesWhy:
    'A grower may change everything. A helper reads the pages, answers tasks and enters what was done.',
  you: '(you)',
  seen: (ms: number) => `last seen ${age(ms)}`,
  neverSeen: 'not seen yet',
  add: 'Add somebody',
  role: 'Role',
  makeCode: 'Make a code',
  newPasswordFor: 'Code for a new password',
  remove: 'Remove',
  removeWhy: (name: string) => `${name} is signed out at once and cannot sign in any more.`,
  removeSure: (name: string) => `Remove ${name}`,
  keep: 'Keep',
  forName: (what: string, name: string) => `${what}: ${name}`,
  removed: (name: string) => `The hub has removed ${name}.`,
  codeFor: (role: string, name: string | null) =>
    name === null ? `Code for a new ${role}` : `Code for ${name}, for a new password`,
  codeWhy: (until: string) =>
    `It counts once, until ${until}, and is shown only now. It is typed in the browser, on the page to sign in, under “I have a code”.`,
  codeSeen: 'I have passed it on',
  waiting: 'Codes not used yet',
  waitingLine: (role: string, name: string | null, until: string) =>
    `${name === null ? `a new ${role}` : `${name}, new password`}, until ${until}`,
  takeBack: 'Take back',
  takenBack: 'The hub has taken the code back.',
  yours: 'Your sign-in',
  signedIn: (name: string, role: string) => `You are signed in as ${name}, ${role}.`,
  change: 'Change your password',
  passwordNow: 'Your password now',
  newPassword: 'A new password',
  changed: 'The hub has changed your password. Your other browsers are signed out.',
  everywhere: 'Sign out everywhere',
  everywhereWhy: 'Signs you out in every browser, here too.',
  failed: (sentence: string) => `Not done: ${sentence}`,
  sending: 'Sending…',
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
  controller: 'It looks like the controller: read its display, number and unit.',
  probe: 'It looks like the probe.',
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
    ? `, 8 nights in 10 between ${degrees(between[0])} and ${degrees(between[1])}`
    : '';
  const cross = by === null ? '' : ` by ${by}`;
  const learned =
    nights < 10 // the same ten that rules/frost asks for before it trusts a fit
      ? `a wide guess until ten nights are known (${nights} so far)`
      : `learned from ${counted(nights, 'night')}`;
  return `low ${temperature(mean)}${range}; ${chance(p)} chance below ${degrees(at)}${cross}; ${learned}`;
}

function coolRoom(room: CoolRoom): string {
  const is =
    room.temperature === null
      ? 'No fresh reading of how warm it is.'
      : `${temperature(room.temperature)}; set to ${degrees(room.setPoint)}, limit ${degrees(room.limit)}.`;
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
  const ask =
    above <= 0 ? '' : ' Ask your local food-safety officer what that means for your produce.';
  return `${is}${cause}${hold}${over}${ask}`;
}

// The frost page: tonight on one axis, and how good its forecasts have been.

const frostLimits: Readonly<Record<'damage' | 'chill' | 'freezing', string>> = {
  damage: 'frost damage',
  chill: 'chilling',
  freezing: 'freezing',
};
/** `nights` that rules/frost asks for before it trusts a fit. */
const learnedFrom = (nights: number) =>
  nights < 10
    ? `A wide guess until ten nights are known (${nights} so far).`
    : `Learned from ${counted(nights, 'night')}.`;

type CurveWords = {
  readonly name: string;
  readonly spot: Spot;
  readonly mean: number;
  readonly between: readonly [number, number];
  readonly limits: readonly {
    readonly what: 'damage' | 'chill' | 'freezing';
    readonly at: number;
    readonly p: number;
    readonly crossesAt: number | null;
  }[];
  readonly nights: number;
  readonly zone: string;
};

/** Tonight at one spot as text. */
export function curveWords({ name, spot, mean, between, limits, nights, zone }: CurveWords) {
  const [from, to] = between;
  const passed = limits.map(({ what, at, p, crossesAt }) => {
    const by = crossesAt === null ? '' : `, by ${clock(crossesAt, zone)}`;
    return `${chance(p)} chance below ${temperature(at)} (${frostLimits[what]})${by}`;
  });
  const low = `low about ${temperature(mean)}, 8 nights in 10 between ${degrees(from)} and ${temperature(to)}`;
  return `${name}, ${spots[spot]}: ${low}. ${passed.map((text) => `${text}. `).join('')}${learnedFrom(nights)}`;
}

/** Whether a place is covered, and what its covers have been worth. */
export function coverWords(told: {
  readonly name: string;
  readonly covered: boolean | null;
  readonly nights: number;
  readonly gain: number | null;
  readonly median: number | null;
}): string {
  const { name, covered, nights, gain, median } = told;
  const is =
    covered === null ? 'nobody has said whether it is covered' : placeScreens.covered(covered);
  const few = 'A probe under the cover and one beside it tell, once nine clear nights are known';
  const worth =
    median === null || gain === null
      ? `What its covers add is not known. ${few}.`
      : nights < 9
        ? `Its covers added ${difference(median)} in the middle of ${counted(nights, 'clear night')}; nothing is counted on before nine.`
        : `In nine of ten clear nights its covers added ${difference(gain)} or more (${counted(nights, 'night')}).`;
  return `${name}: ${is}. ${worth}`;
}

type Share = { readonly n: number; readonly happened: number };
type ScoreWords = {
  readonly n: number;
  readonly happened: number;
  readonly enough: boolean;
  readonly warnFrom: number;
  readonly at: number;
  readonly often: Share;
  readonly seldom: Share;
  readonly misses: number;
  readonly falseAlarms: number;
  readonly inside: number;
  readonly error: number;
  readonly persistenceError: number | null;
  readonly skill: number | null;
};

/** A scorecard as somebody says it who had to get up for it. */
export function scoreWords(told: ScoreWords): string[] {
  const { n, happened, enough, warnFrom, at, often, seldom, skill } = told;
  const below = `went below ${temperature(at)}`;
  const again =
    told.persistenceError === null
      ? ''
      : `; saying last night’s low again would have been ${difference(told.persistenceError)} off`;
  const first = `${counted(n, 'night')}: ${difference(told.error)} off on average${again}.`;
  if (!enough) return [first, 'Too few to say how good its chances are: that takes 20 nights.'];
  const when = (share: Share, words: string) =>
    share.n === 0
      ? `It has never said ${words}.`
      : `Of ${counted(share.n, 'night')} it said ${words}, ${share.happened} ${below}.`;
  return [
    first,
    `${told.inside} of ${n} lows lay in the range it gave for 8 in 10.`,
    when(often, `70${HARD}% or more`),
    when(seldom, `under 30${HARD}%`),
    `${counted(happened, 'night')} ${below}, ${told.misses} of them without a warning; ${counted(told.falseAlarms, 'warning')} came to nothing. A warning is a chance of ${chance(warnFrom)} or more.`,
    skill === null
      ? 'No night differed from another, so there is no skill to tell.'
      : skill > 0
        ? `Its chances say more than the time of the year alone (skill ${number(skill, 2)}; 1 is perfect).`
        : `Its chances say no more than the time of the year alone (skill ${number(skill, 2)}).`,
  ];
}

/** What a pushed forecast has been worth at a spot. */
export function sourceWords(told: {
  readonly source: string;
  readonly nights: number;
  readonly error: number | null;
  readonly ownError: number;
  readonly weight: number;
  /** Its newest issue holds the whole of tonight. */
  readonly reaches: boolean;
}): string {
  const { source, nights, error, ownError, weight, reaches } = told;
  if (error === null)
    return `${source}: ${counted(nights, 'night')} known; it has no say before ten.`;
  const record = `${source}: ${difference(error)} off over ${counted(nights, 'night')}, corrected; what is learned here is ${difference(ownError)} off.`;
  if (!reaches) return `${record} Its newest issue does not hold the whole of tonight.`;
  return weight > 0
    ? `${record} It has a share of ${chance(weight)} in tonight’s low.`
    : `${record} It has no say while it is not the better one.`;
}

const frostScreens = {
  title: 'Frost',
  tonight: 'Tonight',
  none: 'No forecast for tonight yet.',
  noNight: 'The sun does not set and rise here today, so there is no night to foretell.',
  picture: (name: string | null) =>
    name === null
      ? 'Temperatures tonight at all spots'
      : `Temperatures tonight at all spots, range of ${name}`,
  key: 'Solid: measured. Dashed: expected. Shaded: 8 chances in 10, for the spot chosen.',
  range: 'Show the range of',
  all: 'all spots',
  limits: frostLimits,
  limit: (what: 'damage' | 'chill' | 'freezing', at: number) =>
    `${frostLimits[what]} ${degrees(at)}`,
  table: 'Tonight in figures',
  columns: {
    spot: 'Spot',
    get low() {
      return `Low ${degree()}`;
    },
    range: '8 in 10',
    get limit() {
      return `Limit ${degree()}`;
    },
    chance: 'Chance below',
    crosses: 'Crosses at',
  },
  notCrossed: 'not expected to',
  get hours() {
    return `Expected hour by hour, ${degree()}`;
  },
  covers: 'Covers now',
  noCovers: 'No place has covers in the farm file.',
  scores: 'How good these forecasts are',
  noScores: 'No forecast has been scored yet: the first is, when its night is over.',
  noneScored: 'Not scored here yet.',
  choose: 'Spot',
  methods: {
    'through-the-night': 'Through the night, three hours after sunset',
    evening: 'Two hours after sunset',
    afternoon: 'In the afternoon',
    'recent-nights': 'In the morning',
    station: 'With a weather station, first nights',
    'wide-default': 'First nights, a wide guess',
  } as Readonly<Record<string, string>>,
  reliability: 'What it said, and what came',
  band: (from: number, to: number) => `${number(100 * from, 0)} to ${number(100 * to, 0)}${HARD}%`,
  bandWords: (from: number, to: number, n: number, happened: number) =>
    `Said ${number(100 * from, 0)} to ${number(100 * to, 0)}${HARD}% on ${counted(n, 'night')}: ${happened} went below.`,
  bandColumns: {
    said: 'It said',
    nights: 'Nights',
    below: 'Went below',
    share: 'Share',
    between: '95 % range',
  },
  bandKey:
    'Band: what it said. Dot: share that went below. Bar: where the true share lies, 19 times in 20.',
  list: 'The newest nights',
  listColumns: {
    night: 'Night',
    get said() {
      return `Said ${degree()}`;
    },
    chance: 'Chance',
    get came() {
      return `Came ${degree()}`;
    },
    below: 'Below',
  },
  yes: 'yes',
  no: 'no',
  sources: 'Forecasts that are pushed',
  noSources: 'Nobody pushes a forecast. The README tells how.',
};

// The page that shows how a number came about.

/** Names of the numbers put into a formula. */
const growingInputs = {
  batch: 'Batch',
  crop: 'Crop',
  'delivery-at': 'It leaves at',
  'delivery-day': 'Delivery on',
  'past-batches': 'Past batches it rests on',
  'ready-at': 'Ready, seen or expected, at',
  'sow-on': 'To be sown on',
  'sow-trays': 'Trays',
  'wanted-weight': 'Weight wanted',
};

export const inputLabels: Readonly<Record<string, string>> = {
  ...growingInputs,
  ...trayInputs,
  kilograms: 'What stands there comes to',
  'share-lost': 'Share of the value that a night with damage takes',
  'shuts-at': 'Usually closed at',
  'above-since': 'Above since',
  get 'afternoon-temperature'() {
    return `Temperature at ${wallTime('15:00')}`;
  },
  'clear-nights-under-cover': 'Clear, calm nights under these covers',
  'clock-hours': 'Clock that was agreed',
  bearing: 'Bears in June, or on and on',
  'clean-cost': 'Work of clearing out',
  'close-up': 'The rule on closing said',
  'cut-cost': 'Work of cutting back',
  'day-length': 'Length of the day',
  'days-since-picking': 'Days since the last picking',
  'each-day': 'Holding on, a day',
  'each-picking': 'Each picking, whatever it yields',
  'frost-in-14-days': 'A killing frost within 14 days',
  'fruit-hanging': 'Fruit and flowers counted',
  'grower-insists': 'You want it cut all the same',
  get 'hard-frosts'() {
    return `Nights below ${figureDegrees(-4)} this season`;
  },
  hygiene: 'Worth of the disease that goes with the leaves',
  'leaves-flat-and-red': 'Leaves lie flat and red',
  'lost-share': 'Share of next year lost by cutting green leaves',
  get margin() {
    return `Price of a ${kilogramWord()}, picking paid`;
  },
  'next-year': 'Worth of the patch next year',
  'rot-dry': 'Rots on a dry day',
  'rot-wet': 'Rots on a wet day',
  'still-to-gain': 'Still to gain by picking on',
  'wet-days': 'A day is wet',
  cost: 'Cost of the work',
  'at-top-since': 'At the top of the cycle since',
  'cycle-bottom': 'Bottom of the cycle',
  'cycle-top': 'Top of the cycle',
  'moved-since': 'Moved since',
  'no-way-down-since': 'No way down since',
  'out-of-cycle-above': 'Out of its cycle above',
  'running-share': 'Share of the time the unit runs',
  trouble: 'What was seen',
  'crop-floor': 'Coldest the crop bears',
  'crosses-at': 'Crosses it at',
  'damage-below': 'Damage begins below',
  'days-left-least': 'Days left at the least',
  'days-to-sale': 'Days to the next delivery',
  'degrees-of-freedom': 'Degrees of freedom',
  drop: 'Share spared',
  'dry-ends-spell': 'Dry time that ends a wet spell',
  'evening-dew-point': 'Dew point two hours after sunset',
  'evening-temperature': 'Temperature two hours after sunset',
  'expected-beforehand': 'Low expected from past nights alone',
  'fewest-nights': 'Nights needed before any gain is counted on',
  'forecast-from': 'Forecast from',
  'foretold-at': 'Foretold at',
  'foretold-by': 'Foretold by',
  'checked-at': 'Checked at',
  'heard-at': 'Last heard at',
  'hours-known': 'Hours known since harvest',
  'hours-not-known': 'Hours of the spell not known',
  'inside-humidity': 'Humidity inside',
  'inside-temperature': 'Temperature inside',
  'keeps-at': 'Those days are for',
  'keeps-least': 'Days it keeps, at the least',
  'keeps-most': 'Days it keeps, at the most',
  latitude: 'Latitude',
  'lies-at': 'Where it lies now',
  limit: 'Limit',
  longitude: 'Longitude',
  'lot-hours-not-known': 'Hours not known since harvest',
  'measures-since': 'Measures here since',
  'measured-days': 'Days it measured since',
  'newest-reading': 'Newest reading',
  'nights-learned': 'Nights learned from',
  now: 'Worked out at',
  'off-since': 'Off since',
  'open-since': 'Open, or rising, since',
  'open-up': 'The rule on opening said',
  'outdoors-mean': 'Mean outdoors in those hours',
  'outside-humidity': 'Humidity outside',
  'outside-temperature': 'Temperature outside',
  probability: 'Chance, 0 to 1',
  probe: 'Probe',
  get q10() {
    return `Ageing, times, ${figureApart(10)} warmer`;
  },
  quantity: 'Quantity',
  'pickings-counted': 'Pickings counted',
  'speed-fastest': 'A kilogram takes at least, 8 times in 10',
  'speed-slowest': 'A kilogram takes at most, 8 times in 10',
  'rain-from': 'Rain from',
  'read-at': 'Read at',
  'readings-from': 'Readings since',
  'released-at': 'Said at',
  'reports-every': 'Reports every',
  rise: 'Rise in an hour',
  'room-air': 'Air of the room',
  'room-or-crate': 'Read where lots are stored',
  'room-power': 'Power drawn',
  rule: 'Rule',
  'set-point': 'Set temperature',
  'share-prevented': 'Share of the loss that the work prevents',
  'spell-from': 'Wet spell from',
  'spell-to': 'Wet spell to',
  spread: 'Spread of the forecast (standard deviation)',
  'stored-at': 'Put away at',
  'stuck-since': 'Stuck since',
  sunrise: 'Sunrise',
  sunset: 'Sunset',
  'time-constant': 'Time constant of the room',
  'time-constant-of-produce': 'Time constant of a crate',
  'tonight-low': 'Low expected tonight',
  'under-cover': 'Temperature under the cover',
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
  'through-the-night': 'readings of the night so far, and past nights',
  station: 'a wide guess, and the nights of a weather station',
  'coil-starved': 'a coil far too cold',
  'door-open': 'a door that stands open',
  'lost-bottom': 'air that does not come down',
  'not-cooling': 'a unit that does not cool',
  'set-elsewhere': 'a cycle that lies elsewhere',
  stalled: 'air that makes no way down',
  stuck: 'a probe that stands still',
  'supply-off': 'no power',
  'too-cold': 'air far too cold',
  evening: 'readings two hours after sunset, and past nights',
  get afternoon() {
    return `readings at ${wallTime('15:00')}, and past nights`;
  },
  'recent-nights': 'the nights just past',
  'wide-default': 'a wide guess, until nights are known',
  act: 'do it',
  june: 'in June',
  ever: 'on and on',
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

const alarmScreens = {
  title: 'Alarms',
  none: 'No alarm stands, and none waits to be seen.',
  standing: 'Alarms that stand or wait to be seen',
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

// The season's odds of frost, and the planner of a patch.

const seasonScreens = {
  title: 'Odds of frost this season',
  place: 'Place',
  limit: 'Limit',
  limits: {
    frost: (at: string) => `frost, ${at}`,
    damage: (at: string) => `damage here, ${at}`,
  },
  none: 'The farm has no patch and no place outdoors yet.',
  at: (place: string, spot: string | null) => (spot === null ? place : `${place}, ${spot}`),
  cannot: (missing: readonly string[]) =>
    `Cannot say without ${listed(missing.map(missingLabel))}.`,
  years: (seasons: number) => `${counted(seasons, 'season')} on record so far; eight are needed.`,
  nights: (nights: number) =>
    `Not known yet: ${counted(nights, 'night')} kept here so far, and eight seasons are needed.`,
  howTo: 'Take in a station’s past record on the hub, with its command:',
  command: 'npx dewpost import FILE --station NAME --lat=DEGREES --lon=DEGREES',
  commandOnly:
    'It reads GHCN-Daily, ISD-Lite and CSV files. Taking in a file from this page is not possible.',
  first: (at: string, ahead: readonly { days: number; p: number | null }[]) =>
    `No ${at} so far this season. Chance of the first one within ${aheadWords(ahead)}.`,
  came: (at: string, day: string) => `The first ${at} of this season came on ${day}.`,
  last: (at: string, p: number | null, ahead: readonly { day: string; p: number | null }[]) =>
    `Chance that another ${at} comes this spring: ${orNot(p)} after today, ${ahead
      .map(({ day, p: later }) => `${orNot(later)} after ${day}`)
      .join(', ')}.`,
  unknownNights: (n: number) =>
    n === 0 ? '' : `${counted(n, 'night')} of this season were not measured.`,
  limitWords: (what: 'frost' | 'damage', at: string) =>
    what === 'frost' ? `frost (${at} or below)` : `night of damage (${at} or below)`,
  dates: (side: 'first' | 'last', early: string, middle: string, late: string) =>
    `In seasons that have one, the ${side} comes around ${middle}; one in ten before ${early}, one in ten after ${late}.`,
  risk: (side: 'first' | 'last', p: number | null, in5: number | null, in10: number | null) =>
    p === null
      ? ''
      : `${side === 'first' ? 'It has come by this date' : 'One comes after this date'} in ${chance(p)} of seasons: at least once in 5 seasons ${orNot(in5)}, in 10 seasons ${orNot(in10)}.`,
  fitted: {
    own: (shared: number) => `From ${counted(shared, 'season')} measured here.`,
    dates: (station: string, shared: number, by: number | null) =>
      `From ${station}, its dates moved by ${number(by, 0)} days: ${counted(shared, 'season')} are known of both.`,
    nights: (station: string, shared: number, by: number | null) =>
      `From ${station}. On ${counted(shared, 'clear calm night')} known of both it was ${difference(Math.abs(by ?? 0))} ${(by ?? 0) < 0 ? 'colder' : 'warmer'} here, so its years are counted at that much ${(by ?? 0) < 0 ? 'above' : 'below'} the limit.`,
    none: (station: string) =>
      `From ${station}, as it stands: no clear calm nights are known of both, and a hollow may freeze weeks before a station does.`,
  },
  away: (name: string, km: number) => `${name}, ${number(km, 0)}${HARD}km away`,
  from: (seasons: number, withFrost: number, way: 'curve' | 'counted' | 'unknown') =>
    `${counted(seasons, 'season')} on record, ${withFrost} with one. ${
      way === 'curve'
        ? 'Chances by a curve fitted to their dates.'
        : 'Too few for a curve: counted.'
    }`,
  picture: {
    first: 'Chance that the first one has come, by date',
    last: 'Chance that one still comes, by date',
  },
  today: (day: string) => `today, ${day}`,
  key: 'Line: the chance by date. Marks below: past years. Upright line: today.',
  columns: {
    until: 'Until',
    after: 'After',
    p: 'By the curve',
    counted: 'By counting',
    season: 'Season from',
    date: 'Date',
  },
  aheadRow: (days: number, day: string) => `${counted(days, 'day')}, ${day}`,
  table: 'The chances as a table',
  pastYears: 'Past years',
  noFrost: 'none',
  overrides: 'For tonight the forecast of tonight’s low says more.',
  stations: 'Stations taken in',
  noStations: 'None yet.',
  station: (name: string, km: number, first: string | null, last: string | null, days: number) =>
    `${name}, ${number(km, 0)}${HARD}km away: ${number(days, 0)} days, ${first ?? notKnown} to ${last ?? notKnown}`,
  remove: 'Remove',
  removeOf: (name: string) => `Remove ${name}`,
  sure: (name: string) => `Remove ${name} and all its days?`,
  yes: 'Remove it',
  keep: 'Keep it',
};

const orNot = (p: number | null) => (p === null ? notKnown : chance(p));
const aheadWords = (ahead: readonly { days: number; p: number | null }[]) =>
  listed(ahead.map(({ days, p }) => `${counted(days, 'day')} ${orNot(p)}`));

/** Money that may be lost: a minus is a cost. */
const gain = (value: number | null, currency: string) =>
  value === null ? notKnown : money(value, currency).replace('-', '−');

const figureNames: Readonly<Record<string, string>> = {
  get price() {
    return `Price of a ${kilogramWord()}`;
  },
  wage: 'Wage for an hour',
  perDay: 'Holding on, each day',
  get minutesPerKg() {
    return `Picking a ${kilogramWord()}`;
  },
  minutesPerPicking: 'Each picking, whatever it yields',
  rotWet: 'Ripening fruit that rots on a wet day',
  rotDry: 'Ripening fruit that rots on a dry day',
  cleanRotWet: 'The same on a wet day, once cleared out',
  cleanRotDry: 'The same on a dry day, once cleared out',
  cleanMinutes: 'Clearing out',
  cutMinutes: 'Cutting back',
  hygiene: 'Worth of the disease that goes with the leaves',
  nextYear: 'Worth of the patch next year',
  lostShare: 'Share of that lost by cutting green leaves',
  flowerUnits: 'Heat units from flower to ripe',
  unitsAhead: 'Heat units of tomorrow',
  wetDays: 'Chance that tomorrow is wet',
  coversSave: 'Share of a frost’s loss that covers save',
};

const figureSources: Readonly<
  Record<'told' | 'farm-file' | 'measured' | 'station' | 'usual', string>
> = {
  told: 'told by you',
  'farm-file': 'farm file',
  measured: 'measured here',
  station: 'station',
  usual: 'ours, from no source',
};

const cutBackScreens = {
  money: gain,
  title: 'When to stop and clear',
  of: (name: string) => `When to stop and clear ${name}`,
  none: 'The farm has no patch of strawberries.',
  cannot: (missing: readonly string[]) =>
    `Cannot say without ${listed(missing.map(missingLabel))}.`,
  advice: {
    wait: 'It is not the time to clear: the patch grows towards its crop.',
    'pick-on': 'Pick on.',
    'pick-last': 'Pick what is ripe, then stop and clear out.',
    clean: 'Clear out first, then pick on.',
    'clear-out': 'Stop picking and clear out.',
    'cut-back': 'Cut back now.',
    unknown: 'Cannot say yet.',
  },
  window: (from: string, to: string, best: string, value: string) =>
    from === to
      ? `Best to stop on ${best}. Until then about ${value} is to be expected, all costs paid.`
      : `Best to stop from ${from} to ${to}. Until ${best} about ${value} is to be expected, all costs paid.`,
  windowNow: (value: string) =>
    `Best to stop today. What can be picked now is worth about ${value}, all costs paid.`,
  nearly: (day: string) => `Stopping on ${day} would bring nearly as much.`,
  reasons: {
    'nothing-left': 'Nothing was counted that could still be picked.',
    'not-worth': 'No picking from now on is worth its cost.',
    'rest-not-worth':
      'What is left after that costs more in frost, rot and work than it is likely to bring.',
    'picked-out': 'By then all that was counted has ripened.',
  },
  tonight: 'The first night goes by tonight’s forecast, the others by the odds of the season.',
  season:
    'All nights go by the odds of the season: there is no forecast of tonight for this patch.',
  frostFirst: (limit: string) =>
    `If a night of ${limit} or below is forecast sooner, pick all that can be sold the evening before; afterwards there is nothing to wait for.`,
  picture: 'Still to gain, and lost by waiting, day by day',
  key: 'Solid line: still to gain. Dashed line: lost by then to frost, rot and holding on. Band: the days to stop.',
  gainLabel: 'to gain',
  lostLabel: 'lost',
  summary: (gainNow: string, gone: string, day: string) =>
    `Today ${gainNow} is still to gain. Waiting until ${day} is likely to lose ${gone} of what hangs.`,
  summaryNow: (gone: string, day: string) =>
    `Waiting until ${day} is likely to lose ${gone} of what hangs.`,
  table: 'Day by day as a table',
  columns: {
    day: 'Day',
    get ripe() {
      return `Ripens ${weightUnit()}`;
    },
    units: 'Heat units',
    daylight: 'Daylight h',
    frost: 'Frost that night %',
    survives: 'No frost by then %',
    wet: 'Wet day %',
    toGain: 'Still to gain',
    lost: 'Lost by then',
  },
  shortDays: (day: string) =>
    `Days are shorter than 10 h from ${day}: fruit ripens later than heat units say.`,
  changes: 'What would change it',
  change: {
    'price-below': (value: string, day: string) =>
      `If the price fell below ${value} a ${kilogramWord()}, the best day to stop would be ${day}.`,
    'price-above': (value: string, day: string) =>
      `If the price rose above ${value} a ${kilogramWord()}, it would be ${day}.`,
    'frost-sooner': (value: string, day: string) =>
      `If frosts were to be expected ${value} days sooner, it would be ${day}.`,
    wetter: (value: string, day: string) => `If ${value} of days were wet, it would be ${day}.`,
  },
  unchanged: 'No price, earlier frost or wetter weather within reach would change the day.',
  ways: 'The ways compared',
  way: {
    keep: 'Pick on as it is',
    clean: 'Clear out first',
    cut: 'Cut back now',
  },
  wayUnknown: {
    clean: 'To compare clearing out, tell below how much less rots then.',
    cut: 'To compare cutting back, tell below what the patch is worth next year.',
  },
  care: 'Care',
  caution: [
    'The usual autumn work is to take out runners, dead and spotted leaves and rotten fruit. Keep green leaves until they lie flat and redden: plants that had lost their leaves did not harden against cold in growth chambers (Boyce, in Penn State 2015).',
    'Cutting to the crown is offered only within four weeks of the last picking of a June-bearing crop, or after signs of dormancy, or because you say so.',
  ],
  mayCut: {
    renovation: 'Cutting back is offered: the last picking was less than four weeks ago.',
    dormant: 'Cutting back is offered: the plants are dormant.',
    grower: 'Cutting back is offered because you said so. It is on record.',
  },
  mayNot: 'Cutting back is not offered now.',
  assumed: 'What it rests on',
  figure: (what: string) => figureNames[what] ?? plain(what),
  figureFrom: figureSources,
  count: {
    title: 'What hangs there',
    last: (day: string, who: string) =>
      who === 'file' ? `Counted on ${day}, from a file.` : `Counted on ${day} by ${who}.`,
    never: 'Nobody has counted yet.',
    line: (stage: string, kg: string, ripe: string | null) =>
      `${kg} ${stage}${ripe === null ? '' : `, ripe about ${ripe}`}`,
    stages: { ripe: 'ripe', turning: 'turning', green: 'green', flower: 'in flower' },
    stage: 'Stage',
    get kg() {
      return weightUnit();
    },
    flowered: 'Flowers tagged on',
    enter: 'Enter a count',
    hint: 'A guess by eye is enough. Of flowers, tell the weight they are expected to bear. Earlier counts are kept.',
    add: 'Another line',
    drop: 'Leave out this line',
    send: 'Keep this count',
    sending: 'Sending…',
    kept: 'The hub has kept the count.',
    failed: (sentence: string) => `Not kept: ${sentence}`,
    lineName: (n: number) => `Line ${n}`,
  },
  terms: {
    title: 'Your own figures',
    hint: 'Left empty, the farm file speaks, or a usual figure of ours.',
    percent: (label: string) => `${label}, %`,
    minutes: (label: string) => `${label}, minutes`,
    money: (label: string, currency: string) => `${label}, ${currency}`,
    units: (label: string) => `${label}, ${degree()}${HARD}d`,
    bearing: 'The plants bear',
    june: 'once, in June',
    ever: 'on and on until autumn',
    lastPicking: 'Last picking on',
    leaves: 'The leaves lie flat and are red',
    insists: 'I want it cut back all the same',
    untold: 'not told',
    send: 'Keep these figures',
    kept: 'The hub has kept the figures.',
  },
  trial: {
    title: 'Tried on past autumns',
    what: 'Each past autumn is gone through day by day with what the other years alone would have told, and with a patch in which as much comes into flower each week.',
    start: 'Try it on past autumns',
    again: 'Try again',
    cancel: 'Stop trying',
    running: (done: number, of: number) => `${done} of ${of} autumns tried…`,
    canceled: 'Stopped before the end.',
    failed: (why: string) =>
      missingLabels[why] === undefined
        ? `It failed: ${why}`
        : `Cannot say without ${missingLabel(why)}.`,
    rule: (t: Trial, within: number) =>
      `In ${counted(t.n, 'autumn')} this rule would have stopped within ${within} days before the frost in ${t.near}, earlier in ${t.early}, and the frost would have come first in ${t.late}${rest(t)}; on average ${t.money} a season.`,
    average: (t: Trial, day: string, within: number) =>
      `Stopping on the average date of the frost, about ${day}: within ${within} days before it in ${t.near}, earlier in ${t.early}, frost first in ${t.late}${rest(t)}; ${t.money} a season.`,
    foresight: (value: string) => `Somebody who knew the date would have made ${value}.`,
    years: 'Year by year',
    columns: { season: 'Season from', stop: 'Stopped', frost: 'Frost', money: 'Made' },
    noFrost: 'none',
  },
};

type Trial = { n: number; near: number; early: number; late: number; money: string };
const rest = ({ n, near, early, late }: Trial) =>
  n - near - early - late > 0 ? `; in ${n - near - early - late} none came by midwinter` : '';

/** What keeps the store from keeping things, in a sentence and what to do about it. */
// What crops, places and pickings earn.

type WorthMoney = { readonly money: string; readonly wage: number };
type WorthRangeSaid = {
  readonly n: number;
  readonly ratio: number;
  readonly low: number | null;
  readonly high: number | null;
};
const yearSeasonNames: Readonly<Record<YearSeason, string>> = {
  winter: 'winter',
  spring: 'spring',
  summer: 'summer',
  autumn: 'autumn',
};
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
/** An amount of money with as many digits as it bears: 0.05, 8.2, 24. */
const amountDigits = (value: number) =>
  value === 0 || Math.abs(value) >= 10 ? 0 : Math.abs(value) < 1 ? 2 : 1;
const moneyNumber = (value: number, digits = amountDigits(value)) => number(value, digits);
const moneySaid = (value: number, currency: string) => `${moneyNumber(value)}${HARD}${currency}`;
/** `between 17 and 24 EUR`; of one or two without a range: `about 20 EUR`. */
const rangeSaid = ({ ratio, low, high }: WorthRangeSaid, currency: string) => {
  if (low === null || high === null) return `about ${moneySaid(ratio, currency)}`;
  const digits = Math.min(amountDigits(low), amountDigits(high));
  const [a, b] = [number(low, digits), number(high, digits)];
  return a === b ? `about ${a}${HARD}${currency}` : `between ${a} and ${b}${HARD}${currency}`;
};
const ofBatches = (n: number, of: 'batches' | 'pickings') =>
  of === 'batches' ? `${n} ${n === 1 ? 'batch' : 'batches'}` : counted(n, 'picking');

/** `Basil in Long House`, `Basil, sown in spring`, `Spring, pickings`. */
export function worthGroupName(group: {
  readonly of: 'batches' | 'pickings';
  readonly crop: string | null;
  readonly place: string | null;
  readonly season: YearSeason | null;
}): string {
  const { of, crop, place, season } = group;
  const when = season === null ? null : yearSeasonNames[season];
  const done = of === 'batches' ? 'sown' : 'picked';
  if (crop !== null && place !== null) return `${crop} in ${inText(place)}`;
  if (crop !== null && when !== null) return `${crop}, ${done} in ${when}`;
  if (crop !== null) return of === 'batches' ? crop : `${crop}, picking`;
  if (place !== null) return of === 'batches' ? place : `${place}, picking`;
  return `${capital(done)} in ${when ?? notKnown}`;
}

/** One sentence: whether it pays, by how much, or what is missing to tell. */
export function worthWords(
  group: {
    readonly name: string;
    readonly of: 'batches' | 'pickings';
    readonly verdict: 'pays' | 'does-not-pay' | 'cannot-tell';
    readonly counted: number;
    readonly leftOut: number;
    readonly moreNeeded: number | null;
    readonly perHour: WorthRangeSaid | null;
  },
  { money: currency, wage }: WorthMoney,
): string {
  const { name, of, verdict, counted: n, leftOut, moreNeeded, perHour } = group;
  const out =
    leftOut === 0 ? '' : ` ${capital(ofBatches(leftOut, of))} left out: something is not known.`;
  const more = moreNeeded === null ? '' : ofBatches(moreNeeded, of).replace(' ', ' more ');
  if (perHour === null || n < 3 || verdict === 'cannot-tell') {
    if (perHour === null || perHour.low === null)
      return `${name}: cannot tell yet (${ofBatches(n, of)} with everything known), at least ${more}.${out}`;
    const hope =
      moreNeeded === null
        ? 'It lies too near the wage for any number of them to tell.'
        : `About ${more} may tell.`;
    return `${name}: cannot tell yet, ${rangeSaid(perHour, currency)} an hour over ${ofBatches(n, of)}, and an hour is to bring ${moneySaid(wage, currency)}. ${hope}${out}`;
  }
  const said = `${rangeSaid(perHour, currency)} an hour over ${ofBatches(n, of)}`;
  return verdict === 'pays'
    ? `${name}: pays, ${said}.${out}`
    : `${name}: does not pay, ${said}, and an hour is to bring ${moneySaid(wage, currency)}.${out}`;
}

/** Whether to go on with a crop, the price that would make it pay, and what else the space could carry. */
export function stopWords(
  stop: {
    readonly name: string;
    readonly of: 'batches' | 'pickings';
    readonly answer: 'go-on' | 'stop' | 'cannot-tell';
    readonly perHour: WorthRangeSaid | null;
    readonly priceToPay: WorthRangeSaid | null;
    readonly price: number | null;
    readonly instead: {
      readonly name: string;
      readonly perTrayDay: WorthRangeSaid;
      readonly brings: 'more' | 'less' | 'cannot-tell';
    } | null;
  },
  {
    money: currency,
    wage,
    perTrayDay,
  }: WorthMoney & { readonly perTrayDay: WorthRangeSaid | null },
): string[] {
  const { name, of, answer, perHour, priceToPay, price, instead } = stop;
  const hours =
    perHour === null
      ? ''
      : ` An hour on it brings ${rangeSaid(perHour, currency)}; it is to bring ${moneySaid(wage, currency)}.`;
  const now =
    price === null ? '' : ` It fetches ${moneySaid(perWeight(price), currency)} by the farm file.`;
  return [
    {
      'go-on': `${name}: go on.${hours}`,
      stop: `${name}: ${of === 'batches' ? 'stop growing it' : 'stop picking it'}, or change its price, work or losses.${hours}`,
      'cannot-tell': `${name}: nobody can tell yet whether to stop.${hours}`,
    }[answer],
    ...(priceToPay === null
      ? []
      : [
          `It pays its hours at ${rangeSaid(ofWeight(priceToPay), currency)} a ${kilogramWord()}.${now}`,
        ]),
    ...(of === 'pickings'
      ? ['What planting and looking after the patch takes is not in it: it is spent either way.']
      : instead === null
        ? ['No other crop has three batches yet that tell what the space could carry.']
        : [
            `For each tray and day it brings ${perTrayDay === null ? notKnown : rangeSaid(perTrayDay, currency)}; ${instead.name} brings ${rangeSaid(instead.perTrayDay, currency)} over ${ofBatches(instead.perTrayDay.n, 'batches')}${
              {
                more: ': more.',
                less: ': less.',
                'cannot-tell': '. Which is more nobody can tell yet.',
              }[instead.brings]
            }`,
          ]),
  ];
}

const adviceSaid: Readonly<Record<string, string>> = {
  wait: 'it is not the time to clear',
  'pick-on': 'pick on',
  'pick-last': 'pick what is ripe, then stop',
  clean: 'clear out first, then pick on',
  'clear-out': 'stop and clear out',
  'cut-back': 'cut back',
};

/** Whether the next picking is worth its hours, with what it rests on. */
export function pickOnWords(
  asked: {
    readonly name: string;
    readonly placeName: string;
    readonly pickings: number;
    readonly leftOut: number;
    readonly next: string;
    readonly verdict: 'pays' | 'does-not-pay' | 'cannot-tell';
    readonly perHour: { expected: number; low: number; high: number } | null;
    readonly speed: { expected: number; low: number; high: number } | null;
    readonly breakEvenSpeed: number | null;
    readonly planner: { advice: string; best: string; survives: number | null } | null;
  },
  about: WorthMoney & {
    readonly perKilogram: number | null;
    readonly missing: readonly ('price' | 'lost' | 'minutes')[];
  },
): string[] {
  const { name, placeName, pickings, leftOut, next, verdict, perHour, speed, planner } = asked;
  const { money: currency, wage, perKilogram, missing } = about;
  const where = `${name} in ${inText(placeName)}`;
  const four = Math.max(0, 4 - (pickings - leftOut));
  const kgHour = (value: number) => withUnit(value, 'kg');
  const first =
    perHour === null
      ? `${where}: cannot tell yet whether to pick on${four > 0 ? `: ${four} more ${four === 1 ? 'picking' : 'pickings'} with weight, losses and minutes ${four === 1 ? 'is' : 'are'} needed` : ''}.`
      : {
          pays: `${where}: pick on. The picking on ${shortDay(next)} pays its hours.`,
          'does-not-pay': `${where}: stop picking. The picking on ${shortDay(next)} would not pay its hours.`,
          'cannot-tell': `${where}: nobody can tell whether the picking on ${shortDay(next)} pays its hours.`,
        }[verdict];
  return [
    first,
    ...(speed === null || perHour === null
      ? []
      : [
          `It is likely to yield between ${bareWeight(speed.low)} and ${kgHour(speed.high)} an hour, ${rangeSaid({ n: 4, ratio: perHour.expected, low: perHour.low, high: perHour.high }, currency)}.`,
        ]),
    ...(asked.breakEvenSpeed === null || perKilogram === null
      ? []
      : [
          `Below ${kgHour(asked.breakEvenSpeed)} an hour it does not pay: a ${kilogramWord()} leaves ${moneySaid(perWeight(perKilogram), currency)}, an hour is to bring ${moneySaid(wage, currency)}.`,
        ]),
    ...(leftOut === 0
      ? []
      : [
          `${ofBatches(leftOut, 'pickings')} of ${pickings} left out, without ${listed(missing.map((gap) => worthGapNames[gap]))}.`,
        ]),
    ...(planner === null
      ? []
      : [
          `The planner of the patch: ${adviceSaid[planner.advice] ?? planner.advice}, best until ${shortDay(planner.best)}${planner.survives === null ? '' : `; ${chance(planner.survives)} that no frost takes the fruit before ${shortDay(next)}`}.`,
        ]),
  ];
}

const worthGapNames: Readonly<Record<WorthGap, string>> = {
  lost: 'what was sorted out',
  price: 'a price',
  seed: 'the cost of seed',
  other: 'other costs',
  sowing: 'minutes of sowing',
  tending: 'minutes of looking after it',
  moving: 'minutes of moving',
  cutting: 'minutes of cutting',
  packing: 'minutes of packing',
  minutes: 'minutes',
};
export const worthUnitWords = (missing: readonly WorthGap[]): string =>
  missing.length === 0 ? '' : `Not known: ${listed(missing.map((gap) => worthGapNames[gap]))}.`;

/** How money is counted, said once. */
export const worthHow = ({ lots }: { readonly lots: boolean }): string[] => [
  'A batch counts once it has ended, a batch that brought nothing like any other. One with anything unknown is left out, never taken for zero.',
  'Earnings are what was sold times its price, less seed and other costs, before any wage. Hours are those written down, else what the farm file tells for a tray, a week or a kilogram.',
  'Sold is what was cut less what was sorted out.',
  lots
    ? 'What was thrown out of the store is taken off as well: lots tell no batch, so all that was cut of a crop in a season bears the same share. What was sorted out before is in no lot, so nothing is taken off twice.'
    : 'No lot of these crops has left the store yet, so nothing is taken off for the store.',
  'A picking bears no seed and no space: it says whether picking pays its hours, not whether the patch does.',
  'A batch stands for the place where it stood longest and for the season in which it was sown. Trays of one sowing are one batch, wherever they were carried.',
  'Ranges hold 8 times in 10, if batches go on as they did. With fewer than about ten they are rough.',
];

const worthScreens = {
  title: 'Worth its hours',
  lead: 'What an hour, a tray and a day of space have earned, from what was written down.',
  empty:
    'Nothing can be told yet. Write down of each batch what was sown, cut and sorted out, and the minutes of each work; of each picking its weight, what was sorted out, and its minutes. Three batches give the first answer.',
  growing: (n: number) => `${ofBatches(n, 'batches')} still growing: counted once ended.`,
  toBatches: 'Batches',
  toPicks: 'Pickings',
  answers: 'In short',
  stops: 'Go on, or stop',
  pickOns: 'Pick on, or not',
  noPickOn: 'Nothing has been picked this season.',
  picture: 'The same as a picture',
  per: 'For each',
  perHour: 'hour',
  perTray: 'tray',
  perTrayDay: 'tray and day',
  by: 'By',
  bys: { crop: 'crop', place: 'place', season: 'season', 'crop-place': 'crop and place' },
  wageLine: (wage: string) => `wage ${wage}`,
  noneToDraw: 'Nothing with a figure to draw here.',
  pictureLabel: (by: string, per: string, currency: string) =>
    `Earnings in ${currency} for each ${per}, by ${by}`,
  key: 'Dot: earned so far. Line: between these 8 times in 10. A ring without a line: fewer than three, so no range is told. Square dots are pickings.',
  wageKey: 'Dashed: what an hour is to bring.',
  columns: {
    name: 'What',
    n: 'Batches or pickings',
    ratio: 'Earned',
    low: 'From',
    high: 'To',
    verdict: 'Answer',
  },
  verdicts: {
    pays: 'pays',
    'does-not-pay': 'does not pay',
    'cannot-tell': 'cannot tell',
  },
  groupTitle: 'Figures of each crop and place',
  groupColumns: {
    name: 'What',
    n: 'Counted of',
    trays: 'Trays',
    hours: 'Hours',
    get kg() {
      return `Cut ${weightUnit()}`;
    },
    lost: 'Lost %',
    get perTrayKg() {
      return `${weightUnit()} a tray`;
    },
    earned: 'Earned',
    get breakEven() {
      return `Pays from, a ${weightUnit()}`;
    },
  },
  countedOf: (n: number, all: number) => `${n} of ${all}`,
  units: 'Batch by batch',
  showAll: (n: number) => `Show all ${n}`,
  unitColumns: {
    name: 'What',
    when: 'Ended',
    get kg() {
      return `Cut ${weightUnit()}`;
    },
    get lost() {
      return `Lost ${weightUnit()}`;
    },
    price: 'Price',
    seed: 'Seed',
    other: 'Other',
    minutes: 'Minutes',
    earned: 'Earned',
    perHour: 'An hour',
  },
  unitName: (name: string, place: string) => `${name}, ${place}`,
  fill: 'Fill in',
  moreVague: (n: number) => `${n} more with something not known`,
  fillWhat: (name: string, day: string) => `Fill in: ${name}, ${day}`,
  froms: {
    written: 'written down',
    'farm-file': 'from the farm file',
    both: 'partly from the farm file',
    lots: 'from lots thrown out',
    'not-needed': 'does not apply',
    unknown: 'not known',
  },
  marks: {
    written: '',
    'farm-file': 'f',
    both: 'p',
    lots: 'l',
    'not-needed': '',
    unknown: '',
  },
  marksKey: 'f: from the farm file. p: partly. All else was written down.',
  how: 'How it is counted',
  amount: moneyNumber,
  amountIn: moneySaid,
  range: rangeSaid,
};

const pickScreens = {
  title: 'Pickings',
  enter: 'Enter a picking',
  where: 'Where',
  elsewhere: 'Elsewhere, or another crop',
  place: 'Place',
  crop: 'Crop',
  get weight() {
    return `Picked, in ${weightUnit()}`;
  },
  lastWeights: 'Weights of last time',
  minutes: 'Minutes, with walk and sorting',
  notTold: 'Not told',
  min: (n: number) => withUnit(n, 'min', 0),
  get lost() {
    return `Sorted out, in ${weightUnit()}`;
  },
  nothing: 'Nothing',
  share: (percent: number, kg: number) => `${percent}${HARD}%: ${kilograms(kg)}`,
  lostOther: 'Another weight',
  more: 'More about it',
  walk: 'Of that walking, minutes',
  pickers: 'Pickers',
  pickersHint: 'Minutes are those of each picker.',
  price: (currency: string) => `Price of a ${kilogramWord()}, ${currency}`,
  priceHint: 'Left empty, the farm file’s.',
  at: 'Picked at',
  note: 'Note',
  send: 'Store it',
  stored: (kg: number, crop: string, place: string) =>
    `The hub has stored: ${kilograms(kg)} ${crop}, ${place}.`,
  corrected: 'The hub has stored the correction; its history keeps both.',
  list: 'Latest pickings',
  none: 'No picking is written down yet.',
  line: (kg: number, crop: string, place: string) => `${kilograms(kg)} ${crop}, ${place}`,
  facts: (told: {
    time: string;
    lost: number | null;
    minutes: number | null;
    pickers: number;
    who: string;
  }) =>
    [
      told.time,
      told.lost === null ? 'sorted out: not known' : `sorted out ${kilograms(told.lost)}`,
      told.minutes === null
        ? 'minutes: not known'
        : `${number(told.minutes, 0)}${HARD}min${told.pickers > 1 ? ` of ${told.pickers} pickers` : ''}`,
      told.who === 'file' ? 'from a file' : `by ${told.who}`,
    ].join(' · '),
  fill: 'Fill in or correct',
  takeBack: 'Take it back',
  takenBack: 'Taken back; its history keeps both.',
  file: 'All of them as a file (CSV)',
  worth: 'Worth its hours',
  noPlace: 'The farm file describes no place to pick from.',
};

export const storeTrouble: Readonly<
  Record<'full' | 'read-only' | 'damaged' | 'gone' | 'failing', string>
> = {
  full: 'The card is full: new readings are not kept. Make room on it; the hub then goes on by itself.',
  'read-only':
    'The card lets nothing be written: new readings are not kept. Such a card is often worn out. Put in another and restore the last backup.',
  damaged: 'The store is damaged: new readings are not kept. The hub is saving what can be read.',
  gone: 'The file of the store is gone: new readings are not kept. The hub is writing it again.',
  failing:
    'The card does not answer properly: new readings are not kept. Have another card and the last backup ready.',
};
/** Said on the pages while it lasts, and as an alarm. */
export const storeAlarm = 'Rules and alarms go on from memory.';
export const storeRefuses = 'Expected room to keep this, got a store in trouble: nothing was kept';

const megabytes = (bytes: number) =>
  bytes >= 1e9 ? `${number(bytes / 1e9)}\u00a0GB` : `${number(bytes / 1e6)}\u00a0MB`;

export const keepingWords = {
  title: 'Keeping',
  notKept: 'Nothing is kept now',
  goesOn: storeAlarm,
  size: (bytes: number, free: number) =>
    `The store takes ${megabytes(bytes)}; ${megabytes(free)} are free on its card.`,
  raw: (days: number, since: string | null) =>
    `Single readings are kept for ${days} days${since === null ? '' : `, now from ${since} on`}. Hours, days and the record are kept for ever.`,
  noBackup: 'No folder for backups is set. Without one, a broken card takes everything with it.',
  backup: (old: number) => `The last good backup was made ${age(old)}.`,
  backupNone: 'No backup has been made yet.',
  backupFault: (sentence: string) => `The last backup failed: ${sentence}`,
  backupAbsent: 'The folder for backups is not there: is the stick in?',
  backupHere: 'The backups are on the same card as the store: they go when it goes.',
  old: 'That is more than two days ago.',
  mended: (old: number, readings: number, aside: string) =>
    `The store was damaged and was mended ${age(old)}: ${readings} readings could be saved. The damaged file is kept as ${aside}.`,
  mendedFrom: (backup: string) => `What could not be read came from the backup ${backup}.`,
  mendedLost: 'There was no backup to take the rest from: what could not be read is lost.',
  backUpNow: 'Back up now',
  backingUp: (share: number) =>
    share < 1
      ? `A backup is being written: ${number(Math.floor(100 * share), 0)}${HARD}%…`
      : 'The backup is written and is being looked over…',
  backedUp: 'The backup is made, and was looked over.',
  backUpFailed: (sentence: string) => `No backup was made: ${sentence}`,
};

// The plan of the coming weeks, in English.

/** Why some of what is wanted is in no sowing, as it follows "because". */
const shortReasons: Readonly<Record<ShortReason, (crop: string) => string>> = {
  'no-past-batches': (crop) =>
    `nobody knows how long ${crop} takes: no batch has ended, and the farm file tells no days`,
  'no-weight': (crop) => `nobody knows what a tray of ${crop} gives`,
  'too-late': (crop) => `it is too late: ${crop} sown today would not be ready`,
  'no-room': () => 'every place that suits is full in those days',
  'beyond-the-days': () => 'it lies beyond the weeks that are planned',
  'no-place': () => 'no place tells how many trays it holds',
  'too-cold': (crop) => `every place is too cold for ${crop} in those weeks`,
  'too-warm': (crop) => `every place is too warm for ${crop} in those weeks`,
  'no-climate': () => 'nothing tells yet how warm the places will be',
  little: () => 'it is too little for a sowing of its own',
};
type Short = { readonly crop: string; readonly kg: number; readonly reason: ShortReason };
export const shortWords = ({ crop, kg, reason }: Short): string =>
  `Short by ${weight(kg)} of ${lowerFirst(crop)}, because ${shortReasons[reason](lowerFirst(crop))}.`;

type SowingSaid = {
  readonly crop: string;
  readonly trays: number;
  readonly place: string;
  readonly kg: number;
  readonly delivery: string;
  readonly ready: number | null;
  readonly tooEarly: number | null;
  readonly batches: number;
  readonly late: boolean;
  readonly second: { readonly day: string; readonly trays: number } | null;
};
/** One sowing of the plan. */
export function sowingWords(one: SowingSaid): string {
  const said = [`For ${shortDayInText(one.delivery)}, about ${weight(one.kg)}.`];
  if (one.late) said.push('Its right day is past.');
  if (one.ready !== null) said.push(`Ready in time: ${chance(one.ready)}.`);
  else if (one.batches === 0) said.push('By the days told in the farm file; no chance is known.');
  else said.push('Too few batches have ended for a chance.');
  if (one.second !== null && one.tooEarly !== null)
    said.push(
      `Over before that day: ${chance(one.tooEarly)}. Or two smaller sowings: ${one.trays - one.second.trays} on this day, and ${one.second.trays} on ${shortDayInText(one.second.day)}.`,
    );
  return said.join(' ');
}

/** Those that are short for the same reason are said in one sentence, where it reads well of many. */
function shortsTogether(shorts: readonly Short[]): string[] {
  const apart: ReadonlySet<ShortReason> = new Set(['no-past-batches', 'no-weight']);
  const groups = new Map<string, Short[]>();
  for (const one of shorts) {
    const key = apart.has(one.reason) ? `${one.reason} ${one.crop}` : one.reason;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map((group) => {
    const [first] = group;
    if (first === undefined || group.length === 1) return first ? shortWords(first) : '';
    const amounts = group.map(({ kg, crop }) => `${weight(kg)} of ${lowerFirst(crop)}`);
    const names = group.map(({ crop }) => lowerFirst(crop));
    return `Short by ${listed(amounts)}, because ${shortReasons[first.reason](listed(names))}.`;
  });
}

type DeliverySaid = {
  readonly state: 'nothing' | 'covered' | 'to-sow' | 'short';
  readonly shorts: readonly Short[];
  readonly chanceShort: number | null;
};
/** Whether a delivery is provided for. */
export function deliveryWords({ state, shorts, chanceShort }: DeliverySaid): string {
  if (state === 'nothing') return 'Nothing is wanted.';
  const risk =
    chanceShort === null
      ? 'Cannot say how likely it is to be short: too few batches have ended.'
      : `Chance of being short: ${chance(chanceShort)}.`;
  if (state === 'short') return shortsTogether(shorts).join(' ');
  return `${state === 'covered' ? 'Covered by what grows and what is stored.' : 'Covered, once it is sown.'} ${risk}`;
}

/** Where a part of a delivery comes from. */
export const supplyWords = (source: {
  readonly kind: 'batch' | 'lot';
  readonly id: string;
  readonly kg: number;
  readonly place: string;
  readonly day: string | null;
}): string =>
  source.kind === 'lot'
    ? `${weight(source.kg)} stored in ${inText(source.place)}`
    : `${weight(source.kg)} growing in ${inText(source.place)}${source.day === null ? '' : `, ready about ${shortDayInText(source.day)}`}`;

/** How full a place will be. */
export const roomWords = (free: readonly number[], capacity: number): string => {
  const least = Math.min(...free.slice(0, 14));
  const now = free[0] ?? 0;
  return `${now} of ${capacity} trays are free${least === now ? '' : `, ${least} at the least in the next two weeks`}.`;
};

export const planMissing = {
  deliveries: 'delivery days in the farm file (deliveries)',
  wants: 'weights wanted on the delivery days (wants), in the farm file or entered below',
  places: 'a tunnel with its capacity in trays in the farm file',
};

type Grown = {
  readonly crop: string;
  readonly trays: number;
  readonly place: string;
  readonly kg: number | null;
};
/** Events of the calendar. */
export const calendarWords = {
  name: (farm: string) => `${farm}: sowing and harvest`,
  about:
    'What the plan asks to be sown, what is expected to be ready, and the delivery days. It is made anew as batches grow.',
  sow: (one: Omit<SowingSaid, 'second' | 'tooEarly' | 'batches'>) => ({
    summary: `Sow ${counted(one.trays, 'tray')} of ${lowerFirst(one.crop)} in ${one.place}`,
    description: [
      `For ${dayInText(one.delivery)}: about ${weight(one.kg)}.`,
      ...(one.late ? ['Its right day is past.'] : []),
      ...(one.ready === null ? [] : [`Ready in time: ${chance(one.ready)}.`]),
    ].join(' '),
  }),
  ready: ({ crop, trays, place, kg }: Grown) => ({
    summary: `${crop} ready about now: ${counted(trays, 'tray')} in ${place}`,
    description: `${kg === null ? '' : `About ${weight(kg)}. `}These are the days in which it is expected to be ready, eight times in ten.`,
  }),
  harvest: ({ crop, trays, place, kg, delivery }: Grown & { readonly delivery: string }) => ({
    summary: `Harvest ${lowerFirst(crop)} in ${place} for ${shortDayInText(delivery)}`,
    description: `${counted(trays, 'tray')} stand there; ${weight(kg ?? 0)} are wanted of them.`,
  }),
  delivery: (
    wants: readonly { readonly name: string; readonly kg: number }[],
    shorts: readonly Short[],
  ) => ({
    summary:
      wants.length === 0
        ? 'Delivery day'
        : `Delivery: ${wants.map(({ name, kg }) => `${weight(kg)} ${lowerFirst(name)}`).join(', ')}`,
    description: shorts.map(shortWords).join(' '),
  }),
  open: 'A calendar program follows this address and nothing else: whoever has it can read the plan, and no more. Renew it when somebody should not have it any longer.',
  plain:
    'The hub speaks without TLS: anybody on the farm’s network can read the address and the plan on their way. Away from that network the address does not answer, unless you let it.',
  closed: 'No calendar program can read the plan yet.',
};

/** Lines of the week sheet. */
export const weekWords = {
  sow: (one: { crop: string; trays: number; place: string; delivery: string; late: boolean }) =>
    `${counted(one.trays, 'tray')} of ${lowerFirst(one.crop)} in ${one.place}, for ${shortDayInText(one.delivery)}${one.late ? ' (late)' : ''}`,
  harvest: (one: { crop: string; trays: number; place: string; delivery: string; kg: number }) =>
    `${weight(one.kg)} ${lowerFirst(one.crop)} (${counted(one.trays, 'tray')}, ${one.place}), for ${shortDayInText(one.delivery)}`,
  deliver: (name: string, kg: number) => `${weight(kg)} ${lowerFirst(name)}`,
  short: (crop: string, kg: number) => `short by ${weight(kg)} of ${lowerFirst(crop)}`,
  frost: (place: string, low: number, p: number) =>
    `Night before, ${place}: low about ${temperature(low)}, frost ${chance(p)}`,
  frostAhead: (place: string, days: number, p: number) =>
    `Frost within ${counted(days, 'day')} at ${place}: ${chance(p)}.`,
  unsown:
    'Sowings and harvests are as the plan has them now; it is made anew as batches grow and weights change.',
};

const planScreens = {
  title: 'Sowing plan',
  weeks: (n: number) => `The next ${n} weeks`,
  asOf: (age: string) => `Made ${age}. It is made anew when batches, lots or weights change.`,
  missing: (things: readonly string[]) => `Cannot plan without ${listed(things)}.`,
  toSow: 'To sow',
  thisWeek: 'In the next seven days',
  later: (n: number) => `Later (${counted(n, 'sowing')})`,
  sown: 'Sown',
  sownOf: (what: string, place: string) => `Sown: ${what} in ${place}`,
  sownSaid: (what: string) => `The hub has kept: ${what}, sown now, as a batch.`,
  saidSown: {
    done: 'Done, as you said, and not entered yet: enter it, so that the plan counts on it.',
    no: 'You said that it will not be sown: you are not asked again. The delivery goes without it.',
  },
  sownWhy: '“Sown” enters the trays as a batch, so that the plan counts on them.',
  nothingNow: 'Nothing has to be sown in the next seven days.',
  nothingAtAll: 'Nothing has to be sown in these weeks.',
  trays: (n: number, crop: string) => `${counted(n, 'tray')} of ${lowerFirst(crop)}`,
  inPlace: (place: string) => `in ${place}`,
  late: 'Late',
  day: shortDayInText,
  longDay: dayInText,
  deliveries: 'Deliveries',
  laterDeliveries: (n: number, short: number) =>
    `Later deliveries (${n}${short === 0 ? '' : `, ${short} of them short`})`,
  noDeliveries: 'No delivery days in these weeks.',
  states: {
    nothing: 'Nothing wanted',
    covered: 'Covered',
    'to-sow': 'Covered, once sown',
    short: 'Short',
  },
  weight,
  where: 'Where it comes from',
  toBeSown: (kg: number) => `${weight(kg)} to be sown`,
  change: 'Change',
  changeOf: (name: string, day: string) => `Change ${lowerFirst(name)} on ${shortDayInText(day)}`,
  none: 'None',
  asUsual: (kg: number | null) => (kg === null ? 'Take it back' : `As usual, ${weight(kg)}`),
  usual: (kg: number | null) =>
    kg === null ? 'for this day only' : kg === 0 ? 'usually none' : `usually ${weight(kg)}`,
  by: (who: string) => `said by ${who}`,
  get other() {
    return `Another weight, ${weightUnit()}`;
  },
  store: 'Keep this',
  leave: 'Leave it',
  sending: 'Sending…',
  stored: (name: string, day: string, kg: number) =>
    `The hub has kept: ${kg === 0 ? 'no' : weight(kg)} ${lowerFirst(name)} on ${shortDayInText(day)}.`,
  takenBack: (name: string, day: string) =>
    `The hub has taken back the change of ${lowerFirst(name)} on ${shortDayInText(day)}.`,
  notStored: (sentence: string) => `Not kept: ${sentence}`,
  add: 'Something else is wanted',
  addWhat: 'Crop or mix',
  addDay: 'Day',
  get addKg() {
    return `Weight, ${weightUnit()}`;
  },
  choose: 'Choose…',
  work: 'Work and seed',
  workColumns: { week: 'Week from', trays: 'Trays', minutes: 'Minutes', seed: 'Seed' },
  seed: (value: number, currency: string) => withUnit(value, currency, 2),
  workNote: 'A dash means not told in the farm file (minutes, seed).',
  rooms: 'Room in the houses',
  chance: 'How sure',
  order:
    'The nearest delivery has the room first, and each sowing goes where it stands the fewest days. It is a plan to be read, not the best of all.',
  calendar: {
    title: 'In your calendar',
    make: 'Make an address',
    renew: 'Make a new address',
    stop: 'Close the address',
    renewWhy: 'The one before leads nowhere then.',
    once: 'Copy it now: it is shown this once, and the hub does not keep it in the clear.',
    address: 'Address for a calendar program',
    copy: 'Copy',
    copied: 'Copied.',
    notCopied: 'The browser does not let it be copied: select it and copy it by hand.',
    file: 'Save the calendar as a file',
  },
  sheet: 'Week sheet',
  sheetLink: 'Week sheet, for paper',
};
const weekScreens = {
  title: 'Week sheet',
  range: (from: string, to: string) => `${dayInText(from)} to ${dayInText(to)}`,
  print: 'Print',
  before: 'The week before',
  next: 'The week after',
  now: 'This week',
  columns: {
    day: 'Day',
    sow: 'Sow',
    harvest: 'Harvest',
    deliver: 'Deliver',
    other: 'Frost, tasks',
    who: 'Who',
    minutes: 'Minutes',
  },
  anyDay: 'Open, on no day of this week',
  asOf: (day: string, time: string) => `As of ${day}, ${time}.`,
  none: '–',
  day: (day: string) => shortDayInText(day),
};

// Photos beside entries.

const photoScreens = {
  add: 'Add a photo',
  another: 'Take another photo',
  taken: 'The photo goes with the note.',
  sending: 'Sending…',
  why: 'It is made smaller in this browser first, which also takes off where and when it was taken.',
  bad: 'This picture could not be read here. Try a JPEG or PNG.',
  of: (what: string) => `Photo: ${what}`,
  gone: 'The photo is not on this hub.',
};

// Losses: the log, the strips beside the weather, and what may be said of them.

const lossLooks: Record<LossLook, string> = {
  'grey-mould': 'Grey mould',
  'white-down': 'White down',
  'stem-rot': 'Rot at the stem',
  wilted: 'Wilted',
  frosted: 'Frosted',
  scorched: 'Scorched',
  eaten: 'Eaten',
  leggy: 'Leggy',
  other: 'Something else',
};
/** What it looks like, drawn in words; no diagnosis. */
const lossDrawings: Record<LossLook, string> = {
  'grey-mould': 'grey fur that smokes when knocked, brown and soft under it',
  'white-down': 'whitish or grey down under the leaf, yellow patches on top',
  'stem-rot': 'stem brown and thin at the soil, the plant falls over',
  wilted: 'limp, no spots, soil dry or soaked',
  frosted: 'glassy, then dark and limp after a cold night',
  scorched: 'bleached or crisp edges after a hot day',
  eaten: 'holes, bites, slime or droppings',
  leggy: 'long, pale and thin, not worth selling',
  other: 'none of these',
};
const lossUnitWords = (amount: number, unit: LossUnit): string => {
  const digits = Number.isInteger(amount) ? 0 : 1;
  if (unit === 'share') return withUnit(amount, '%', digits);
  if (unit === 'kg') return kilograms(amount);
  return `${number(amount, digits)}${HARD}${amount === 1 ? 'tray' : 'trays'}`;
};
type LossAmount = Pick<Loss, 'amount' | 'unit' | 'of'>;
const lossAmount = ({ amount, unit, of }: LossAmount): string =>
  `${lossUnitWords(amount, unit)}${of ? ` of ${lossUnitWords(of.amount, of.unit)}` : ''}`;

/** A loss in one line: how much of what, what it looked like, where. */
export const lossWords = (
  told: LossAmount & {
    readonly name: string;
    readonly look: LossLook | null;
    readonly lot: boolean;
  },
): string =>
  `${lossAmount(told)} ${told.name}, ${told.look === null ? 'thrown out' : lossLooks[told.look].toLowerCase()}${told.lot ? ' of a lot' : ''}`;

export const lossFields: Readonly<Record<string, string>> = {
  place: 'place',
  crop: 'crop',
  amount: 'how much',
  unit: 'in',
  of: 'of what stood there',
  look: 'what it looked like',
  day: 'day',
  batch: 'batch',
  note: 'note',
};
export const lossLookName = (look: LossLook): string => lossLooks[look].toLowerCase();
/** An amount as it was corrected, in its unit; and a unit by itself. */
export const lossAmountWords = (amount: number, unit: LossUnit): string =>
  lossUnitWords(amount, unit);
export const lossUnitName = (unit: LossUnit): string =>
  ({ trays: 'trays', kg: weightUnit(), share: '%' })[unit];
export const lossOfWords = (of: NonNullable<Loss['of']>): string =>
  lossUnitWords(of.amount, of.unit);

export function lossEventWords(
  facts:
    | { readonly event: 'entered'; readonly words: string; readonly photo: boolean }
    | { readonly event: 'corrected'; readonly set: readonly string[]; readonly why: string | null }
    | { readonly event: 'photo'; readonly added: boolean }
    | { readonly event: 'undone'; readonly words: string | null },
): string {
  switch (facts.event) {
    case 'entered':
      return `Entered: ${facts.words}${facts.photo ? ', with a photo' : ''}.`;
    case 'corrected':
      return `Corrected${facts.why ? ` (${facts.why})` : ''}: ${listed(facts.set)}.`;
    case 'photo':
      return facts.added ? 'A photo was added.' : 'The photo was withdrawn and deleted.';
    case 'undone':
      return `Taken back: ${facts.words ?? 'an entry'}`;
  }
}
export const sameLossWords = (kg: number, crop: string, room: string, day: string): string =>
  `${withUnit(kg, 'kg')} ${crop} were thrown out of a lot in ${inText(room)} on ${day}`;

/** One place's weeks in words: the same facts as its strip. */
export function lossStripWords(told: {
  readonly name: string;
  readonly wetHours: number | null;
  readonly hotHours: number | null;
  readonly coldHours: number | null;
  readonly unknownHours: number;
  readonly days: number;
  readonly losses: readonly string[];
  readonly coolRoom: boolean;
}): string {
  const hours = (value: number) => withUnit(value, 'h', 0);
  const facts = told.coolRoom
    ? [
        told.hotHours === null
          ? 'no limit told'
          : `${hours(told.hotHours)} with a reading over the limit`,
      ]
    : [
        told.wetHours === null ? 'wet hours not known' : `${hours(told.wetHours)} wet`,
        told.hotHours === null ? 'no heat limit told' : `${hours(told.hotHours)} too hot`,
        told.coldHours === null ? 'no cold limit told' : `${hours(told.coldHours)} too cold`,
      ];
  const gap = told.unknownHours < 0.5 ? '' : `, ${hours(told.unknownHours)} not known`;
  const lost = told.losses.length === 0 ? 'No loss entered.' : `Lost: ${told.losses.join('; ')}.`;
  return `${told.name}, ${told.days} days: ${facts.join(', ')}${gap}. ${lost}`;
}

const exposureLabels: Record<ExposureTerm, string> = {
  'wet-spell': 'A long wet spell',
  'wet-hours': 'Many wet hours',
  'infection-index': 'Grey mould weather',
  'hot-hours': 'Too hot',
  'cold-hours': 'Too cold',
  'cool-room-hours': 'A warm cool room',
};
export const exposureLabel = (what: ExposureTerm): string => exposureLabels[what];
/** Of a case that had it, behind its plural: `weeks after a long wet spell`. */
const exposedCases: Record<ExposureTerm, (cases: string) => string> = {
  'wet-spell': (cases) => `${cases} after a long wet spell`,
  'wet-hours': (cases) => `${cases} after many wet hours`,
  'infection-index': (cases) => `${cases} after grey mould weather`,
  'hot-hours': (cases) => `${cases} after heat`,
  'cold-hours': (cases) => `${cases} after cold`,
  'cool-room-hours': (cases) => `${cases} that lay too warm`,
};
const exposureMeant: Record<ExposureTerm, (limit: number) => string> = {
  'wet-spell': (limit) =>
    `a wet spell of more than ${withUnit(limit, 'h')} in the seven days before: at the best temperature for it grey mould then has an infection event`,
  'wet-hours': (limit) =>
    `more than ${withUnit(limit, 'h', 0)} of wet leaves in the seven days before, 7 a day`,
  'infection-index': (limit) =>
    `a grey mould index (the model is for strawberry flowers) of more than ${number(limit)} in the seven days before`,
  'hot-hours': (limit) =>
    `more than ${withUnit(limit, 'h', 0)} with a reading over the crop’s heat limit in the seven days before`,
  'cold-hours': (limit) =>
    `more than ${withUnit(limit, 'h', 0)} with a reading under what the crop bears in the seven days before`,
  'cool-room-hours': (limit) =>
    `more than ${withUnit(limit, 'h', 0)} over the room’s limit while the lot lay there`,
};
const familyNames: Record<ComparedUnit, string> = {
  'place-week': 'Tunnels, week by week',
  'patch-week': 'Patches, week by week',
  batch: 'Batches',
  lot: 'Lots of the cool room',
};
export const familyName = (unit: ComparedUnit): string => familyNames[unit];
const caseNames: Record<ComparedUnit, readonly [one: string, many: string]> = {
  'place-week': ['week', 'weeks'],
  'patch-week': ['week', 'weeks'],
  batch: ['batch', 'batches'],
  lot: ['lot', 'lots'],
};

/** How many cases there are, and why some say nothing. */
export function familyWords(
  unit: ComparedUnit,
  count: { readonly [basis in 'entered' | 'said-none' | 'no-entry' | 'not-kept']: number },
): string {
  const [one, many] = caseNames[unit];
  const all = count.entered + count['said-none'] + count['no-entry'] + count['not-kept'];
  const cases = (n: number) => `${n} ${n === 1 ? one : many}`;
  if (unit === 'lot')
    return `${cases(all)} that ended: of ${count.entered} something was thrown out.`;
  const parts = [
    `${count.entered} with a loss entered`,
    `${count['said-none']} said to have had none`,
    `${count['no-entry']} without an entry while the log was kept`,
  ];
  const kept = `${cases(all)}${unit === 'batch' ? ' that ended' : ' of single places'}: ${parts.join(', ')}.`;
  return count['not-kept'] === 0
    ? kept
    : `${kept} ${count['not-kept']} ${count['not-kept'] === 1 ? 'is' : 'are'} left out, because nobody kept the log then: no entry is not no loss.`;
}

/** `about 3 times in 100`; never "never". */
export function chanceTimes(p: number): string {
  if (p < 0.001) return 'fewer than 1 time in 1000';
  if (p < 0.0095) return `about ${times(Math.round(p * 1000))} in 1000`;
  if (p > 0.995) return 'nearly always';
  return `about ${times(Math.round(p * 100))} in 100`;
}
const times = (n: number) => `${n} ${n === 1 ? 'time' : 'times'}`;

export type ComparisonTold = Omit<LossComparison, 'words' | 'cases' | 'label'> & {
  readonly of: ComparedUnit;
  readonly tried: number;
};
/** The finding, how sure it is, and what it is not. */
export function comparisonWords(told: ComparisonTold): string[] {
  const { what, of, exposedLost, exposedKept, otherLost, otherKept, tried } = told;
  const [one, many] = caseNames[of];
  const cases = (n: number) => `${n} ${n === 1 ? one : many}`;
  const exposed = exposedLost + exposedKept;
  const others = otherLost + otherKept;
  const split = `${exposedLost} of ${exposed} ${exposedCases[what](many)} lost more than a tenth, ${otherLost} of ${others} others`;
  const tail = 'it does not show the cause.';
  const first =
    told.chance === null
      ? `${split}. Too few for a comparison: counts and nothing else; ${tail}`
      : `${split}; chance alone would do this ${chanceTimes(told.chance)}; ${tail}`;
  const meant = `Meant is ${exposureMeant[what](told.limit)}.`;
  const percent = (share: number) => number(share * 100, 0);
  const range = (span: { least: number; most: number }) =>
    `${percent(span.least)} to ${withUnit(span.most * 100, '%', 0)}`;
  const care =
    told.adjusted === null || tried < 2
      ? `${tried === 1 ? 'One comparison was' : `${tried} comparisons were`} looked at.`
      : `${tried} comparisons were looked at; with that in mind, ${chanceTimes(told.adjusted)}.`;
  const { difference } = told;
  const spread =
    told.exposedShare && told.otherShare && difference
      ? `The true share that loses so much may be ${range(told.exposedShare)} of the first and ${range(told.otherShare)} of the others; the difference ${percent(difference.low)} to ${percent(difference.high)} points (95${HARD}% intervals${(told.chance ?? 0) > (told.p ?? 0) ? ', as if places in the same week had nothing in common: they are too narrow' : ''}).`
      : null;
  const verdicts = {
    'counts-only': null,
    'worth-a-trial': 'Worth a trial of your own.',
    'a-hint': 'A hint, no more.',
    'nothing-to-see': 'Nothing to see yet, which is not the same as no effect.',
  };
  const rival =
    told.rival === null
      ? of === 'lot'
        ? 'Lots that lay there too warm may also have been the big harvest days, or the slow sellers.'
        : 'Weeks that follow each other are alike: a season, a pest or a batch of seed may be behind it as well.'
      : `Much the same ${many} had this as well: ${exposureLabels[told.rival].toLowerCase()}. Which of the two it was cannot be told from them.`;
  const left =
    told.leftOut === 0
      ? null
      : `${cases(told.leftOut)} ${told.leftOut === 1 ? 'is' : 'are'} left out: what was lost, or what went before, is not known well enough.`;
  const needed =
    told.needed === null
      ? null
      : `It takes at least ${told.needed.more} more ${told.needed.more === 1 ? one : many} before any outcome could show (${told.needed.exposed} with it, ${told.needed.others} without).`;
  return [first, care, spread, verdicts[told.verdict], rival, left, needed, meant].filter(
    (line) => line !== null,
  );
}

export const learningWords = (
  tried: number,
  weeks: number,
  from: string,
  to: string,
  limit: number,
): string[] => [
  `${from} to ${to}, ${weeks} whole ${weeks === 1 ? 'week' : 'weeks'}. ${tried === 0 ? 'Nothing could be compared yet.' : `${tried} ${tried === 1 ? 'comparison was' : 'comparisons were'} looked at, and all of them are shown.`}`,
  `Each asks whether more than ${limit === 0.1 ? 'a tenth' : withUnit(limit * 100, '%', 0)} was lost, after seven days of a condition or without it. The limits are fixed beforehand, and are the same for every farm.`,
  'What goes together need not be cause and effect. Try what is worth a trial on one part, and leave another as it is.',
];

const lossScreens = {
  title: 'Losses',
  quickTitle: 'Log a loss',
  where: 'Where',
  which: 'Which crop',
  standing: 'stands there',
  otherCrop: 'Other crop',
  howMuch: 'How much of it',
  looks: lossLooks,
  thrownOut: 'Thrown out',
  drawings: lossDrawings,
  looked: 'What it looked like: this saves it',
  lookedWhat: 'What it looked like',
  amountButton: (amount: number, unit: LossUnit): string => {
    const names: Readonly<Record<number, string>> = {
      5: 'A twentieth',
      10: 'A tenth',
      25: 'A quarter',
      50: 'Half',
      100: 'All of it',
    };
    const named = unit === 'share' ? names[amount] : undefined;
    return named ?? lossUnitWords(amount, unit);
  },
  ofTrays: (trays: number) => `of ${lossUnitWords(trays, 'trays')} there`,
  exactly: 'Another amount',
  amount: 'Amount',
  unit: 'In',
  units: {
    get kg() {
      return weightUnit();
    },
    trays: 'trays',
    share: '% of what stood there',
  },
  ofAmount: 'Of how much, if known',
  whenSeen: 'Seen on',
  todaySeen: 'Today',
  yesterday: 'Yesterday',
  batch: 'Batch, if it has a name',
  note: 'Note',
  more: 'More about it',
  chooseAmount: 'First say how much.',
  sending: 'Sending…',
  stored: (what: string, place: string) => `The hub has stored: ${what}, ${inText(place)}.`,
  undo: 'Undo',
  undone: 'Taken back; its history keeps both.',
  failed: (sentence: string) => `Not stored: ${sentence}`,
  another: 'It is another loss: store it as well',
  photoSent: 'The hub has stored the photo.',
  withdrawPhoto: 'Delete the photo',
  photoWithdrawn: 'The hub has deleted the photo; the history tells that there was one.',
  quiet: 'Nothing lost',
  quietWhy:
    'A week without an entry tells nothing, unless somebody says that nothing was lost in it.',
  quietAll: (week: string) => `Nothing lost elsewhere in the week of ${week}`,
  quietAllSaid: (week: string) => `Said for the week of ${week}: nothing else lost.`,
  quietSaid: (place: string, week: string) =>
    `The hub has stored: nothing lost in ${inText(place)} in the week of ${week}.`,
  quietPlaces: (places: string) => `Without an entry in that week: ${places}.`,
  quietNone: 'Every place has an entry for that week, or was said to have lost nothing.',
  picture: 'Losses and what went before them',
  weeks: 'Weeks shown',
  weeksOption: (weeks: number) => `${weeks} weeks`,
  key: 'Key',
  keys: {
    wet: 'wet hours of the day, from the foot up',
    hot: 'a day with hours too hot',
    cold: 'a day with hours too cold',
    unknown: 'a day with more than 6 hours not known, or no humidity read',
    quiet: 'a week in which nothing was lost, as somebody said',
    pin: 'a loss; tap it to open its entry',
  },
  coolKey: 'In the cool room “too hot” is over its limit.',
  stripTitle: (name: string, from: string, to: string) => `${name}, ${from} to ${to}`,
  pin: (day: string, what: readonly string[]) => `Losses of ${day}: ${what.join('; ')}`,
  inWords: 'These strips in words and figures',
  columns: {
    day: 'Day',
    wet: 'Wet h',
    hot: 'Too hot h',
    cold: 'Too cold h',
    unknown: 'Not known h',
    lost: 'Lost',
  },
  noneYet: 'No loss is entered yet for these weeks.',
  list: 'All of these weeks',
  entryTitle: 'Entry',
  close: 'Close',
  share: (share: number) => `${withUnit(share * 100, '%', 0)} of what stood there`,
  weight: (kg: number) => withUnit(kg, 'kg'),
  money: (value: number, currency: string) => `about ${money(value, currency)}`,
  ofBatch: (batch: string) => `batch ${batch}`,
  seenOn: (day: string) => `seen ${day}`,
  by: (who: string) => `entered by ${who}`,
  sameWords: 'A lot tells of this too: it is counted there, once.',
  withdrawnWords: 'Taken back: it counts nowhere.',
  lotWords: 'Thrown out of a lot: it is changed on the page of the cool room.',
  toLot: 'To the cool room',
  correct: 'Correct it',
  corrected: 'The hub has stored the correction; its history keeps both.',
  why: 'Why it is corrected',
  store: 'Store it',
  history: 'History',
  historyLine: (time: string, who: string, what: string) => `${time}, ${who}: ${what}`,
  takenBack: 'taken back',
  takeBack: 'Take this back',
  numbers: 'What may be said of them',
  noNumbers: 'Nothing can be compared yet.',
  table: {
    show: (label: string) => `The counts: ${label.toLowerCase()}`,
    lost: 'Lost more than a tenth',
    kept: 'Lost less',
    with: 'With it',
    without: 'Without it',
  },
  figures: {
    fisher: 'Chance, Fisher’s exact test',
    chance: 'The larger of it and of whole weeks in any order',
    adjusted: (tried: number) => `After Holm, for ${tried} comparisons`,
    left: 'Left out',
  },
  behind: 'What stands behind it',
  caseColumns: { which: 'Which', exposure: 'Before', share: 'Lost', basis: 'How it is known' },
  bases: {
    entered: 'entered',
    'said-none': 'nothing, as said',
    'no-entry': 'no entry, log kept',
    'not-kept': 'log not kept',
  },
  between: (least: number, most: number, unit: string): string => {
    const digits = unit === '' ? 2 : unit === '%' ? 0 : 1;
    return least === most
      ? withUnit(least, unit, digits)
      : `${number(least, digits)} to ${withUnit(most, unit, digits)}`;
  },
  caseWeek: (name: string, week: string) => `${name}, week of ${week}`,
  caseLot: (name: string, day: string) => `${name}, from ${day}`,
  exposed: 'with it',
  notExposed: 'without it',
  notSaid: 'cannot be said',
  csv: 'All losses as a file (CSV)',
  print: 'Print',
};

// When a batch is ready, and what crops need.

const heatUnits = (value: number | null) =>
  value === null ? notKnown : `${heat(value, 0)} heat units`;
const readyMissing: Readonly<Record<ReadyStage['missing'][number], string>> = {
  'no past': 'no batch of it was ready yet, and the farm file does not tell its days',
  'no heat': 'no probe measures where it stands',
  'no weather': 'nothing tells how warm the coming days are',
  'too far': 'it is more than 200 days away',
  ended: 'it is done with',
};
const readyFrom = ({ method, learnedFrom, counted, weather }: Omit<ReadyStage, 'words'>) => {
  const told =
    method === 'own batches'
      ? `By ${counted === 'cut' ? 'the cuts of ' : ''}${several(learnedFrom, 'own batch', 'own batches')}`
      : 'By the days in the farm file';
  const days =
    weather === 'lately'
      ? ' and days as warm as the last two weeks'
      : weather === 'years'
        ? ' and the weather of past years'
        : '';
  return `${told}${days}${method !== 'own batches' || learnedFrom < 3 ? ', so still wide' : ''}.`;
};

/** When a batch is ready at one stage, in one or two sentences. */
export function readyWords(stage: Omit<ReadyStage, 'words'>): string {
  const { seenAt, expected, early, late, soFar, need, confidence, unknownHours, standing } = stage;
  const unknown = unknownHours >= 1 ? ` ${number(unknownHours, 0)} h were not measured.` : '';
  const so =
    soFar === null || need === null
      ? ''
      : soFar >= need.mean
        ? `It has ${heatUnits(soFar)}, and about ${heat(need.mean, 0)} are needed. `
        : `It has ${heat(soFar, 0)} of about ${heatUnits(need.mean)}. `;
  if (seenAt !== null) return 'Seen to be ready.';
  if (stage.missing.length > 0)
    return `Cannot say: ${stage.missing.map((one) => readyMissing[one]).join(', ')}.${unknown}`;
  if (standing) {
    const between =
      early === null
        ? ''
        : ` Perhaps ${shortDayInText(early)}${late === null ? ' or later' : ` to ${shortDayInText(late)}`}.`;
    return `It stands still for want of light, so no day is promised.${between} ${so}${readyFrom(stage)}${unknown}`;
  }
  const sure = `${number(10 * confidence, 0)} times in 10`;
  const likely = expected === null ? '' : `, most likely ${shortDayInText(expected)}`;
  const by = soFar !== null && need !== null && soFar >= need.mean;
  const span = by
    ? `Most likely ready by now${late === null ? '' : `, and by ${shortDayInText(late)} ${number(5 + 5 * confidence, 0)} times in 10`}`
    : early === null
      ? 'Ready some day'
      : late === null
        ? `Ready ${shortDayInText(early)} or later`
        : early === late
          ? `Ready ${shortDayInText(early)}, ${sure}`
          : `Ready ${shortDayInText(early)} to ${shortDayInText(late)}, ${sure}${likely}`;
  return `${span}. ${so}${readyFrom(stage)}${unknown}`;
}

const growingScreens = {
  page: 'What crops need',
  ready: 'Later cut',
  readyYoung: 'Young cut',
  none: 'Nothing grows now.',
  title: 'When it is ready',
  picture: (name: string, words: string) => `Heat so far and the heat it takes, ${name}. ${words}`,
  need: 'it takes',
  so: 'so far',
  perhaps: 'perhaps ready',
  day: 'Day',
  units: 'Heat units',
  inFigures: 'Heat day by day in figures',
  youngOrLater: 'Cut young or later',
  stage: { young: 'Young', later: 'Later' } satisfies Record<CutStage, string>,
  cut: 'Cut',
  get grams() {
    return `${gramUnit()} a tray`;
  },
  days: 'Days',
  moneyPerTray: (currency: string) => `${currency} a tray`,
  moneyPerTrayDay: (currency: string) => `${currency} a tray and day`,
  from: (batches: number) =>
    batches === 0 ? 'farm file' : several(batches, 'own batch', 'own batches'),
  fromLabel: 'From',
  figure: (value: number | null, low: number | null, high: number | null, digits: number) =>
    value === null
      ? notKnown
      : low === null || high === null || low === high
        ? number(value, digits)
        : `${number(value, digits)} (${number(low, digits)} to ${number(high, digits)})`,
  intervals:
    'In brackets: 8 in 10 for the mean, from three batches on; days of the farm file as told.',
  base: {
    own: (lower: string, low: string, high: string, n: number) =>
      `Heat counts from ${lower}, learned from ${several(n, 'own sowing', 'own sowings')}; by other ways to learn it ${low} to ${high}.`,
    told: (lower: string) => `Heat counts from ${lower}, as the farm file tells.`,
    table: (lower: string) => `Heat counts from ${lower}, by the table of starting bases.`,
    usual: (lower: string) => `Heat counts from ${lower}, because nothing tells its own base.`,
  },
  verdict: {
    learned: '',
    'too-few': 'Own sowings replace it once six have been ready.',
    'too-alike': 'Own sowings were all about as warm, so they tell no base of their own.',
    undetermined: 'Own sowings do not settle on a base.',
    'too-cold': 'Some own sowings were too near the base that fits them best.',
    'too-far': 'The base that fits own sowings best is too far from it to be believed.',
  },
  needs: (mean: number, low: number, high: number, n: number) =>
    `The next batch takes about ${heatUnits(mean)}, 8 in 10 between ${heat(low, 0)} and ${heat(high, 0)}; from ${several(n, 'batch', 'batches')}.`,
  noNeed: 'No batch was ready yet.',
  dots: (name: string) =>
    `Heat units that each past batch of ${name} took; the table below has them.`,
  pastTable: (name: string) => `Past batches of ${name}`,
  columns: {
    batch: 'Batch',
    place: 'Place',
    ready: 'Ready',
    days: 'Days',
    units: 'Heat units',
    seen: 'Known by',
  },
  seen: { noted: 'noted ready', cut: 'its cut' },
  withUnit,
};

// What a season came to: the page that is looked at once, at a desk or on paper.

const reviewKinds: Readonly<Record<TaskKind, string>> = {
  'open-up': 'Open up',
  'close-up': 'Close up',
  shade: 'Shade',
  'move-trays': 'Move trays',
  cover: 'Cover',
  uncover: 'Uncover',
  'pick-now': 'Pick now',
  'cut-back': 'Cut back or clear out',
  water: 'Water',
  'shut-door': 'Shut the door',
  'see-to-unit': 'See to the cooling unit',
  'run-generator': 'Run the generator',
  'move-produce': 'Move the produce',
  'sell-first': 'Sell first',
  'throw-out': 'Keep or throw out',
  sow: 'Sow',
  harvest: 'Harvest',
  'see-to-probe': 'See to a probe',
};
export const reviewKindName = (kind: TaskKind): string => reviewKinds[kind];
export const reviewLooked = (look: LossLook | null): string =>
  look === null ? 'thrown out of a lot' : lossLookName(look);

/** `Spring 2026`, `Winter 2025–2026`, `The last twelve months`. */
export const reviewSpanName = (told: {
  readonly season: YearSeason | null;
  readonly year: number;
  readonly from: string;
}): string => {
  if (told.season === null) return 'The last twelve months';
  const began = Number(told.from.slice(0, 4));
  const years = began < told.year ? `${began}–${told.year}` : String(told.year);
  return `${capital(yearSeasonNames[told.season])} ${years}`;
};

/** `about 40 EUR`, `between 40 and 90 EUR`. */
const sparedSaid = ({ low, high }: { low: number; high: number }, currency: string) =>
  rangeSaid({ n: 0, ratio: high, low, high }, currency);

/** A season in one sentence: asked, answered, spared, lost. */
export function reviewSentence(told: {
  readonly from: string;
  readonly to: string;
  readonly all: {
    readonly asked: number;
    readonly done: number;
    readonly late: number;
    readonly no: number;
    readonly lapsed: number;
    readonly open: number;
    readonly spared: { readonly low: number; readonly high: number } | null;
  };
  readonly lost: {
    readonly entries: number;
    readonly money: number;
    readonly withoutMoney: number;
  };
  readonly money: string;
}): string {
  const { all, lost, money: currency } = told;
  const when = `From ${dayAndYear(told.from)} to ${dayAndYear(told.to)}`;
  const part = (n: number, said: string) => (n === 0 ? [] : [`${n} ${said}`]);
  const answered = listed([
    ...part(all.done + all.late, all.late === 0 ? 'done' : `done (${all.late} of them late)`),
    ...part(all.no, 'answered “not doing”'),
    ...part(all.lapsed, 'no longer needed'),
    ...part(all.open, 'still open'),
  ]);
  const tasks =
    all.asked === 0 ? 'no task was asked' : `${counted(all.asked, 'task')} asked: ${answered}`;
  const spared =
    all.spared === null
      ? 'what was spared is not known'
      : `spared, as the hub estimates, ${sparedSaid(all.spared, currency)}`;
  const unknown = lost.withoutMoney === 0 ? '' : ` (${lost.withoutMoney} of them of unknown worth)`;
  const losses =
    lost.entries === 0
      ? 'no loss entered'
      : `lost in ${lost.entries} ${lost.entries === 1 ? 'loss' : 'losses'}${unknown}, ${
          lost.withoutMoney === lost.entries ? notKnown : moneySaid(lost.money, currency)
        }`;
  return `${when} ${tasks}; ${spared}; ${losses}.`;
}

export const reviewNotes = (told: {
  readonly unvalued: number;
  readonly withoutMoney: number;
}): string[] => [
  'What was spared is an estimate: nobody knows what would have come without the work. The lower figure counts one task a place and day, the largest; the higher counts them all.',
  ...(told.unvalued === 0
    ? []
    : [`${counted(told.unvalued, 'done task')} named no money, and count as nothing here.`]),
  ...(told.withoutMoney === 0
    ? []
    : [
        `${told.withoutMoney} ${told.withoutMoney === 1 ? 'loss has' : 'losses have'} no known worth; the sum is of the others.`,
      ]),
  'Minutes of tasks are as the hub reckons them; those of batches and pickings as somebody wrote them down. Work on trays may be in both, so they are not added up.',
];

const reviewScreens = {
  title: 'Season review',
  spans: 'Seasons',
  range: 'Days of your own',
  from: 'From',
  to: 'To',
  show: 'Show',
  print: 'Print',
  file: 'As a table (CSV)',
  asked: 'Asked and answered',
  none: 'No task was asked in these days.',
  sum: 'All',
  putOff: (n: number) => (n === 0 ? '' : `Put off ${n === 1 ? 'once' : `${n} times`}.`),
  columns: {
    kind: 'Task',
    asked: 'Asked',
    done: 'Done',
    late: 'Done late',
    no: 'Not doing',
    lapsed: 'Not needed',
    open: 'Open',
    minutes: 'Minutes asked',
    spent: 'Minutes done',
    spared: 'Spared, estimate',
  },
  spared: (range: { low: number; high: number } | null, currency: string) =>
    range === null ? notKnown : sparedSaid(range, currency),
  lost: 'Lost',
  noLoss: 'No loss was entered, and nothing thrown out of a lot.',
  lostColumns: {
    place: 'Place',
    crop: 'Crop',
    looked: 'Looked like',
    entries: 'Entries',
    get kg() {
      return weightUnit();
    },
    money: 'Worth',
  },
  money: (value: number | null, currency: string) =>
    value === null ? notKnown : moneySaid(value, currency),
  forecasts: 'Forecasts of the night, and what came',
  noForecast: 'No forecast of these nights has been scored.',
  forecastColumns: {
    spot: 'Spot',
    method: 'Forecast',
    nights: 'Nights',
    get error() {
      return `Off by, ${degree()}`;
    },
    below: 'Frost or damage came',
    misses: 'Without a warning',
    vain: 'Warned in vain',
  },
  spotOf: (place: string, spot: Spot) => `${place}, ${spots[spot].toLowerCase()}`,
  minutes: 'Minutes of work',
  minuteLines: (told: {
    readonly asked: number;
    readonly done: number;
    readonly batches: { readonly minutes: number; readonly without: number };
    readonly pickings: { readonly minutes: number; readonly without: number };
  }): string[] => {
    const without = (n: number) => (n === 0 ? '' : ` ${n} without minutes.`);
    return [
      `Tasks asked for ${span(told.asked * MINUTE)}; those done for ${span(told.done * MINUTE)}.`,
      `Written down for batches: ${span(told.batches.minutes * MINUTE)}.${without(told.batches.without)}`,
      `Written down for pickings: ${span(told.pickings.minutes * MINUTE)}.${without(told.pickings.without)}`,
    ];
  },
  alarms: 'Alarms, and how soon they were seen',
  noAlarm: 'No alarm was raised.',
  alarmColumns: {
    kind: 'Alarm',
    raised: 'Raised',
    seen: 'Seen',
    half: 'Half seen within',
    slowest: 'Slowest',
    never: 'Over unseen',
    false: 'Said to be false',
  },
  wait: (minutes: number | null) => (minutes === null ? '–' : span(minutes * MINUTE)),
  unread: 'Time without readings',
  unreadColumns: { place: 'Place', days: 'Days', hours: 'Hours without', share: 'Share' },
  share: (share: number | null) =>
    share === null ? notKnown : `${number(100 * share, share > 0 && share < 0.01 ? 1 : 0)}${HARD}%`,
  notes: 'How to read it',
};

// A limit tried on the past.

type TrialLimit =
  | 'wet-at'
  | 'wet-below'
  | 'wet-hours'
  | 'cover-minutes'
  | 'cover-value'
  | 'cover-damage'
  | 'set-point'
  | 'room-limit'
  | 'heat-limit'
  | 'band-top'
  | 'chill'
  | 'wage';
const trialLimits: Readonly<Record<TrialLimit, readonly [name: string, unit: string]>> = {
  'wet-at': ['leaves count as wet from', '%'],
  'wet-below': ['leaves count as dry below', '%'],
  'wet-hours': ['wet hours that ask for air', 'h'],
  'cover-minutes': ['minutes to cover', 'min'],
  'cover-value': ['what frost would take there', 'money'],
  'cover-damage': ['frost hurts below', '°C'],
  'set-point': ['set temperature', '°C'],
  'room-limit': ['too warm above', '°C'],
  'heat-limit': ['heat limit', '°C'],
  'band-top': ['top of the band', '°C'],
  chill: ['cold hurts below', '°C'],
  wage: ['what an hour of work costs', 'money'],
};

const lossCount = (n: number) => `${n} ${n === 1 ? 'loss' : 'losses'}`;
const trialUnit = (what: TrialLimit, currency: string) => {
  const unit = trialLimits[what][1];
  return unit === 'money' ? currency : unit;
};
const wholeWhere = (value: number, unit: string) =>
  Number.isInteger(Number(shownIn(value, unit).toFixed(6))) ? 0 : 1;
const trialFigure = (value: number, unit: string) => withUnit(value, unit, wholeWhere(value, unit));

/** `Long House: wet hours that ask for air, 8 h instead of 4 h`. */
export function trialChangeWords(change: {
  readonly what: TrialLimit;
  readonly name: string | null;
  readonly from: number;
  readonly to: number;
  readonly currency: string;
}): string {
  const unit = trialUnit(change.what, change.currency);
  const whose = change.name === null ? '' : `${change.name}: `;
  return `${whose}${trialLimits[change.what][0]}, ${trialFigure(change.to, unit)} instead of ${trialFigure(change.from, unit)}`;
}

/** A limit as a page offers it. */
export const trialLimitWords = (limit: {
  readonly what: TrialLimit;
  readonly value: number;
  readonly told: boolean;
  readonly currency: string;
}) => ({
  limit: trialLimits[limit.what][0],
  unit: trialUnit(limit.what, limit.currency),
  source: `${trialFigure(limit.value, trialUnit(limit.what, limit.currency))} now, ${limit.told ? 'as told in the farm file' : 'which holds because the farm file tells none'}`,
});
export const wholeFarm = 'The whole farm';

type TrialRowSaid = {
  readonly name: string;
  readonly kindName: string;
  readonly before: { readonly days: readonly string[]; readonly minutes: number };
  readonly after: { readonly days: readonly string[]; readonly minutes: number };
  readonly losses: readonly {
    readonly look: string;
    readonly entries: number;
    readonly before: number;
    readonly after: number;
  }[];
};

/** `14 days more with “open up” (about 2 h 20 min of work), 3 of 4 losses with mould had …`; null where both ask on the same days. */
export function trialRowWords({ name, kindName, before, after, losses }: TrialRowSaid) {
  const more = after.days.filter((day) => !before.days.includes(day)).length;
  const fewer = before.days.filter((day) => !after.days.includes(day)).length;
  if (more + fewer === 0) return null;
  const days = listed([
    ...(more === 0 ? [] : [`${counted(more, 'day')} more`]),
    ...(fewer === 0 ? [] : [`${counted(fewer, 'day')} fewer`]),
  ]);
  const work = after.minutes - before.minutes;
  const minutes =
    work === 0
      ? ''
      : ` (about ${span(Math.abs(work) * MINUTE)} of work ${work > 0 ? 'more' : 'less'})`;
  const lost = losses
    .map(
      (one) =>
        ` ${one.after} of ${lossCount(one.entries)} there (${one.look}) had such a task in the week before, instead of ${one.before}.`,
    )
    .join('');
  return `${name}: ${days} with “${kindName.toLowerCase()}”${minutes}.${lost}`;
}

/** What was tried and what it would have changed. */
export function trialWords(told: {
  readonly changes: readonly string[];
  readonly rows: readonly { readonly words: string | null }[];
  readonly losses: number;
  readonly readings: boolean;
}): string[] {
  const rows = told.rows.flatMap(({ words }) => (words === null ? [] : [words]));
  const none = told.readings
    ? 'No task would have come on another day.'
    : 'There are no readings of these places in these days, so nothing can be said.';
  return [
    `Tried: ${told.changes.join('; ')}.`,
    ...(rows.length === 0 ? [none] : rows),
    ...(told.losses === 0
      ? [
          'No loss is entered for these places in these days: what would have been spared cannot be said.',
        ]
      : []),
  ];
}

export const trialNotes = (room: boolean): string[] => [
  'The hub’s own rules, once an hour, over the means of the hours: a task that would have stood for less than an hour may be missing.',
  'As if nobody had answered or opened anything: the readings are of the house as it was worked.',
  'Nights are judged by the forecasts the hub issued then; where it issued none, nothing is said of covering and closing.',
  '“Open up” counts evenings too on which leaving it open for the night would have been asked.',
  'Trays are those the farm file tells; batches, and what people said of vents, are left out.',
  ...(room
    ? [
        'A cool room is judged by its set temperature and limit alone, as in its first days: what the hub has learned of its cycle is left out.',
        'Only “move the produce” is looked at there.',
      ]
    : []),
  'A loss with a task in the week before might have been spared, and might not: it shows what went together.',
];

/** Why a limit was changed, for the record. */
export const trialWhy = (told: {
  readonly why: string | null;
  readonly from: string;
  readonly to: string;
  readonly words: readonly string[];
}): string =>
  [
    ...(told.why === null ? [] : [told.why]),
    `Tried on ${told.from} to ${told.to}. ${told.words.join(' ')}`,
  ].join(' – ');
/** Of the days there are readings for. */
export const trialCaution = (days: number): string =>
  `Readings go back ${counted(days, 'day')}: a season of them says more.`;

const trialScreens = {
  title: 'Try a limit',
  why: 'Change a limit and see, over the readings kept, when tasks would have come and what was really lost. Nothing of the farm changes until you keep it.',
  noReadings:
    'There are no readings yet to try a limit on. They come from the probes, or by an import.',
  whose: 'Whose limit',
  limit: 'Limit',
  from: 'From',
  to: 'To',
  value: (unit: string) =>
    unit === '' ? 'New value' : `New value, ${unit === '°C' ? degree() : unit}`,
  less: (step: string) => `${step} less`,
  more: (step: string) => `${step} more`,
  /** A difference: degrees have no zero there. */
  step: (step: number, unit: string) =>
    unit === '°C' ? difference(step, wholeWhere(step, 'K')) : trialFigure(step, unit),
  start: 'Try it',
  same: 'Choose another value than the one that stands.',
  progress: (percent: number, place: string | null) =>
    place === null ? `${percent} % done` : `${percent} % done, at ${place}`,
  running: 'The trial runs',
  cancel: 'Stop the trial',
  canceled: 'The trial was stopped. Nothing was changed.',
  failed: (why: string) => `The trial did not end: ${why}`,
  result: 'What it would have been',
  strip: 'Days with a task',
  stripTitle: (name: string, kind: string) => `${name}, ${kind.toLowerCase()}`,
  stripWords: (was: number, is: number, lost: number) =>
    `Upper row: ${counted(was, 'day')} with the task under the limit as it stands. Lower row: ${counted(is, 'day')} under the one tried. Between them ${lossCount(lost)}.`,
  upper: 'now',
  lower: 'tried',
  lossesHere: 'Losses really entered',
  columns: {
    place: 'Place and task',
    before: 'Days now',
    after: 'Days tried',
    more: 'More',
    fewer: 'Fewer',
    tasks: 'Tasks now → tried',
    minutes: 'Work now → tried',
  },
  work: (minutes: number) => span(minutes * MINUTE),
  days: 'The days',
  onlyBefore: (days: string) => `Only now: ${days}.`,
  onlyAfter: (days: string) => `Only tried: ${days}.`,
  none: 'No other days.',
  notes: 'How to read it',
  keepTitle: 'Keep it',
  keepWhat: 'It changes this in the farm:',
  keepWhy: 'Why (if you like)',
  keep: 'Keep this limit',
  leave: 'Leave it as it was',
  left: 'Left as it was. Nothing was changed.',
  kept: 'The hub has kept it. It can be undone under “Changes of the farm”.',
  changes: 'Changes of the farm',
};

// What waits for the hub, and what is read without it.
const queueWords = {
  said: (what: string, told: readonly string[]) =>
    told.length === 0 ? what : `${what}. ${sentenceOf(told)}`,
  kinds: {
    answer: 'Task',
    undoMove: 'Move taken back',
    putAway: 'Put away',
    lot: 'Lot',
    sow: 'Sown',
    repeat: 'Sown as last week',
    batch: 'Batch',
    loss: 'Loss',
    lossChange: 'Loss',
    quietWeek: 'A week without losses',
    pick: 'Picked',
    pickChange: 'Picking',
    action: 'Corrective action',
    check: 'Probe checked',
    fruit: 'Fruit counted',
    seen: 'Alarm seen',
    vents: 'Vents',
    ventsBack: 'Vents, taken back',
    want: 'Wanted',
  },
  /** Of a lot, a batch, a loss or a picking. */
  changes: {
    take: 'Taken from',
    release: 'Released',
    correct: 'Corrected',
    undo: 'Taken back',
    move: 'Moved',
    cut: 'Cut',
    throwOut: 'Thrown out',
    note: 'Note on',
    work: 'Work on',
    clear: 'Cleared',
    photo: 'Photo of',
  },
  fields: {
    crop: 'crop',
    kg: 'weight',
    place: 'place',
    from: 'from',
    to: 'to',
    trays: 'trays',
    amount: 'how much',
    look: 'looks',
    how: 'how',
    day: 'day',
    week: 'week of',
    at: 'at',
    storedAt: 'put away at',
    harvestedAt: 'harvested at',
    sownAt: 'sown at',
    until: 'until',
    meantFor: 'meant for',
    minutes: 'minutes',
    walkMinutes: 'minutes of walking',
    pickers: 'pickers',
    lostKg: 'sorted out',
    price: 'price',
    seedCost: 'cost of seed',
    otherCost: 'other costs',
    variety: 'variety',
    work: 'work',
    note: 'note',
    saw: 'seen:',
    did: 'done:',
    by: 'by',
    core: 'core',
    reading: 'reading',
    of: 'of',
    counted: 'counted on',
    why: 'why',
  },
  units: { kg: 'kg', lostKg: 'kg', minutes: 'min', walkMinutes: 'min' },
  title: (n: number) => (n === 1 ? '1 entry waits to be sent' : `${n} entries wait to be sent`),
  why: 'Not stored in the hub yet. Kept on this device, and sent by itself, in this order, when the hub answers.',
  refusedTitle: (n: number) =>
    n === 1 ? 'The hub refused 1 entry' : `The hub refused ${n} entries`,
  refusedWhy: 'Not stored. Change it and send it again, or drop it.',
  refused: (sentence: string) => `The hub says: ${sentence}`,
  saidAt: (time: string) => `said ${time}`,
  waits: 'waits',
  show: 'What waits',
  answerWaits: (answer: string) => `${answer}: waits to be sent, not stored yet.`,
  seenWaits: '“Seen” waits to be sent. The hub goes on waking people until it hears it.',
  others: (n: number, name: string) =>
    `${several(n, 'entry', 'entries')} of ${name} ${n === 1 ? 'waits' : 'wait'} on this device, and ${n === 1 ? 'is' : 'are'} sent when ${name} signs in here.`,
  waitsHere: 'the hub does not answer. It is kept on this device and waits to be sent',
  signIn: 'sign in first. It is kept on this device and waits to be sent',
  cannotWait:
    'the hub does not answer, and this cannot wait: it needs the hub to show what it does',
  fromBefore: (ms: number) =>
    `The hub did not answer for all of this page. What you see is up to ${ageLength(ms)} old.`,
  neverOpened:
    'no answer from the hub, and this was not opened on this device before, so nothing of it is kept',
  secretNotKept: 'no answer from the hub, and a secret is not kept on this device',
  noRoomForPhoto:
    'the hub does not answer, and there is no room on this device to keep one more photo: 10 MB wait already',
  photoGone: 'Expected its photo on this device, got none: drop the entry, or enter it anew',
  keptHere:
    'This browser keeps what it showed last, 8 million characters at the most, and what waits to be sent, with 10 MB of photos. Signing out removes what was shown.',
  change: 'Change',
  again: 'Send again',
  anyway: 'Enter it all the same',
  yourName: 'Who says so',
  drop: 'Drop',
  dropSure: 'Drop it for good',
  keep: 'Keep it',
  send: 'Send it changed',
  back: 'Back',
  when: 'When it was said',
  noFields: 'Nothing of it can be changed here. Drop it, and enter it anew.',
  actionOn: (action: string, what: string) => `${action}: ${what}`,
};
const sentenceOf = (parts: readonly string[]) => {
  const text = parts.join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
};

export const screens = {
  notKnown,
  number,
  withUnit,
  signed,
  temperature,
  degrees,
  difference,
  apart,
  perDegree,
  heat,
  bareWeight,
  bareGrams,
  perWeight,
  kilograms,
  weightUnit,
  degree,
  humidity,
  clock,
  hour,
  dayName,
  longDay,
  weekday,
  dayInText,
  shortDay,
  month,
  chance,
  money,
  cents,
  counted,
  span,
  age,
  ageLength,
  countdown,
  locale,
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
  menu: {
    label: 'Pages',
    today: 'Today',
    places: 'Places',
    batches: 'Batches',
    coolRoom: 'Cool room',
    frost: 'Frost',
    losses: 'Losses',
    probes: 'Probes',
    alarms: 'Alarms',
    setUp: 'Set-up',
    sowing: 'Sowing plan',
    week: 'Week sheet',
    worth: 'Worth',
    picks: 'Pickings',
    more: 'More',
    groups: { growing: 'Growing', records: 'Records', hub: 'Hub and farm' },
    hereToo: '(this page is among them)',
  },
  frame: {
    skip: 'Skip to the page',
    invented: 'Demonstration farm. Everything here is invented.',
    faster: (speed: number) => `Its clock runs ${number(speed, 0)} times as fast as yours.`,
    clock: (time: string) => `Farm time ${time}`,
    signOut: 'Sign out',
    signedInAs: (name: string) => `Signed in as ${name}`,
    alarm: 'Alarm',
    seeTasks: 'See the task',
    scheme: {
      label: 'This page, on this device',
      device: 'As the device',
      light: 'Light',
      dark: 'Dark',
    },
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
    enterBatches: 'Enter what is sown as a batch',
    enterSown: 'Enter it as a batch',
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
  frost: frostScreens,
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
      get temperature() {
        return `${degree()}`;
      },
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
  keeping: keepingWords,
  places: placeScreens,
  placesCompared: placesComparedScreens,
  probes: probeScreens,
  lots: lotScreens,
  batches: batchScreens,
  losses: lossScreens,
  photos: photoScreens,
  growing: growingScreens,
  record: recordScreens,
  room: roomScreens,
  signIn: signInScreens,
  alarms: alarmScreens,
  setUp: setUpScreens,
  setUpSteps,
  setUpFields,
  farmFieldNames,
  season: seasonScreens,
  cutBack: cutBackScreens,
  planning: planScreens,
  week: weekScreens,
  worth: worthScreens,
  picks: pickScreens,
  review: reviewScreens,
  trial: trialScreens,
  queue: queueWords,
};
