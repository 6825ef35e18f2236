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

// German: every word a person reads. How a language is written stands in DEVELOPERS.md under
// "A language". In short:
// - English (`en.ts`) is the pattern: the same exports, the same figures in every sentence.
// - Names before a colon (`'wet-hours':`, `title:`), names of functions and what they are given stay as
//   they are. `get low() {…}` is a text that depends on the units the farm reads.
// - Figures come from the functions below (temperature, difference, weight, number, clock …), which turn
//   them into the units of the farm: never write °C or kg beside a number yourself.
// - Numbered nouns come from `counted`, after "vor", "seit", "in" … from `countedDative`; a new noun goes
//   into `plurals`. Nouns keep their capitals, so nothing is put in lower case in a sentence.
// - Places are named without an article, but for those named after what they are: `inPlace` and its like.
// - `hub/words/languages.ts` names the languages there are. The type check tells what is missing or
//   left over, and tests/hub/words/languages.test.ts what is still English.
// In order: figures and times; terms and reasons of tasks; sentences of the hub; words of the screens.

const MINUTE = 60_000; // ms
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const locale = 'de-DE';
const notKnown = 'nicht bekannt';

const {
  number,
  withUnit,
  signed,
  temperature, // `3,0 °C`, `37,4 °F`
  degrees, // the same without its unit
  wholeDegrees,
  degree, // `°C`, `°F`
  difference, // how much warmer, or how far off: `0,5 °C`, `0,9 °F`
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
  weight, // `1,25 kg`
  kilograms, // `1,3 kg`, `3 kg`
  bareWeight, // without its unit
  perWeight, // money or minutes a kilogram -> a pound, where weights are in pounds
  weightUnit, // `kg`, `lb`
  inPounds,
  bareGrams,
  gramUnit,
} = figuresIn({ locale, decimal: ',', notKnown });
const {
  clock,
  hour: hourAndWord,
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
} = datesIn(locale, { commas: 'kept' });
const { money, cents } = moneyIn(locale);

export { eventTime, withUnit };

/** An hour on an axis: `06`, without the "Uhr" that has no room there. */
const hour = (t: number, zone: string) => hourAndWord(t, zone).replace(/\sUhr$/, '');

/** Ends a sentence; a day such as `3. Nov.` has its dot already. */
const fullStop = (text: string) => (text.endsWith('.') ? text : `${text}.`);

/** What something is told for: a price a kilogram. */
const kilogramWord = () => (inPounds() ? 'Pfund' : 'Kilogramm');

/** A probability from 0 to 1. Never "0 %" or "100 %": a forecast is not a promise. */
function chance(p: number): string {
  if (p < 0.01) return `unter 1${HARD}%`;
  if (p > 0.99) return `über 99${HARD}%`;
  return withUnit(p * 100, '%', 0);
}

/** The plural of a noun, and its dative where that is more than an n at the end. */
const plurals: Readonly<Record<string, readonly [many: string, dative?: string]>> = {
  Alarm: ['Alarme'],
  Aufgabe: ['Aufgaben'],
  Ausfall: ['Ausfälle'],
  Aussaat: ['Aussaaten'],
  Eintrag: ['Einträge'],
  Ernte: ['Ernten'],
  Frost: ['Fröste'],
  Herbst: ['Herbste'],
  Jahr: ['Jahre'],
  Kiste: ['Kisten'],
  Lieferung: ['Lieferungen'],
  Meldung: ['Meldungen'],
  Minute: ['Minuten'],
  Monat: ['Monate'],
  Nachricht: ['Nachrichten'],
  Nacht: ['Nächte'],
  Pflückgang: ['Pflückgänge'],
  Platz: ['Plätze'],
  Saison: ['Saisons', 'Saisons'],
  Satz: ['Sätze'],
  Schale: ['Schalen'],
  Schnitt: ['Schnitte'],
  Sicherung: ['Sicherungen'],
  Stopp: ['Stopps', 'Stopps'],
  Stunde: ['Stunden'],
  Tag: ['Tage'],
  Warnung: ['Warnungen'],
  Woche: ['Wochen'],
  Zeile: ['Zeilen'],
  'erledigte Aufgabe': ['erledigte Aufgaben', 'erledigten Aufgaben'],
  'klare Nacht': ['klare Nächte', 'klaren Nächten'],
  'klare, ruhige Nacht': ['klare, ruhige Nächte', 'klaren, ruhigen Nächten'],
};
/** One that changes in the dative though there is only one of it. */
const dativeOfOne: Readonly<Record<string, string>> = {
  'erledigte Aufgabe': 'erledigten Aufgabe',
  'klare Nacht': 'klaren Nacht',
  'klare, ruhige Nacht': 'klaren, ruhigen Nacht',
};

/** `1 Tag`, `3 Tage`. */
const counted = (n: number, one: string) => `${n} ${n === 1 ? one : (plurals[one]?.[0] ?? one)}`;

/** After "vor", "seit", "in", "nach", "von", "an", "aus", "bei", "mit": `1 Tag`, `3 Tagen`. */
function countedDative(n: number, one: string): string {
  if (n === 1) return `${n} ${dativeOfOne[one] ?? one}`;
  const [many = one, dative] = plurals[one] ?? [];
  return `${n} ${dative ?? (/[ns]$/.test(many) ? many : `${many}n`)}`;
}

/** `einmal`, `3-mal`. */
const repeated = (n: number) => (n === 1 ? 'einmal' : `${n}-mal`);

/** A price a kilogram, as a price a pound where weights are in pounds. */
const ofWeight = (range: WorthRangeSaid): WorthRangeSaid => ({
  ...range,
  ratio: perWeight(range.ratio),
  low: range.low === null ? null : perWeight(range.low),
  high: range.high === null ? null : perWeight(range.high),
});

const spanWith =
  (count: typeof counted) =>
  (ms: number): string => {
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
    const days = count(Math.floor(hours / 24), 'Tag');
    return spare === 0 ? days : `${days} ${spare}${HARD}h`;
  };

/** A length of time in ms: `25 min`, `2 h 10`, `3 h`, `2 Tage 4 h`. */
const span = spanWith(counted);

/** The same after "vor", "seit", "in", "nach", "von": `2 Tagen 4 h`. */
const spanDative = spanWith(countedDative);

/** How long ago, rounded down: an age is never made to look older or finer than it is. */
function age(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'gerade eben';
  return `vor ${pastLength(past, countedDative)}`;
}

/** The same without "vor", as before "alt": `4 Minuten`, `2 Stunden`, `3 Tage`. */
function ageLength(ms: number): string {
  const past = Math.max(0, ms);
  if (past < MINUTE) return 'weniger als eine Minute';
  return pastLength(past, counted);
}

function pastLength(past: number, count: typeof counted): string {
  if (past < HOUR) return count(Math.floor(past / MINUTE), 'Minute');
  if (past < 2 * DAY) return count(Math.floor(past / HOUR), 'Stunde');
  return count(Math.floor(past / DAY), 'Tag');
}

/** From now to a deadline, in ms: `in 2 h 10`, `jetzt`, `25 min überfällig`. */
function countdown(ms: number): string {
  if (Math.abs(ms) < MINUTE) return 'jetzt';
  return ms > 0 ? `in ${spanDative(ms)}` : `${span(ms)} überfällig`;
}

const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} und ${names.at(-1)}`;

/** Places named after what they are take an article; a name of its own does not. */
const genders: Readonly<Record<string, 'm' | 'n'>> = {
  Beet: 'n',
  Erdbeerbeet: 'n',
  Erdbeerfeld: 'n',
  Folienhaus: 'n',
  Freiland: 'n',
  Garten: 'm',
  Gewächshaus: 'n',
  Kühlraum: 'm',
};
const withArticle = (place: string, m: string, n: string, bare: string) => {
  const gender = genders[place];
  return `${gender === undefined ? bare : gender === 'm' ? m : n}${place}`;
};
/** `im Kühlraum`, `in Haus 1` */
const inPlace = (place: string) => withArticle(place, 'im ', 'im ', 'in ');
/** `aus dem Kühlraum`, `aus Haus 1` */
const outOfPlace = (place: string) => withArticle(place, 'aus dem ', 'aus dem ', 'aus ');
/** `vom Kühlraum`, `von Haus 1` */
const fromPlace = (place: string) => withArticle(place, 'vom ', 'vom ', 'von ');
/** `in den Kühlraum`, `ins Folienhaus`, `nach Haus 1` */
const toPlace = (place: string) => withArticle(place, 'in den ', 'ins ', 'nach ');
/** `für den Kühlraum`, `für Haus 1` */
const forPlace = (place: string) => withArticle(place, 'für den ', 'für das ', 'für ');
/** As what a sentence is about: `der Kühlraum`, `Haus 1` */
const thePlace = (place: string) => withArticle(place, 'der ', 'das ', '');

// Trays that would do better elsewhere, and shade: labels of what such a task rests on.

const trayEvidence: Readonly<Record<string, string>> = {
  'better-at-least': 'Dort besser, mindestens (99 von 100 Malen)',
  'better-at-most': 'Dort besser, höchstens (99 von 100 Malen)',
  'band-hours-more': 'Dort mehr Stunden am Tag im Wohlfühlbereich mit trockenen Blättern',
  'better-hours-a-day':
    'Dort besser, h am Tag: Stunden im Wohlfühlbereich, weniger die zu heißen und die Hälfte der nassen',
  'carrying-minutes': 'Minuten zum Tragen',
  'cold-hours-fewer': 'Dort weniger Stunden am Tag zu kalt',
  'days-to-ready': 'Tage bis erntereif; unter dem Grenzwert bleiben sie stehen',
  'harmful-hours-fewer': 'Weniger schädliche Stunden am Tag (Hitze, Kälte, Krankheitswetter)',
  'heat-ahead': 'Hitze über dem Grenzwert, heute noch zu erwarten',
  'heat-now': 'Temperatur innen',
  'heat-of-the-day': 'Hitze über dem Grenzwert, heute insgesamt',
  'heat-so-far': 'Hitze über dem Grenzwert, heute bisher',
  'hot-hours-fewer': 'Dort weniger Stunden am Tag zu heiß',
  'hottest-ahead': 'Höchstwert, heute noch zu erwarten',
  'mould-seen': 'Schimmel wurde daran gesehen',
  'move-to': 'Wohin',
  'moved-days-ago': 'Umgestellt vor Tagen',
  'moving-spares': 'Spart voraussichtlich; Grenzwert ist, was das Tragen kostet',
  'work-spares': 'Würde sparen; Grenzwert ist, was die Minuten kosten',
  'not-safe-there': 'Dort an einem Tag oder heute Nacht zu heiß oder zu kalt',
  'open-up-first': 'Zuerst lüften: das hätte diese Stunden beendet',
  'room-there': 'Platz dort, in Schalen; Grenzwert ist, was zu tragen ist',
  'shade-first': 'Zuerst schattieren; Tage mit Schattierung bisher',
  'shade-off-in-the-evening': 'Abends wieder abnehmen; Stunden bis Sonnenuntergang',
  'share-spared': 'Anteil der Kultur, der voraussichtlich gerettet wird',
  shaded: 'Heute schattiert',
  'sun-ahead': 'Stunden bis Sonnenuntergang',
  'trays-by-farm-file': 'Schalen laut Betriebsdatei',
  'trays-of': 'Kultur',
  'trays-standing': 'Schalen',
  'wet-hours-fewer': 'Blätter dort weniger Stunden am Tag nass',
};
const trayMissing: Readonly<Record<string, string>> = {
  'crop-band': 'die Temperaturen, die der Kultur zusagen, in der Betriebsdatei',
  'days-in-both-places': 'fünf Tage, die an beiden Plätzen bekannt sind',
  'days-to-ready': 'den Zeitpunkt der Erntereife (Tage der Kultur in der Betriebsdatei)',
  'room-in-the-place': 'die Zahl der Schalen, die am besseren Platz stehen können',
  'yesterday-at-this-hour': 'die Messwerte von gestern ab dieser Stunde',
};
const trayInputs: Readonly<Record<string, string>> = {
  'bad-hours': 'Stunden zu heiß, oder am Tag nass',
  batches: 'Abgeschlossene Sätze, aus denen gelernt ist',
  days: 'Tage',
  'days-compared': 'Verglichene Tage',
  'days-from': 'Quelle der Tage',
  'days-left-out': 'Ausgelassene Tage, zu wenig bekannt',
  'days-worth': 'So viel wert wie so viele einzelne Tage',
  free: 'Freie Plätze für Schalen',
  from: 'Von',
  'harmful-hours-fewer': 'Weniger schädliche Stunden am Tag',
  'lost-per-hour': 'Verlust je schädliche Stunde',
  'lost-per-hour-least': 'Verlust je schädliche Stunde, mindestens',
  'lost-per-hour-most': 'Verlust je schädliche Stunde, höchstens',
  minutes: 'Minuten zum Tragen',
  'minutes-from': 'Quelle der Minuten',
  'open-already': 'Davon mit offener Lüftung',
  place: 'Platz',
  trays: 'Schalen',
  'warmer-than-yesterday': 'Wärmer als gestern um',
  'would-help': 'Davon hätte Lüften beendet',
};

// Watering by a soil probe.

const waterEvidence: Readonly<Record<string, string>> = {
  'soil-dries': 'Boden trocknet, im Tempo des letzten Tages',
  'soil-dry-in': 'Bis der Boden beim Grenzwert ist, in diesem Tempo',
  'soil-moisture-now': 'Bodenfeuchte am trockensten Fühler',
  'water-before-evening':
    'So früh gießen, dass die Blätter zur Nacht trocken sind; Stunden bis Sonnenuntergang',
  'water-before-the-heat': 'Vor der Hitze des Tages gießen; Stunden bis Sonnenuntergang',
  'water-in-the-morning': 'Am Morgen gießen; Stunden bis Sonnenaufgang',
  'water-today': 'Heute gießen',
};
const waterSentences: Readonly<Record<string, (fact: Spoken) => string>> = {
  'soil-moisture-now': ({ value, limit }) =>
    `Der Bodenfühler zeigt ${figure(value)}${HARD}%; der Grenzwert ist ${figure(limit)}${HARD}%.`,
  'soil-dry-in': ({ value }) => `Im Tempo des letzten Tages ist er in ${hoursOf(value)} erreicht.`,
  'water-before-evening': () => 'Früh genug, damit die Blätter zur Nacht trocken sind.',
  'water-before-the-heat': () => 'Vor der Hitze des Tages.',
  'water-in-the-morning': () => 'Bis zum Morgen warten: nachts nasse Blätter faulen.',
};

type Spoken = { readonly value: Evidence['value']; readonly limit: Evidence['limit'] };
const traySentences: Readonly<Record<string, (fact: Spoken) => string>> = {
  'band-hours-more': ({ value }) =>
    `Dort lag es in den letzten Tagen ${figure(value)}${HARD}h am Tag länger im Wohlfühlbereich der Kultur.`,
  'better-hours-a-day': ({ value }) =>
    `Dort war es in den letzten Tagen ${figure(value)}${HARD}h am Tag besser, heiße und nasse Stunden abgezogen.`,
  'days-to-ready': ({ value }) => `Sie stehen noch etwa ${daysOf(value)}.`,
  'heat-now': ({ value, limit }) =>
    `Innen sind es ${figureDegrees(value)}; der Grenzwert der Kultur ist ${figureDegrees(limit)}.`,
  'heat-of-the-day': ({ value }) =>
    `Die Hitze über dem Grenzwert kommt heute auf etwa ${figureHeat(value)}.`,
  'hottest-ahead': ({ value, limit }) =>
    `Innen werden etwa ${figureDegrees(value)} erwartet; der Grenzwert der Kultur ist ${figureDegrees(limit)}.`,
  'mould-seen': () => 'Schimmel wurde daran gesehen: sie kommen nicht zwischen saubere.',
  'moved-days-ago': ({ value }) => `Sie wurden vor ${daysOfDative(value)} umgestellt.`,
  'moving-spares': ({ value, limit }) =>
    `Das spart voraussichtlich etwa ${figure(value)}; das Tragen kostet etwa ${figure(limit)}.`,
  'work-spares': ({ value, limit }) =>
    `Das würde etwa ${figure(value)} sparen; die Minuten kosten etwa ${figure(limit)}.`,
  'not-safe-there': ({ value }) =>
    `${value} sieht besser aus, aber dort war es zu heiß oder zu kalt, oder wird es heute Nacht.`,
  'open-up-first': () => 'Zuerst lüften: Außenluft würde genügen.',
  'room-there': ({ value, limit }) =>
    `Dort ist Platz für ${amount(value, 'Schale', 'Schalen')}; zu tragen wären ${figure(limit)}.`,
  'shade-first': () => 'Zuerst schattieren und drei Tage lang sehen, was das bringt.',
  'shade-off-in-the-evening': () => 'Abends wieder abnehmen.',
  shaded: () => 'Laut Eintrag ist schattiert.',
  'trays-by-farm-file': () => 'Es gelten die Schalen aus der Betriebsdatei.',
};

// What the terms of a task's evidence are called on screen.

/** Those of sowing and harvest. */
const growingLabels = {
  'harvest-crop': 'Kultur',
  'harvest-for': 'Für die Lieferung am',
  'harvest-trays': 'Schalen, die dort stehen',
  'harvest-weight': 'Gewicht, das sie voraussichtlich bringen',
  'over-in': 'Vorbei in etwa',
  'over-since': 'Vorbei seit etwa',
  'ready-chance': 'Wahrscheinlichkeit, jetzt erntereif zu sein',
  'ready-expected': 'Voraussichtlich erntereif in',
  'seen-ready': 'Erntereif gesehen vor',
  'sow-by-told-days': 'Nach den Tagen der Betriebsdatei, für',
  'sow-chance': 'Wahrscheinlichkeit, rechtzeitig erntereif zu sein',
  'sow-crop': 'Kultur',
  'sow-first-batches': 'Bisherige Sätze, zu wenige für eine Wahrscheinlichkeit',
  'sow-for': 'Für die Lieferung am',
  'sow-late': 'Der richtige Tag ist vorbei, für die Lieferung am',
  'sow-trays': 'Schalen zu säen',
};

/** Labels beside a value: "Leaves wet for", then 6.5 h. */
export const evidenceLabels: Readonly<Record<string, string>> = {
  ...growingLabels,
  ...trayEvidence,
  ...waterEvidence,
  'above-limit-minutes': 'Über dem Grenzwert seit',
  battery: 'Batterie',
  'chance-for-ripe': 'Wahrscheinlichkeit, dass die Nacht das Reife trifft',
  'chance-of-cold': 'Wahrscheinlichkeit, dass es draußen kälter wird, als die Kultur verträgt',
  'chance-of-damage': 'Wahrscheinlichkeit eines Schadens heute Nacht',
  'burns-litres': 'Kraftstoff für diesen Lauf',
  'chance-under-cover': 'Wahrscheinlichkeit eines Schadens auch unter der Abdeckung',
  'cleaning-brings': 'Ausputzen bringt, nach Abzug der Arbeit',
  'closed-stays-damp': 'Luftfeuchte, die geschlossen innen bleibt',
  'coil-below-air': 'Verdampfer kälter als die Luft um',
  'colder-than-ever': 'Luft kälter als je zuvor',
  'cover-gain': 'Was die Abdeckung hier in neun von zehn klaren Nächten bringt',
  covers: 'Abdeckung',
  'cycle-moved-by': 'Ganzer Kühltakt verschoben um',
  'chance-of-frost': 'Wahrscheinlichkeit von Frost draußen heute Nacht',
  'minutes-spared': 'Ersparte Minuten für Schließen und Lüften',
  'open-cold-hours-more':
    'Mehr Stunden schädlicher Kälte bei offener Lüftung, Frost zehnfach gezählt',
  'open-damp-hours-fewer': 'Weniger Stunden, die einer Krankheit passen, bei offener Lüftung',
  'open-night-spares': 'Was eine Nacht mit offener Lüftung dem erspart, was dort steht',
  'usually-shut-in': 'Üblicherweise geschlossen in',
  'cutting-allowed': 'Zurückschneiden ist möglich, wegen',
  'cutting-brings': 'Zurückschneiden bringt, gegenüber Weiterpflücken',
  'cycle-bottom-above': 'Tiefpunkt des Kühltakts über dem Sollwert',
  'damage-after-sunset': 'Schaden zu erwarten nach Sonnenuntergang um',
  'daylight-in': 'Trocknendes Licht beginnt in',
  'door-open-minutes': 'Tür offen seit',
  'days-since-check': 'Tage mit Messungen seit der Prüfung in schmelzendem Eis',
  'doubtful-readings': 'Zweifelhafte Messwerte in 24 Stunden',
  'drop-in-risk': 'Anteil am Wert, den das voraussichtlich rettet',
  'film-not-enough': 'Nacht kälter, als die Kultur verträgt, um',
  'fruit-hanging': 'Gezählte Früchte und Blüten',
  'heard-minutes-ago': 'Zuletzt gehört vor',
  'heat-limit-near': 'Nahe an der Hitzegrenze',
  'inside-humidity': 'Luftfeuchte innen',
  'inside-temperature': 'Temperatur innen',
  'lot-above-hours': 'Über dem Grenzwert seit der Ernte',
  'lot-chilling': 'Lag kälter, als er verträgt',
  'lot-crop': 'Posten',
  'lot-days-left': 'Verbleibende Tage, mindestens',
  'lot-days-most': 'Verbleibende Tage, höchstens',
  'lot-freezing': 'Lag unter seinem Gefrierpunkt',
  get 'lot-heat'() {
    return `Lag über ${figureDegrees(35)}`;
  },
  'lot-over-before-sale': 'Tage Reserve bei der nächsten Lieferung',
  'lot-released': 'Darf laut Eintrag bleiben',
  'lot-slack': 'Tage Reserve bei der nächsten Lieferung',
  'lot-unknown-hours': 'Nicht bekannt, vielleicht darüber',
  'lot-weight': 'Restgewicht',
  'keep-green-leaves': 'Grüne Blätter stehen lassen',
  'last-picking-in': 'Letzter lohnender Pflückgang in',
  'own-picking-speed': 'Minuten je Kilogramm, nach den eigenen Pflückgängen',
  'minutes-to-limit': 'Zeit, bis die Luft den Grenzwert erreicht',
  'may-be': 'Was es sein kann',
  'never-checked-days': 'Tage mit Messungen hier ohne Prüfung in schmelzendem Eis',
  'no-way-down-minutes': 'Über dem Kühltakt ohne Weg nach unten seit',
  'night-goes-first': 'Die Kälte der Nacht geht vor',
  'night-needs-warmth': 'Tiefstwert draußen heute Nacht; das Haus braucht seine Wärme',
  'off-minutes': 'Kühlung aus seit',
  'one-value-minutes': 'Gleicher Wert, obwohl der Raum taktet, seit',
  'open-air': 'Temperatur im Freien',
  'outside-cooler-by': 'Draußen kühler um',
  'outside-damper-by': 'Außenluft enthält mehr Wasser, um',
  'outside-drier-by': 'Außenluft enthält weniger Wasser, um',
  'outside-freezing': 'Frostige Luft draußen',
  'produce-estimate': 'Mitte einer Kiste, gemessen oder geschätzt',
  'purge-first': 'Feuchte, die zuerst hinaus kann',
  'rain-ahead': 'Regen, vorhergesagt für die nächsten 24 Stunden',
  'ripe-value': 'Wert des Reifen',
  'room-air': 'Luft im Raum',
  'room-power': 'Aufgenommene Leistung',
  'rule-broke': 'Eine Regel ist ausgefallen',
  'run-for-minutes': 'Der Stromerzeuger läuft dann etwa',
  'run-within-minutes': 'Der Stromerzeuger muss laufen binnen',
  'silent-hours': 'Stumm seit',
  'since-sunrise': 'Zeit seit Sonnenaufgang',
  'stay-open-dry': 'Mild genug, um offen und trocken zu bleiben; Tiefstwert draußen',
  'steep-rise': 'Steilster Anstieg der Luft',
  'still-to-gain': 'Noch zu gewinnen durch Weiterpflücken',
  'still-too-warm-to-close': 'Innen noch zu warm zum Schließen',
  'stored-freezing': 'Temperatur, wo Posten lagern',
  'stuck-hours': 'Gleicher Wert seit',
  'sunset-in': 'Zeit bis Sonnenuntergang',
  'top-to-bottom-minutes': 'Auf dem Weg von oben nach unten im Kühltakt seit',
  'too-near-sunset': 'Zu nahe am Sonnenuntergang, um zum Trocknen zu lüften',
  'tonight-low': 'Tiefstwert heute Nacht',
  'tonight-outside-low': 'Tiefstwert heute Nacht draußen',
  'under-cover': 'Temperatur unter der Abdeckung',
  'under-cover-rising': 'Zu heiß unter der Abdeckung binnen',
  'value-at-risk':
    'Ausfall, den die Abdeckung verhindern kann; Grenzwert ist der Aufwand des Abdeckens',
  vents: 'Lüftung',
  'warms-within': 'Zeitkonstante des Raums',
  'wet-hours': 'Blätter nass seit',
};

/** What is missing, as it follows "Nicht zu sagen ohne": in the accusative. */
export const missingLabels: Readonly<Record<string, string>> = {
  ...trayMissing,
  'climate-of-the-place': 'Jahre mit Tagestemperaturen, von einer Station oder von hier',
  'covers-on-or-off': 'den Stand der Abdeckung (aufgelegt oder nicht)',
  'delivery-days': 'Liefertage in der Betriebsdatei',
  'door-or-room-temperature': 'den Türkontakt oder einen Messwert der Raumluft',
  'fresh-fruit-count': 'eine Zählung der Früchte aus den letzten vier Wochen',
  'growing-days': 'frühere Sätze der Kultur oder ihre Wachstumstage in der Betriebsdatei',
  'frost-years':
    'mindestens acht Jahre mit nächtlichen Tiefstwerten, von einer Station oder von hier',
  'fruit-count': 'eine Zählung der Früchte und Blüten, die dort hängen',
  'inside-humidity': 'einen Messwert der Luftfeuchte innen',
  'inside-temperature': 'einen Messwert der Temperatur innen',
  'leaf-wetness-history': 'Messwerte der Luftfeuchte aus den letzten Stunden',
  'lot-life': 'Haltbarkeit der Kultur und bisherige Wärme des Postens',
  'more-years': 'mindestens acht Saisons mit nächtlichen Tiefstwerten',
  'night-forecast': 'eine Vorhersage für heute Nacht von einem Fühler im Freien an diesem Platz',
  'outside-humidity': 'einen Messwert der Luftfeuchte draußen',
  'outside-temperature': 'einen Messwert der Temperatur draußen',
  'outside-temperature-earlier': 'einen früheren Messwert der Temperatur draußen',
  'own-nights': 'mehr hier gemessene Nächte',
  price: 'einen Preis für die Kultur',
  'probe-last-heard':
    'die Zeit, zu der der Fühler zuletzt gehört oder einem Platz zugeordnet wurde',
  'room-power': 'einen Messwert der Leistung, die die Kühlung aufnimmt',
  'room-temperature': 'einen Messwert der Raumluft',
  'room-temperature-history': 'mehr Messwerte der Raumluft',
  'rule-broke': 'eine Regel, die ausgefallen ist',
  'no-frost-years': 'frühere Saisons mit einem Frost, der schadet',
  'station-record': 'die Aufzeichnungen einer Wetterstation',
  'soil-moisture-here': 'einen Messwert der Bodenfeuchte von hier aus den letzten drei Stunden',
  'sun-times': 'Sonnenaufgang und Sonnenuntergang, die es auf dieser Breite heute nicht gibt',
  'tonight-outside-low': 'eine Vorhersage des Tiefstwerts draußen für heute Nacht',
  'wet-days': 'Aufzeichnungen von Regen oder nassen Blättern',
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
const hoursOf = (value: Evidence['value']) => amount(value, 'Stunde', 'Stunden');
const minutesOf = (value: Evidence['value']) =>
  typeof value === 'number' && value >= 120
    ? hoursOf(value / 60)
    : amount(typeof value === 'number' ? Math.round(value) : value, 'Minute', 'Minuten');

const roomCauses: Readonly<Record<string, string>> = {
  door: 'Tür',
  unit: 'Kühlaggregat',
  power: 'Strom',
  controller: 'Einstellung des Reglers (Zahl und Einheit ablesen)',
  probe: 'Fühler',
};

/** "Prüfen: Strom, Kühlaggregat und Tür. Welches es ist, können die Fühler hier nicht sagen." */
function mayBe(causes: readonly string[]): string {
  const names = causes.map((cause) => roomCauses[cause] ?? cause);
  if (names.length < 2) return `Wahrscheinliche Ursache: ${names[0] ?? notKnown}.`;
  return `Prüfen: ${listed(names)}. Welches es ist, können die Fühler hier nicht sagen.`;
}
const daysOf = (value: Evidence['value']) => amount(value, 'Tag', 'Tage');
/** After "vor", "seit", "in". */
const daysOfDative = (value: Evidence['value']) => amount(value, 'Tag', 'Tagen');

type Say = (fact: Evidence) => string;

/** Why cutting to the crown may be done. */
const cuttingReasons: Readonly<Record<string, string>> = {
  renovation: 'Der letzte Pflückgang liegt weniger als vier Wochen zurück.',
  dormant: 'Die Pflanzen sind in Winterruhe.',
  grower: 'Der Schnitt ist gewünscht; das ist eingetragen.',
};

/** A day among the facts. */
const dayOf = (value: Evidence['value']) => dayInText(figure(value));

const growingSentences: Readonly<Record<string, Say>> = {
  'sow-for': ({ value }) => `Für ${dayOf(value)}.`,
  'sow-chance': ({ value }) =>
    `Rechtzeitig erntereif mit einer Wahrscheinlichkeit von ${whole(value)}${HARD}%.`,
  'sow-by-told-days': () => 'Nach den Tagen der Betriebsdatei, da noch kein Satz beendet ist.',
  'sow-first-batches': ({ value }) =>
    `Erst ${amount(value, 'Satz ist', 'Sätze sind')} beendet, darum gibt es keine Wahrscheinlichkeit.`,
  'sow-late': ({ value }) =>
    `Der richtige Tag ist vorbei: bis ${dayOf(value)} wird es vielleicht nicht erntereif.`,
  'seen-ready': () => 'Jemand hat es erntereif gesehen.',
  'ready-chance': ({ value }) =>
    `Jetzt erntereif mit einer Wahrscheinlichkeit von ${whole(value)}${HARD}%.`,
  'ready-expected': ({ value }) =>
    typeof value === 'number' && value > 0
      ? `Voraussichtlich in ${daysOfDative(value)} erntereif.`
      : 'Nach seinen Tagen ist es erntereif.',
  'harvest-for': ({ value }) => `Es ist für ${dayOf(value)}.`,
  'over-in': ({ value }) => `In etwa ${daysOfDative(value)} ist es vorbei.`,
  'over-since': ({ value }) =>
    `Nach seiner Haltbarkeit ist es seit ${daysOfDative(value)} vorbei: schneiden oder räumen.`,
};

/** `3 Schalen Basilikum und 2 Schalen Radieschen`, where the facts tell of trays. */
function traysNamed(because: readonly Evidence[], of: 'sow' | 'harvest'): string | null {
  const trays = new Map<string, number>();
  let crop = '';
  for (const { what, value } of because) {
    if (what === `${of}-crop`) crop = figure(value);
    if (what === `${of}-trays`) trays.set(crop, (trays.get(crop) ?? 0) + Number(value));
  }
  if (trays.size === 0) return null;
  if (trays.size > 3) return counted(sumOf([...trays.values()]), 'Schale');
  return listed([...trays].map(([name, n]) => `${counted(n, 'Schale')} ${name}`));
}
const sumOf = (all: readonly number[]) => all.reduce((sum, each) => sum + each, 0);

/** How vents and covers stand. */
const stands: Readonly<Record<string, string>> = {
  open: 'offen',
  closed: 'geschlossen',
  on: 'aufgelegt',
  off: 'abgenommen',
};
const standsAs = (value: Evidence['value']) => stands[String(value)] ?? figure(value);

const sentences: Readonly<Record<string, Say>> = {
  ...growingSentences,
  ...traySentences,
  ...waterSentences,
  'wet-hours': ({ value }) => `Die Blätter sind seit ${hoursOf(value)} nass.`,
  'outside-drier-by': ({ value }) =>
    `Die Außenluft enthält ${figure(value)}${HARD}g/m³ weniger Wasser.`,
  'outside-damper-by': ({ value }) =>
    `Die Außenluft enthält ${figure(value)}${HARD}g/m³ mehr Wasser, aber die Hitze geht vor.`,
  'inside-temperature': ({ value, limit }) =>
    `Innen sind es ${figureDegrees(value)}; gelüftet wird ab ${figureDegrees(limit)}.`,
  'heat-limit-near': ({ value, limit }) =>
    `Innen sind es ${figureDegrees(value)}, nahe am Grenzwert von ${figureDegrees(limit)}.`,
  'outside-cooler-by': ({ value }) => `Draußen ist es ${figureApart(value)} kühler.`,
  'night-needs-warmth': ({ value }) =>
    `Vor der Dämmerung wieder schließen: der Tiefstwert draußen heute Nacht ist etwa ${figureDegrees(value)}.`,
  'tonight-outside-low': ({ value }) =>
    `Der Tiefstwert draußen heute Nacht ist etwa ${figureDegrees(value)}.`,
  'film-not-enough': ({ value }) =>
    `Das ist ${figureApart(value)} kälter, als die Kultur verträgt: Folie allein hält das nicht ab, darum innen abdecken oder Schalen umstellen.`,
  'purge-first': ({ value }) =>
    `Die Außenluft enthält ${figure(value)}${HARD}g/m³ weniger Wasser: zuerst eine Viertelstunde lüften.`,
  'closed-stays-damp': ({ value }) =>
    `Innen sind es ${figure(value)}${HARD}% Luftfeuchte, und geschlossen bleibt es feucht.`,
  'chance-of-damage': ({ value, limit }) =>
    limit === null
      ? `Die Wahrscheinlichkeit eines Schadens heute Nacht ist ${whole(value)}${HARD}%.`
      : `Die Wahrscheinlichkeit eines Schadens heute Nacht ist ${whole(value)}${HARD}%; Abdecken lohnt ab ${whole(limit)}${HARD}%.`,
  'tonight-low': ({ value, limit }) =>
    `Der Tiefstwert heute Nacht ist etwa ${figureDegrees(value)}; Schaden beginnt bei ${figureDegrees(limit)}.`,
  'chance-for-ripe': ({ value, limit }) =>
    limit === null
      ? `Die Wahrscheinlichkeit, dass die Nacht das Reife trifft, ist ${whole(value)}${HARD}%.`
      : `Die Wahrscheinlichkeit, dass die Nacht das Reife trifft, ist ${whole(value)}${HARD}%; Pflücken lohnt ab ${whole(limit)}${HARD}%.`,
  'rain-ahead': ({ value }) =>
    `Für die nächsten 24 Stunden sind ${figure(value)}${HARD}mm Regen vorhergesagt.`,
  'under-cover-rising': ({ value }) =>
    `So wird es unter der Abdeckung in etwa ${minutesOf(value)} zu heiß.`,
  'chance-under-cover': ({ value }) =>
    `Unter der Abdeckung bleibt hier eine Wahrscheinlichkeit eines Schadens von ${whole(value)}${HARD}%.`,
  'under-cover': ({ value }) => `Unter der Abdeckung sind es ${figureDegrees(value)}.`,
  'open-air': ({ value }) => `Im Freien sind es ${figureDegrees(value)}, die Gefahr ist vorbei.`,
  'door-open-minutes': ({ value }) => `Die Tür ist seit ${minutesOf(value)} offen.`,
  'steep-rise': ({ value }) =>
    `Die Luft stieg in Minuten um ${figureApart(value)} und bleibt oben, wie bei offener Tür.`,
  'room-air': ({ value, limit }) =>
    `Die Luft im Raum hat ${figureDegrees(value)}; der Grenzwert ist ${figureDegrees(limit)}.`,
  'room-power': ({ value }) => `Die Kühlung nimmt ${figure(value)}${HARD}W auf.`,
  'off-minutes': ({ value }) => `Die Kühlung ist seit ${minutesOf(value)} aus.`,
  'minutes-to-limit': ({ value }) => `Die Luft erreicht den Grenzwert in etwa ${minutesOf(value)}.`,
  'above-limit-minutes': ({ value }) =>
    `Die Luft liegt seit ${minutesOf(value)} über dem Grenzwert.`,
  'produce-estimate': ({ value }) => `Die Mitte einer Kiste hat etwa ${figureDegrees(value)}.`,
  'cycle-bottom-above': ({ value }) =>
    `Der kälteste Wert des Raums liegt jetzt ${figureApart(value)} über dem Sollwert.`,
  'no-way-down-minutes': ({ value }) =>
    `Die Luft hat ihren üblichen Kühltakt verlassen und geht seit ${minutesOf(value)} nicht mehr nach unten.`,
  'top-to-bottom-minutes': ({ value, limit }) =>
    `Die Kühlung hat die Luft seit ${minutesOf(value)} nicht heruntergebracht; sonst braucht sie höchstens ${minutesOf(limit)}.`,
  'colder-than-ever': ({ value, limit }) =>
    `Die Luft hat ${figureDegrees(value)}, kälter als je zuvor (${figureDegrees(limit)}): Ware kann gefrieren.`,
  'cycle-moved-by': ({ value }) =>
    `Die Kühlung geht auf und ab wie immer, aber ${figureApart(Math.abs(Number(value)))} ${Number(value) > 0 ? 'wärmer' : 'kälter'} als bisher: vielleicht hat jemand die Einstellung verändert.`,
  'one-value-minutes': ({ value }) =>
    `Er meldet seit ${minutesOf(value)} den gleichen Wert, in einem Raum, der nie stillsteht.`,
  'coil-below-air': ({ value }) => `Der Verdampfer ist ${figureApart(value)} kälter als die Luft.`,
  'may-be': ({ value }) => mayBe(String(value ?? '').split(' ')),
  'run-within-minutes': ({ value }) => `Er muss in den nächsten ${minutesOf(value)} laufen.`,
  'run-for-minutes': ({ value }) => `Er läuft dann etwa ${minutesOf(value)}.`,
  'burns-litres': ({ value }) => `Das verbraucht etwa ${figure(value)}${HARD}Liter.`,
  'silent-hours': ({ value }) => `Er ist seit ${hoursOf(value)} stumm.`,
  'days-since-check': ({ value, limit }) =>
    `Seit der letzten Prüfung in schmelzendem Eis hat er an ${daysOfDative(typeof value === 'number' ? Math.floor(value) : value)} gemessen; geplant ist eine Prüfung alle ${daysOf(limit)}.`,
  'never-checked-days': ({ value }) =>
    `Er misst hier seit ${daysOfDative(typeof value === 'number' ? Math.floor(value) : value)} und wurde nie in schmelzendem Eis geprüft.`,
  'stuck-hours': ({ value }) => `Er meldet seit ${hoursOf(value)} den gleichen Wert.`,
  battery: ({ value, unit }) => `Seine Batterie hat noch ${figure(value)} ${unit}.`,
  'doubtful-readings': ({ value }) =>
    `${amount(value, 'Messwert', 'Messwerte')} aus 24 Stunden ${figure(value) === '1' ? 'war' : 'waren'} zweifelhaft.`,
  'rule-broke': ({ value }) => `Nicht zu sagen: eine Regel ist ausgefallen (${figure(value)}).`,
  'lot-days-left': ({ value, limit }) =>
    `Der Posten hält sich mindestens noch ${daysOf(value)}; die nächste Lieferung ist in ${daysOfDative(limit)}.`,
  'lot-over-before-sale': () =>
    'Vielleicht hält er nicht bis zur nächsten Lieferung: heute entscheiden.',
  'lot-slack': () => 'Vielleicht hält er nicht bis zur übernächsten Lieferung.',
  'lot-days-most': ({ value }) =>
    value === 0
      ? 'Nach seinen Zahlen ist die Haltbarkeit aufgebraucht.'
      : `Der Posten hält sich höchstens noch ${daysOf(value)}.`,
  'lot-freezing': () =>
    'Der Posten lag unter seinem Gefrierpunkt, darum lassen sich keine Tage angeben.',
  'lot-chilling': ({ limit }) =>
    `Der Posten lag unter ${figureDegrees(limit)}, kälter, als er verträgt, darum lassen sich keine Tage angeben.`,
  'lot-heat': () =>
    `Der Posten lag über ${figureDegrees(35)}, wo die Zahlen enden, darum lassen sich keine Tage angeben.`,
  'lot-above-hours': ({ value, limit }) =>
    `Der Posten lag seit der Ernte ${hoursOf(value)} über seinem Grenzwert; die vereinbarte Höchstzeit ist ${hoursOf(limit)}.`,
  'lot-unknown-hours': ({ value }) =>
    value === 0 ? '' : `Weitere ${hoursOf(value)} sind nicht bekannt und lagen vielleicht darüber.`,
  'lot-released': () => 'Eine namentlich genannte Person hat gesagt, dass der Posten bleiben darf.',
  'stored-freezing': ({ value }) =>
    `Wo Posten lagern, sind es ${figureDegrees(value)}: Blätter gefrieren wenig unter null.`,
  vents: ({ value }) => `Die Lüftung ist laut Eintrag ${standsAs(value)}.`,
  'open-damp-hours-fewer': ({ value }) =>
    `Bei offener Lüftung passen etwa ${hoursOf(value)} der Nacht weniger zu einer Krankheit.`,
  'minutes-spared': ({ value }) =>
    `Das spart etwa ${figure(value)}${HARD}min für Schließen und erneutes Lüften.`,
  'usually-shut-in': () => 'Zu dieser Stunde wird üblicherweise geschlossen.',
  covers: ({ value }) => `Die Abdeckung ist laut Eintrag ${standsAs(value)}.`,
  'night-goes-first': () => 'Die Kälte der Nacht geht vor.',
  'still-too-warm-to-close': () => 'Innen ist es zum Schließen noch zu warm.',
  'stay-open-dry': ({ value }) =>
    `Bei einem Tiefstwert von etwa ${figureDegrees(value)} draußen kann es offen und trocken bleiben.`,
  'still-to-gain': ({ value }) =>
    typeof value === 'number' && value > 0
      ? `Weiterpflücken brächte noch etwa ${figure(value)}.`
      : 'Kein weiterer Pflückgang lohnt seinen Aufwand.',
  'fruit-hanging': ({ value }) => `${figureWeight(value)} Früchte und Blüten wurden gezählt.`,
  'last-picking-in': ({ value }) => `Der letzte lohnende Pflückgang ist in ${hoursOf(value)}.`,
  'own-picking-speed': ({ value }) =>
    `Nach den Pflückgängen dieser Saison braucht ein ${kilogramWord()} ${figure(typeof value === 'number' ? perWeight(value) : value)}${HARD}min.`,
  'cleaning-brings': ({ value }) =>
    `Ausputzen bringt etwa ${figure(value)}, nach Abzug der Arbeit.`,
  'keep-green-leaves': () =>
    'Ausläufer, tote und fleckige Blätter und faule Früchte herausnehmen; die grünen Blätter stehen lassen.',
  'cutting-allowed': ({ value }) => cuttingReasons[String(value)] ?? '',
  'cutting-brings': ({ value }) => `Zurückschneiden bringt etwa ${figure(value)}.`,
  'outside-freezing': ({ value }) =>
    `Die Außenluft hat ${figureDegrees(value)}: Frost ist schlimmer als nasse Blätter.`,
};

// What is said about tasks, in German.

/** `place` is the place's name, not its id. */
type Titled = {
  readonly kind: TaskKind;
  readonly place: string;
  readonly subject: string | null;
  readonly because: readonly Evidence[];
};

/** A short command. */
export function title({ kind, place, subject, because }: Titled): string {
  const what = lotNamed(because) ?? subject ?? place;
  if (kind === 'move-produce' && subject === 'freezing')
    return `Posten ${inPlace(place)} vor dem Gefrieren schützen`;
  const growing = kind === 'sow' || kind === 'harvest' ? traysNamed(because, kind) : null;
  if (growing !== null) return `${growing} ${inPlace(place)} ${kind === 'sow' ? 'säen' : 'ernten'}`;
  const titles: Readonly<Record<TaskKind, string>> = {
    'open-up': subject === 'tonight' ? `${place} über Nacht offen lassen` : `${place} lüften`,
    'close-up': `${place} schließen`,
    shade: `${place} schattieren`,
    'move-trays': moving(because, place),
    cover: `${place} abdecken`,
    uncover: `${place} aufdecken`,
    'pick-now': `${place} jetzt pflücken`,
    'cut-back': subject === 'clear-out' ? `${place} ausputzen` : `${place} zurückschneiden`,
    water: `${place} gießen`,
    'shut-door': `Tür ${inPlace(place)} schließen`,
    'see-to-unit': `Kühlaggregat ${inPlace(place)} prüfen`,
    'run-generator': `Stromerzeuger ${forPlace(place)} laufen lassen`,
    'move-produce': `Ware ${outOfPlace(place)} umlagern`,
    'sell-first': `${what} zuerst verkaufen`,
    'throw-out': `${what} ansehen: behalten oder wegwerfen`,
    sow: `${what} säen`,
    harvest: `${what} ernten`,
    'see-to-probe': battery(because)
      ? `Batterie von ${probe(subject, 'einem')} ${inPlace(place)} wechseln`
      : onlyCheck(because)
        ? `${sentenceCase(probe(subject, 'einen'))} ${inPlace(place)} in schmelzendem Eis prüfen`
        : `Nach ${probe(subject, 'einem')} ${inPlace(place)} sehen`,
  };
  return titles[kind];
}

/** `12 Schalen Basilikum von Haus 1 nach Haus 2 umstellen`. */
function moving(because: readonly Evidence[], place: string): string {
  const said = (what: string) => because.find((fact) => fact.what === what)?.value;
  const to = said('move-to');
  if (to === undefined || to === null) return `Schalen ${outOfPlace(place)} umstellen`;
  const way = `${fromPlace(place)} ${toPlace(String(to))}`;
  if (said('trays-by-farm-file') !== undefined)
    return `Die Schalen dort, ${said('trays-of')}, ${way} umstellen`;
  const trays = amount(said('trays-standing') ?? null, 'Schale', 'Schalen');
  return `${trays} ${said('trays-of')} ${way} umstellen`;
}

/** `8 kg Erdbeeren`, where the facts tell of a lot. */
function lotNamed(because: readonly Evidence[]): string | null {
  const crop = because.find(({ what }) => what === 'lot-crop')?.value;
  const weight = because.find(({ what }) => what === 'lot-weight')?.value;
  return crop === undefined ? null : `${figureWeight(weight ?? null)} ${crop}`;
}

const probe = (subject: string | null, one: 'einem' | 'einen') =>
  subject === null ? `${one} Fühler` : `Fühler ${subject}`;
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
  if (missing.length > 0) return `Nicht zu sagen ohne ${listed(missing.map(missingLabel))}.`;

  // Each fact is said once, and of a long list the first and the last: cause and consequence.
  const spoken = [...new Set(factsSaid(kind, because))].map(sentence).filter((text) => text !== '');
  const whole = spoken.length > 2 && isReason(kind, because);
  return (whole ? [spoken[0], spoken.at(-1)] : spoken.slice(0, 2)).join(' ');
}

const FOOD =
  'Dies ist eine Aufzeichnung, kein Urteil über die Lebensmittel. Vor dem Handeln nach Zeiten und Temperaturen die örtliche Lebensmittelaufsicht fragen.';
const cautions: Partial<Record<TaskKind, string>> = {
  'open-up':
    'Bei Wind zuerst die windabgewandte Seite öffnen, Türen feststellen, bei Böen nie beide Enden öffnen.',
  shade:
    'Folienhäuser sind jetzt am heißesten: trinken, zu zweit oder früh arbeiten, bei Schwindel herauskommen.',
  water:
    'Ein Fühler sagt etwas über eine Stelle: zuerst den Boden fühlen. Den Boden gießen, nicht die Blätter; Wasser auf allem, was roh gegessen wird, muss sauber sein, nach den örtlichen Vorschriften.',
  'move-trays': 'Nie eine Schale mit Schimmel zwischen saubere stellen.',
  cover:
    'Die Ränder gegen Wind beschweren und die Abdeckung am Morgen abnehmen: Sonne darunter verbrennt.',
  uncover:
    'Luft unter der Abdeckung wird in der Sonne schnell heiß: zuerst ein Ende anheben und sie hinauslassen.',
  'cut-back':
    'Grüne Blätter im Herbst zu schneiden kann Erdbeeren ihre Winterhärte kosten: tote Blätter und Ausläufer entfernen, das Grün stehen lassen, bis es flach liegt.',
  'shut-door': 'Zuerst hineinsehen: niemand darf eingeschlossen werden.',
  'see-to-unit':
    'Das Kühlaggregat ausschalten, bevor man hineingreift. Verdrahtung und Kältemittel sind Sache einer zugelassenen Fachkraft, nach den örtlichen Vorschriften.',
  'run-generator':
    'Nur im Freien, mindestens 6\u00a0m von Türen, Fenstern und Lüftungsöffnungen, Auspuff weggerichtet: die Abgase töten, und das schlimmste davon riecht nicht. Vor dem Tanken abstellen und abkühlen lassen, keine Flamme in der Nähe. Umschalter, Erdung und feste Leitungen sind Sache einer zugelassenen Elektrofachkraft, nach den örtlichen Vorschriften; nie über eine Steckdose einspeisen.',
  'move-produce': `${FOOD} Kisten, die aus der Kälte kommen, beschlagen: abgedeckt halten.`,
  'sell-first': FOOD,
  'throw-out': `${FOOD} Nur ein Mensch entscheidet: auf der Seite des Kühlraums namentlich angeben, was daraus wurde. Schimmel wird nicht weggeschnitten, um zu verkaufen.`,
};

/** Care to take where the work can hurt; null where it needs no words. */
export const caution = (kind: TaskKind): string | null => cautions[kind] ?? null;

// Sentences the hub itself makes, in German.

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
  if (facts.readAt === null)
    return `Nicht zu sagen, wie es ${inPlace(name)} ist: noch keine Messwerte.`;
  const parts = [
    facts.temperature === null ? '' : `${temperature(facts.temperature)}`,
    facts.humidity === null ? '' : `${facts.humidity.toFixed(0)}${HARD}% Luftfeuchte`,
  ].filter(Boolean);
  if (facts.stale)
    return `Nicht zu sagen, wie es ${inPlace(name)} jetzt ist: der letzte Stand, ${parts.join(' und ')}, kam ${age(now - facts.readAt)}.`;
  const leaves = facts.wet === null ? '' : facts.wet ? ', Blätter nass' : ', Blätter trocken';
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
      `Seit der Dämmerung gestern zwischen ${degrees(Math.min(...values))} und ${temperature(Math.max(...values))}.`,
    );
  if (strip.temperature.includes(null)) sentences.push('Es gibt Zeiten ohne Messwerte.');
  const wet = strip.wetSpells.map(
    ({ from, to, wetHours }) =>
      `von ${clock(from, zone)} bis ${clock(to, zone)} (${number(wetHours)}${HARD}h)`,
  );
  if (wet.length > 0) sentences.push(`Blätter nass ${listed(wet)}.`);
  const lowest = strip.fan.reduce<StripText['fan'][number] | null>(
    (low, point) => (low === null || point.middle < low.middle ? point : low),
    null,
  );
  if (lowest)
    sentences.push(
      `Der Tiefstwert heute Nacht wird nahe ${temperature(lowest.middle)} erwartet, in acht von zehn Nächten zwischen ${degrees(lowest.low)} und ${temperature(lowest.high)}.`,
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
    task.doBy === null ? '' : `, bis ${clock(Date.parse(task.doBy), zone)}`;
  const parts: string[] = [];
  const first = alarms[0] ?? now[0];
  if (alarms.length > 0 && first) {
    parts.push(`Das kann nicht warten: ${first.title}${by(first)}.`);
    const rest = now.length - 1;
    if (rest > 0) parts.push(`${rest} weitere ${rest === 1 ? 'Aufgabe' : 'Aufgaben'}.`);
  } else if (first) {
    parts.push(
      now.length === 1
        ? `Eine Aufgabe: ${first.title}${by(first)}.`
        : `${now.length} Aufgaben, zuerst: ${first.title}${by(first)}.`,
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
      `Nicht zu sagen, wie es ${listed(unseen.map(inPlace))} ist: keine frischen Messwerte.`,
    );
  if (parts.length === 0)
    parts.push(read ? 'Jetzt ist nichts zu tun.' : 'Es sind noch keine Messwerte gekommen.');
  return parts.join(' ');
}

export const suggestionWords = (place: string, apart: number) =>
  `Seine Temperaturen des letzten Tages weichen höchstens ${difference(apart)} von denen ${inPlace(place)} ab.`;

const refusals: Readonly<Record<string, string>> = {
  'not-json': 'Die Nachricht ist kein JSON',
  'not-a-number': 'Ein Wert ist keine Zahl',
  'unknown-form': 'Die Nachricht hat eine Form, die niemand beschrieben hat',
  'unknown-quantity': 'Die Zentrale kennt diese Größe nicht',
  'unknown-unit': 'Die Einheit gehört nicht zur Größe',
  'bad-name': 'So kann ein Fühler nicht heißen',
  'bad-time': 'Die Zeit ist nicht lesbar',
  'missing-field': 'Ein Feld fehlt',
  'too-long': 'Die Nachricht ist zu lang',
  'not-used': 'Die Zentrale liest das noch nicht',
  'not-its-own': 'Er spricht für einen anderen Fühler',
  'not-allowed': 'Ein Thema (Topic), das nicht sein eigenes ist',
  'bad-packet': 'Was über die Leitung kam, ist kein MQTT oder brach mittendrin ab',
  'sign-in': 'Name oder Passwort falsch, oder zu oft versucht',
  'too-many-probes': 'Mehr unbeschriebene Fühler, als die Zentrale aufnimmt',
  'out-of-range': 'Ein Wert, den kein Fühler meinen kann; behalten, nicht verwendet',
  clock: 'Die Uhr des Fühlers geht falsch; behalten, nicht verwendet',
  spike: 'Ein Sprung, den der nächste Messwert nicht bestätigte; behalten, nicht verwendet',
  'impossible-rate': 'Eine Änderung, schneller als Luft es kann; behalten, nicht verwendet',
  stuck: 'Der Wert hat sich seit Stunden nicht bewegt; behalten, nicht verwendet',
};
export const refusalWords = (reason: string) => refusals[reason] ?? reason;

// Where a crop does best: places compared, and trays that stand.

type Between = readonly [number, number];
const hoursBetween = ([least, most]: Between) =>
  number(least) === number(most)
    ? withUnit(least, 'h')
    : `${number(least)} bis ${withUnit(most, 'h')}`;
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
      ? `${say(of.mean)} (${of.n}, zu wenige für eine Spanne)`
      : `${say(of.mean)} (${say(of.low)} bis ${say(of.high)})`;

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
  `${hoursBetween(tally.inBand)} am Tag im Wohlfühlbereich mit trockenen Blättern, ${hoursBetween(tally.hot)} zu heiß, ${hoursBetween(tally.cold)} zu kalt, Blätter ${hoursBetween(tally.wet)} nass`;

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
      ? `Nicht zu sagen, wie es ${inPlace(name)} war: kein Tag ist ausreichend bekannt.`
      : `${name}: ${tallyWords(tally)}, aus ${countedDative(tally.days, 'Tag')}.`,
  ];
  if (tally !== null && tally.unknown >= 0.05)
    lines.push(
      `${withUnit(tally.unknown, 'h')} am Tag sind nicht bekannt und können alles gewesen sein.`,
    );
  if (tally?.disease && tally.diseaseDays) {
    const [least, most] = tally.diseaseDays;
    lines.push(
      most === 0
        ? 'An keinem dieser Tage passte das Wetter zu einer Krankheit der Kultur. Das ist keine Entwarnung.'
        : `An ${least === most ? most : `${least} bis ${most}`} von ${countedDative(tally.days, 'Tag')} passte das Wetter zu einer Krankheit der Kultur, die Blätter waren im Mittel ${hoursBetween(tally.disease)} am Tag nass. Das ist Wetter, kein Nachweis einer Krankheit.`,
    );
  }
  if (tally !== null && leftOut.length > 0)
    lines.push(`${counted(leftOut.length, 'Tag')} ausgelassen, weil zu wenig davon bekannt ist.`);
  if (before !== null)
    lines.push(`In denselben Wochen von ${listed(told.yearsBefore)}: ${tallyWords(before)}.`);
  else
    lines.push(
      `Wie es in denselben Wochen früherer Jahre war, ist noch nicht bekannt; davon behalten bisher: ${counted(told.daysKept, 'Tag')}.`,
    );
  if (gave !== null) {
    const parts = [
      meanWords(gave.perTray, (kg) => `${withUnit(kg, 'kg', 2)} je Schale`),
      meanWords(gave.days, (days) => `${number(days, 0)} Tage`),
      meanWords(gave.lost, (share) => `${withUnit(100 * share, '%', 0)} Ausfall`),
    ].filter((part) => part !== null);
    lines.push(
      `${gave.batches} ${gave.batches === 1 ? 'abgeschlossener Satz stand' : 'abgeschlossene Sätze standen'} hier: ${listed(parts)}.`,
    );
  }
  lines.push(
    told.free === null
      ? `${counted(told.trays, 'Schale')} hier; wie viele Platz haben, hat niemand angegeben.`
      : `${counted(told.trays, 'Schale')} hier, Platz für ${told.free} weitere.`,
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
    return `${sentenceCase(thePlace(to))} und ${thePlace(from)} sind nicht zu vergleichen: ${counted(days, 'Tag')} an beiden bekannt, oder die Tage sind zu gleich, um als mehrere zu zählen.`;
  const range = `${number(score.low)} bis ${signedHours(score.high)} am Tag, in neunzehn von zwanzig Fällen`;
  if (says === 'no-difference')
    return `Kein klarer Unterschied zwischen ${to} und ${from}: ${range}.`;
  const there = sentenceCase(inPlace(to));
  return says === 'better'
    ? `${there} war es ${signedHours(score.mean)} am Tag besser als ${inPlace(from)} (${range}).`
    : `${there} war es ${signedHours(-score.mean)} am Tag schlechter als ${inPlace(from)} (${number(-score.high)} bis ${signedHours(-score.low)}, in neunzehn von zwanzig Fällen).`;
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
  const rest =
    told.notKnown.length === 0
      ? ''
      : ` Wie es ${listed(told.notKnown.map(inPlace))} war, ist nicht bekannt.`;
  if (told.places < 2) return 'Es gibt nur einen Platz für Schalen, also nichts zu vergleichen.';
  if (best === null || next === null || next.score === null)
    return `Nicht zu sagen, wo ${crop} am besten steht: mindestens fünf Tage müssen an zwei Plätzen bekannt sein.`;
  const { mean, low, high } = next.score;
  const range = `${number(low)} bis ${signedHours(high)}`;
  const sentence = told.sure
    ? `${crop} stand am besten ${inPlace(best)}: ${signedHours(mean)} am Tag vor ${next.name} (${range}, in neunzehn von zwanzig Fällen).`
    : `Kein Platz ist klar der beste für ${crop}. ${sentenceCase(thePlace(best))} liegt vorn, aber der Vorsprung vor ${next.name} kann Zufall sein: ${range} am Tag.`;
  return sentence + rest;
}

export const noBandWords = (crop: string | null) =>
  crop === null
    ? 'In der Betriebsdatei steht keine Kultur mit Wohlfühlbereich, darum lassen sich Plätze nicht vergleichen.'
    : `Plätze lassen sich für ${crop} nicht vergleichen: die Betriebsdatei nennt dafür keinen Wohlfühlbereich.`;

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
    heatLimit === null ? '' : `über ${temperature(heatLimit)}`,
    chill === null ? '' : `unter ${temperature(chill)}`,
    'mit nassen Blättern bei Krankheitswetter',
  ].filter(Boolean);
  const range = `${percent(share.mean)} (${percent(share.low)} bis ${percent(share.high)})`;
  const from =
    share.from === 'own'
      ? `Dieser Anteil, ${range}, ist aus ${share.batches} eigenen abgeschlossenen Sätzen gelernt; er geht mit solchen Stunden einher, was nicht beweist, dass sie ihn verursacht haben.`
      : `Dieser Anteil, ${range}, ist unsere Annahme ohne Quelle, bis zwölf eigene abgeschlossene Sätze ihn zeigen; bisher sind es ${share.batches}.`;
  return `Schädlich sind Stunden ${harmful.join(' oder ')}. Ein Umstellen spart: weniger schädliche Stunden am Tag, mal verbleibende Tage, mal Anteil der Kultur, den jede kostet, mal Wert der Schalen. ${from}`;
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
      ? `Die Schalen dort, ${told.trays} ${told.name}, laut Betriebsdatei`
      : `${counted(told.trays, 'Schale')} ${told.name}`;
  if (verdict === null) return `${which}.`;
  if (verdict === 'act')
    return `${which}: ${moving(because, told.place)}. ${why('move-trays', because)}`;
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
  if (stays !== undefined)
    return `${which}. Stehen lassen. ${sentences[stays.what]?.(stays) ?? ''}`;
  const said = (what: string) => because.find((fact) => fact.what === what);
  const ahead = said('better-hours-a-day');
  const unsure =
    Number(ahead?.value) >= Number(ahead?.limit) && Number(said('better-at-least')?.value) <= 0;
  return unsure
    ? `${which}. Stehen lassen: ein anderer Platz sieht besser aus, aber das kann noch Zufall sein, und das Tragen verlangt 99 von 100 Malen.`
    : `${which}. Stehen lassen: kein anderer Platz ist klar besser.`;
}

const placesComparedScreens = {
  title: (crop: string) => `Wo steht ${crop} am besten`,
  titleNone: 'Wo steht eine Kultur am besten',
  crop: 'Kultur',
  days: 'Tage',
  lastDays: (days: number) => `die letzten ${days} Tage`,
  picture: 'Stunden am Tag je Platz, als Balken von 0 bis 24 Stunden',
  parts: {
    inBand: 'im Wohlfühlbereich, Blätter trocken',
    wetInBand: 'im Wohlfühlbereich, Blätter nass',
    hot: 'zu heiß',
    cold: 'zu kalt',
    unknown: 'nicht bekannt',
  },
  wet: 'dünner Balken: Blätter nass, bei jeder Temperatur',
  axis: (hours: number) => `${hours}${HARD}h`,
  band: (low: string, high: string) => `Der Wohlfühlbereich reicht von ${low} bis ${high}.`,
  limit: (limit: string) => `Über ${limit} nimmt die Kultur Schaden.`,
  score:
    'Tag für Tag verglichen: Stunden im Wohlfühlbereich mit trockenen Blättern, minus eine für jede zu heiße und eine halbe für jede nasse. Die Gewichtung ist unsere.',
  dash: '–',
  here: (crop: string) => `Wie ${crop} hier steht`,
  table: 'Dasselbe als Tabelle, Stunden am Tag',
  columns: {
    place: 'Platz',
    inBand: 'Im Bereich',
    hot: 'Zu heiß',
    cold: 'Zu kalt',
    wet: 'Nass',
    disease: 'Krankheitswetter',
    unknown: 'Nicht bekannt',
    days: 'Tage',
  },
  gaveTitle: 'Was Sätze dort gebracht haben',
  gaveNone: 'Noch kein abgeschlossener Satz davon.',
  gaveColumns: {
    place: 'Platz',
    batches: 'Sätze',
    get perTray() {
      return `${weightUnit()} je Schale`;
    },
    days: 'Tage',
    lost: 'Ausfall',
  },
  pairs: 'Paarweise',
  inWords: 'Jeder Platz in Worten',
  saving: 'Wie eine Ersparnis geschätzt wird',
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
      : `${say(of.mean)} (${say(of.low)} bis ${say(of.high)})`;
  },
  bounds: (of: Between | null) =>
    of === null
      ? '–'
      : number(of[0]) === number(of[1])
        ? number(of[0])
        : `${number(of[0])}–${number(of[1])}`,
  standing: 'Wie es den Schalen hier geht',
  standingNone: 'Soweit angegeben, stehen hier keine Schalen.',
  compare: 'Plätze vergleichen',
  undo: 'Nicht umgestellt: zurücknehmen',
  undone: 'Zurückgenommen; der Verlauf behält beides.',
  notUndone: (sentence: string) => `Nicht zurückgenommen: ${sentence}`,
};

// Fixed words of the pages beyond Today.

const placeScreens = {
  title: 'Plätze',
  none: 'Der Betrieb hat noch keine Plätze.',
  opened: (opened: boolean) => (opened ? 'offen' : 'geschlossen'),
  vents: {
    heading: 'Lüftung',
    unknown: 'Niemand hat gesagt, wie die Lüftung steht.',
    said: (open: boolean, since: string) =>
      `${open ? 'Offen' : 'Geschlossen'}, laut Eintrag ${since}.`,
    usual: (open: boolean) => `${open ? 'Offen' : 'Geschlossen'}, wie zu dieser Stunde üblich.`,
    staysOpen: 'Bleibt laut Eintrag heute Nacht offen.',
    openedNow: 'Ich habe geöffnet',
    closedNow: 'Ich habe geschlossen',
    undo: 'Das war ein Irrtum: zurücknehmen',
  },
  openedUsual: (opened: boolean) =>
    opened ? 'jetzt üblicherweise offen' : 'jetzt üblicherweise geschlossen',
  covered: (covered: boolean) => (covered ? 'abgedeckt' : 'nicht abgedeckt'),
  since: (time: string) => `seit ${time}`,
  now: 'Jetzt',
  all: 'Alle Plätze',
  unknownPlace: 'Diesen Platz gibt es im Betrieb nicht.',
  temperature: 'Temperatur',
  humidity: 'Luftfeuchte',
  dewPoint: 'Taupunkt',
  water: 'Wasser in der Luft',
  spots: 'Messstellen',
  spot: 'Messstelle',
  probe: 'Fühler',
  read: 'Gemessen',
  days: 'Die letzten 30 Tage',
  noDays: 'Noch keine Tage mit Messwerten.',
  year: 'Ein Jahr hier',
  yearWaiting: 'Das Jahr wird gezeichnet…',
  columns: {
    day: 'Tag',
    get low() {
      return `Tiefst ${degree()}`;
    },
    get high() {
      return `Höchst ${degree()}`;
    },
    get mean() {
      return `Mittel ${degree()}`;
    },
    wetHours: 'Nass h',
    longest: 'Längste Nässe h',
    unknown: 'Nicht bekannt h',
    degreeDays: 'Wärmesumme',
    greyMould: 'Grauschimmel 0–1',
  },
  dash: '–',
  dashMeans: 'Ein Strich heißt nicht bekannt. Eine Nässe kann an einem Tag davor begonnen haben.',
  greyMouldMeans:
    'Grauschimmel-Wert: der Anteil der Früchte, den ein Modell in der längsten Nässe als infiziert erwartet. Infektionsgefahr, kein Nachweis einer Krankheit.',
  yearKey: 'Band: Tiefst- bis Höchstwert jedes Tages. Linie: Mittel. Balken: Nassstunden.',
  hoverDay: (day: string, low: string, high: string, wet: string) =>
    `${day}: ${low} bis ${high}${HARD}${degree()}, Blätter ${wet}${HARD}h nass`,
  yearWords: (
    known: number,
    missing: number,
    coldest: { value: number; day: string } | null,
    warmest: { value: number; day: string } | null,
    wetHours: number | null,
  ) =>
    [
      `${counted(known, 'Tag')} mit Messwerten, ${counted(missing, 'Tag')} ohne.`,
      coldest ? fullStop(`Am kältesten ${temperature(coldest.value)} am ${coldest.day}`) : '',
      warmest ? fullStop(`Am wärmsten ${temperature(warmest.value)} am ${warmest.day}`) : '',
      wetHours === null ? '' : `Blätter insgesamt ${number(wetHours, 0)} Stunden nass.`,
    ]
      .filter((part) => part !== '')
      .join(' '),
};

const probeScreens = {
  title: 'Fühler',
  unclaimed: 'Noch ohne Platz',
  noUnclaimed: 'Jeder Fühler, der sendet, hat einen Platz.',
  placed: 'Mit Platz',
  noPlaced: 'Noch kein Fühler hat einen Platz.',
  heard: (ms: number) => `Zuletzt gehört ${age(ms)}`,
  neverHeard: 'Nie gehört',
  every: (minutes: number) => `meldet sich alle ${number(minutes, 0)}${HARD}min`,
  values: 'Neueste Werte',
  noValues: 'Noch kein Wert.',
  suggestion: 'Gehört wohl zu',
  place: 'Platz',
  spot: 'Messstelle',
  choose: 'Auswählen…',
  put: 'Hier zuordnen',
  putting: 'Wird gesendet…',
  move: 'Umsetzen',
  moveFrom: 'Er gehört ab jetzt dorthin; seine bisherigen Aufzeichnungen bleiben beim alten Platz.',
  cancel: 'So lassen',
  placedSaid: (probe: string, place: string, spot: string) =>
    `${probe} ist zugeordnet: ${place}, ${spot}.`,
  notPlaced: (sentence: string) => `Nicht zugeordnet: ${sentence}`,
  battery: 'Batterie',
  corrections: 'Korrekturen',
  noCorrections: 'keine',
  flag: (words: string) => `zweifelhaft: ${words}`,
  refused: (n: number) => `${counted(n, 'Nachricht')} in 24 Stunden abgewiesen oder bezweifelt`,
  refusedLine: (count: number, words: string, ms: number) =>
    `${count} × ${words}, zuletzt ${age(ms)}`,
  lastMessage: 'Die letzte',
  strangers: 'Nachrichten von Unbekannten',
  strangersWhy: 'Ein Tippfehler im Thema (Topic) eines Fühlers zeigt sich hier.',
};

// Lots, the record of a cool room, and the page of both.

/** All participles: in a sentence they begin with a small letter. */
const lotUses: Record<LotUse, string> = {
  sold: 'Verkauft',
  used: 'Hier verwendet',
  moved: 'Weggebracht',
  'thrown-out': 'Weggeworfen',
};
const coolings: Record<Cooling, string> = {
  room: 'im Raum selbst',
  fan: 'mit Gebläse',
  water: 'in kaltem Wasser',
  ice: 'mit Eis',
  none: 'nicht gekühlt',
};
const lotClasses: Record<LotClass, string> = {
  whole: 'ganze Ware',
  cut: 'geschnittene oder abgepackte Blätter',
  sprouts: 'Sprossen',
};

type Days = { readonly least: number; readonly most: number };
/** `3,6 bis 4,4 Tage`. */
function daysBetween({ least, most }: Days): string {
  if (most === 0) return 'keine Tage';
  if (most < 1) return `${number(least * 24, 0)} bis ${number(Math.ceil(most * 24), 0)} Stunden`;
  const [a, b] = [number(least), number(most)];
  return a === b ? `etwa ${a} Tage` : `${a} bis ${b} Tage`;
}

/** Days left of a lot, with unknown time told apart. No word on safety. */
export function lotLifeWords(
  { life, harvestedAt }: Pick<Lot, 'life' | 'harvestedAt'>,
  chillMin: number | null,
): string {
  const { days, asLastKnown, asOutdoors, unknownHours, risk, source } = life;
  if (risk === 'freezing')
    return 'Verbleibende Tage nicht zu sagen: der Posten lag unter seinem Gefrierpunkt. Ansehen.';
  if (risk === 'chilling')
    return `Verbleibende Tage nicht zu sagen: der Posten lag unter ${wholeDegrees(chillMin)}, kälter, als er verträgt. Ansehen.`;
  if (risk === 'heat')
    return `Verbleibende Tage nicht zu sagen: der Posten lag über ${figureDegrees(35)}, wo die Zahlen enden. Ansehen.`;
  if (source === null)
    return 'Verbleibende Tage nicht zu sagen: niemand hat angegeben, wie lange diese Kultur hält. Es gilt: zuerst hinein, zuerst hinaus.';
  if (days === null)
    return 'Verbleibende Tage nicht zu sagen: niemand weiß, wie warm der Posten war. Es gilt: zuerst hinein, zuerst hinaus.';
  const from =
    harvestedAt === null ? ' Gezählt ab dem Einlagern, da die Ernte nicht angegeben ist.' : '';
  if (unknownHours < 0.05 || asLastKnown === null || asOutdoors === null) {
    const gap =
      unknownHours < 0.05
        ? ''
        : ` ${number(unknownHours)}${HARD}h davon sind nicht bekannt und zählen als so warm wie ${asOutdoors === null ? 'zuletzt bekannt' : 'draußen'}.`;
    return `Noch ${daysBetween(days)}.${gap}${from}`;
  }
  return `Noch ${daysBetween(asLastKnown)}, wenn die nicht bekannten ${number(unknownHours)}${HARD}h so warm waren wie zuletzt bekannt; ${daysBetween(asOutdoors)}, wenn so warm wie draußen.${from}`;
}
const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

export const ASK_OFFICER =
  'Vor dem Handeln nach dieser Zeit die örtliche Lebensmittelaufsicht fragen.';
const NOT_A_RECORDER =
  'Dies ist eine Aufzeichnung, kein Urteil über die Lebensmittel. Sie stammt nicht von einem zertifizierten Schreiber (EN\u00a012830).';

const clockSpan = (minutes: number) =>
  minutes < 120 ? `${Math.round(minutes)}${HARD}min` : span(minutes * MINUTE);

/** Time over a limit since harvest. Facts, the officer's own words, and the last line last. */
export function exposureWords(
  exposure: Lot['exposure'],
  told: string | null,
  harvestKnown: boolean,
): string[] {
  const { limit, aboveMinutes, unknownMinutes, worstMinutes, clockHours, of } = exposure;
  const since = harvestKnown
    ? 'seit der Ernte'
    : 'seit dem Einlagern; die Ernte ist nicht angegeben';
  return [
    `Über ${temperature(limit)} ${since}: ${clockSpan(aboveMinutes)} darüber, ${clockSpan(unknownMinutes)} unbekannt, schlimmstenfalls ${clockSpan(worstMinutes)}. Erneutes Kühlen dreht das nicht zurück.`,
    clockHours === null
      ? 'Dafür ist keine Höchstzeit vereinbart.'
      : `Die vereinbarte Höchstzeit ist ${number(clockHours)}${HARD}h.`,
    ...(of === 'air'
      ? ['In der Luft gemessen, nicht in der Ware: eine Kerntemperatur messen.']
      : []),
    ...(told === null ? [] : [told]),
    NOT_A_RECORDER,
    ASK_OFFICER,
  ];
}

/** Said before anything is saved. */
export const chillWarning = (crop: string, chillMin: number, room: string, at: number) =>
  `${crop} nimmt unter ${wholeDegrees(chillMin)} Schaden; ${inPlace(room)} waren es ${temperature(at)}`;

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
  const more = `${by ? ` von ${by}` : ''}${note ? ` (${note})` : ''}`;
  const entered = `${by ? `, eingetragen von ${by}` : ''}${note ? ` (${note})` : ''}`;
  if (event === 'put-away' && of !== undefined)
    return `Begann als Teil von ${of}, ${kilograms(kg)}, mit dessen Vergangenheit${warning ? `; trotz Warnung: ${warning}. Entschieden${more}` : ''}.`;
  if (event === 'put-away')
    return warning
      ? `Eingelagert, ${kilograms(kg)}, trotz Warnung: ${warning}. Entschieden${more}.`
      : `Eingelagert, ${kilograms(kg)}.`;
  if (event === 'corrected') return `Berichtigt${more}: ${listed(set)}.`;
  if (event === 'taken')
    return `${how ? lotUses[how] : ''}: ${kilograms(kg)}${to ? `, ${how === 'moved' ? 'nach' : 'an'} ${to}` : ''}${entered}.`;
  if (event === 'carried') return `Umgelagert ${toPlace(to ?? '')}${entered}.`;
  if (event === 'released') return `Darf bleiben, entschieden${more}.`;
  return 'Ein Eintrag wurde zurückgenommen.';
}
export const lotFields: Readonly<Record<string, string>> = {
  crop: 'Kultur',
  kg: 'Gewicht',
  place: 'Raum',
  from: 'Herkunft',
  harvestedAt: 'geerntet am',
  storedAt: 'eingelagert am',
  cooled: 'gekühlt',
  class: 'Art der Ware',
  get price() {
    return `Preis je ${weightUnit()}`;
  },
};
/** Fields of a picking. */
export const pickFields = {
  place: 'Platz',
  crop: 'Kultur',
  at: 'gepflückt am',
  kg: 'Gewicht',
  lostKg: 'aussortiert',
  minutes: 'Minuten',
  walkMinutes: 'Minuten Weg',
  pickers: 'Pflückende',
  get price() {
    return `Preis je ${weightUnit()}`;
  },
  note: 'Notiz',
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
  if (facts.event === 'picked') return `Gepflückt, ${kilograms(facts.kg)}.`;
  if (facts.event === 'undone') return 'Ein Eintrag wurde zurückgenommen.';
  const set = facts.set.map(([field, to]) => `${pickFields[field]} auf ${pickValue(field, to)}`);
  return `Berichtigt${facts.why ? ` (${facts.why})` : ''}: ${listed(set)}.`;
}
/** What a field of a lot was corrected to; names of crops and places come worded. */
export function lotFieldValue(field: string, value: string | number | null, zone: string): string {
  if (value === null) return 'nicht angegeben';
  if (/At$/.test(field) && typeof value === 'number')
    return `${dateAt(value, zone)}, ${clock(value, zone)}`;
  if (field === 'cooled') return coolings[value as Cooling] ?? String(value);
  if (field === 'class') return lotClasses[value as LotClass] ?? String(value);
  if (typeof value === 'number' && field === 'kg') return kilograms(value);
  if (typeof value === 'number' && field === 'price') return number(perWeight(value), 2);
  return String(value);
}

/** Where and what for printed rules hold. */
const printedTerms: Readonly<Record<string, string>> = {
  'united-states': 'Vereinigte Staaten',
  'england-wales-northern-ireland': 'England, Wales, Nordirland',
  australia: 'Australien',
  'world-health-organization': 'Weltgesundheitsorganisation',
  'cut-leafy-greens': 'geschnittenes Blattgemüse',
  'supports-pathogens': 'Lebensmittel, in denen Keime wachsen können',
  'potentially-hazardous': 'leicht verderbliche, riskante Lebensmittel',
  'cooked-and-perishable': 'Gekochtes und Verderbliches',
};
const printedTerm = (term: string) => printedTerms[term] ?? plain(term);

/** One printed rule, to be talked over with the officer. */
export const printedLimit = (rule: {
  readonly where: string;
  readonly what: string;
  readonly limit: number;
  readonly clock: number | null;
  readonly source: string;
}) =>
  `${sentenceCase(printedTerm(rule.where))}, ${printedTerm(rule.what)}: ${wholeDegrees(rule.limit)}${rule.clock === null ? '' : `, ${number(rule.clock, 0)}${HARD}h`} (${rule.source})`;

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
  if (last === null) return `${id} wurde hier noch nie geprüft: in schmelzendem Eis prüfen.`;
  const ago = last.ageDays < 1 ? 'heute' : age(last.ageDays * DAY);
  const then = `${id} wurde ${ago} geprüft und wich um ${signedDifference(last.offset)} ab${last.applied ? '; seither korrigiert' : ''}.`;
  return due ? `${then} Das ist über ${days} Tage her: erneut prüfen.` : then;
}

export const checkHow = (): string =>
  `Zerstoßenes sauberes Eis, Wasser nur in den Lücken, umgerührt, die Spitze des Fühlers in der Mitte, fünf Minuten: das sind ${figureDegrees(0)}.`;
const doubts = {
  get 'too-near'() {
    return `Die beiden Punkte liegen näher als ${figureApart(15)}: die Steigung ist zweifelhaft.`;
  },
  slope: 'Die Steigung liegt außerhalb von 0,97 bis 1,03: zuerst am zweiten Thermometer zweifeln.',
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
    `${check.probe}: Abweichung ${signedDifference(check.offset)}, geprüft von ${check.by}${check.applied ? '; von da an korrigiert' : '; nicht korrigiert'}.`,
    ...check.doubts.map((doubt) => doubts[doubt]),
  ].join(' ');
export const clocksWhy =
  'Keine gilt, bevor sie eingetragen ist. Ganze Ware fällt oft nicht unter solche Vorschriften, geschnittene oder abgepackte Blätter oft schon, Sprossen gesondert: die Lebensmittelaufsicht entscheidet.';

/** What has to stand under every record. */
export const recordWords = (limit: number): string[] => [
  `Stunden darüber heißt über ${temperature(limit)} in der Luft des Raums. Nicht bekannte Stunden sind Zeit ohne Messwert: sie können darüber gelegen haben und zählen nie als darunter.`,
  NOT_A_RECORDER,
  'Der Grenzwert ist der eigene des Betriebs. Vor dem Handeln nach diesen Zeiten die örtliche Lebensmittelaufsicht fragen, was die Ware braucht.',
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
      ? 'Keine Messwerte in den letzten 24 Stunden.'
      : `In den letzten 24 Stunden zwischen ${degrees(low)} und ${temperature(high)}.`,
    aboveHours > 0
      ? `${span(aboveHours * HOUR)} über ${temperature(limit)}: die örtliche Lebensmittelaufsicht fragen, was das für die Ware heißt.`
      : low === null
        ? ''
        : `Kein Messwert über ${temperature(limit)}.`,
    unknownHours >= 1 / 60 ? `${span(unknownHours * HOUR)} ohne Messwerte: nicht bekannt.` : '',
    cycles === null ? '' : `Die Kühlung lief ${repeated(cycles)}.`,
    facts.noPowerMinutes === null || facts.noPowerMinutes < 1
      ? ''
      : `${span(facts.noPowerMinutes * MINUTE)} ohne Strom.`,
    doorOpenings === null
      ? ''
      : doorOpenings === 0
        ? 'Die Tür blieb zu.'
        : `Die Tür wurde ${repeated(doorOpenings)} geöffnet, insgesamt ${span(facts.doorMinutes * MINUTE)}.`,
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
  if (temperatureNow === null) return 'Kein frischer Messwert, wie warm es ist.';
  const apart = temperatureNow - setPoint;
  const against =
    Math.abs(apart) < 0.05
      ? 'auf dem Sollwert'
      : `${difference(Math.abs(apart))} ${apart > 0 ? 'über' : 'unter'} dem Sollwert von ${degrees(setPoint)}`;
  const room = limit - temperatureNow;
  return `${temperature(temperatureNow)}, ${against}, ${difference(Math.abs(room))} ${room >= 0 ? 'unter' : 'über'} dem Grenzwert von ${degrees(limit)}.`;
}

const lotScreens = {
  title: 'Posten',
  inOrder: 'In dieser Reihenfolge verkaufen',
  none: 'Hier lagern keine Posten.',
  name: (kg: number, crop: string) => `${kilograms(kg)} ${crop}`,
  of: (left: number, whole: number) => `noch ${kilograms(left)} von ${kilograms(whole)}`,
  since: (time: string) => `eingelagert ${time}`,
  harvested: (time: string, from: string | null) =>
    `geerntet ${time}${from === null ? '' : ` ${inPlace(from)}`}`,
  harvestedFrom: (from: string) => `geerntet ${inPlace(from)}`,
  cooledHow: (how: Cooling) => (how === 'none' ? coolings.none : `gekühlt ${coolings[how]}`),
  slack: (slack: number | null) =>
    slack === null
      ? ''
      : slack < 0
        ? 'Hält vielleicht nicht bis zur nächsten Lieferung: heute entscheiden.'
        : `${number(slack)} Tage Reserve bei der nächsten Lieferung.`,
  releasedBy: (by: string) => `${by} hat gesagt, dass der Posten bleiben darf.`,
  overrideBy: (by: string) => `Trotz der Warnung eingelagert, von ${by}.`,
  clock: 'Zeit über dem Grenzwert',
  enter: 'Einlagern',
  quickTitle: 'Ware einlagern',
  same: (kg: number, crop: string) => `Wie letztes Mal: ${kilograms(kg)} ${crop}`,
  which: 'Kultur',
  otherCrop: 'Andere Kultur',
  get weight() {
    return `Gewicht in ${weightUnit()}`;
  },
  lastWeights: 'Gewichte vom letzten Mal',
  room: 'Kühlraum',
  more: 'Mehr dazu',
  from: 'Geerntet in',
  fromNone: 'Nicht angegeben',
  wait: 'Geerntet',
  waits: {
    none: 'Nicht angegeben',
    0: 'Gerade eben',
    60: 'Vor 1 Stunde',
    120: 'Vor 2 Stunden',
    240: 'Vor 4 Stunden',
    480: 'Vor 8 Stunden',
  },
  lastWait: (minutes: number) => `Wie letztes Mal, vor ${spanDative(minutes * MINUTE)}`,
  firstRoom: 'Raum, in den eingelagert wurde',
  get price() {
    return `Preis je ${weightUnit()}`;
  },
  moveTo: 'In welchen Raum',
  elsewhere: 'Woanders',
  partOf: (id: string) => `ein Teil von ${id}`,
  cooling: 'Gekühlt',
  coolingNone: 'Nicht angegeben',
  class: 'Für die Lebensmittelregeln gilt er als',
  classDefault: 'Wie für die Kultur üblich',
  sending: 'Wird gesendet…',
  stored: (kg: number, crop: string, room: string) =>
    `Gespeichert: ${kilograms(kg)} ${crop}, ${room}.`,
  undo: 'Rückgängig',
  undone: 'Zurückgenommen; der Verlauf behält beides.',
  failed: (sentence: string) => `Nicht gespeichert: ${sentence}`,
  warned: 'Warnung',
  anyway: 'Trotzdem dorthin',
  yourName: 'Eigener Name',
  nameWhy: 'Eine Entscheidung braucht einen Namen.',
  use: 'Entnehmen',
  uses: lotUses,
  get howMuch() {
    return `Wie viel, in ${weightUnit()}`;
  },
  to: 'Wohin',
  take: 'Speichern',
  taken: (use: LotUse, kg: number, crop: string) =>
    `Gespeichert: ${lotUses[use].toLowerCase()}, ${kilograms(kg)} ${crop}.`,
  mayStay: 'Darf bleiben',
  mayStaySaid: (crop: string) => `Gespeichert: ${crop} darf bleiben.`,
  correct: 'Berichtigen',
  corrected: 'Die Berichtigung ist gespeichert; der Verlauf behält beides.',
  history: 'Verlauf',
  historyLine: (time: string, who: string, what: string) => `${time}, ${who}: ${what}`,
  takenBack: 'zurückgenommen',
  takeBack: 'Zurücknehmen',
  takeBackWhich: (what: string) => `Zurücknehmen: ${what}`,
  back: 'Zurück',
  coolings,
  classes: lotClasses,
};

// Batches of trays, and the page about them.

const batchLooks: Record<BatchLook, string> = {
  well: 'Sieht gut aus',
  ready: 'Erntereif',
  mould: 'Schimmel',
  leggy: 'Vergeilt',
  wilted: 'Welk',
  scorched: 'Verbrannt',
  'cold-hurt': 'Kälteschaden',
  eaten: 'Fraßschaden',
  uneven: 'Ungleich aufgelaufen',
  other: 'Etwas anderes',
};
/** The same within a sentence: nouns keep their capital. */
const looksSaid: Record<BatchLook, string> = {
  well: 'sieht gut aus',
  ready: 'erntereif',
  mould: 'Schimmel',
  leggy: 'vergeilt',
  wilted: 'welk',
  scorched: 'verbrannt',
  'cold-hurt': 'Kälteschaden',
  eaten: 'Fraßschaden',
  uneven: 'ungleich aufgelaufen',
  other: 'etwas anderes',
};
const cutStages: Record<CutStage, string> = { young: 'früher Schnitt', later: 'später Schnitt' };
const batchWorks: Record<BatchWork, string> = {
  sowing: 'Säen',
  tending: 'Gießen und Pflegen',
  moving: 'Umstellen',
  cutting: 'Schneiden',
  packing: 'Packen',
};
const trayCount = (n: number) => `${n}${HARD}${n === 1 ? 'Schale' : 'Schalen'}`;

/** Said before anything is saved. */
export const roomWarning = (place: string, would: number, capacity: number) =>
  `${sentenceCase(inPlace(place))} stünden ${trayCount(would)}, und Platz ist für ${capacity}`;

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
  if (state === 'withdrawn') return 'Zurückgenommen: nicht gesät.';
  const cut = kg > 0 ? `, ${kilograms(rounded3(kg))} geschnitten` : '';
  if (state === 'ended') return `Beendet${cut === '' ? ', nichts geschnitten' : cut}.`;
  const left =
    traysLeft < trays ? `Noch ${traysLeft} von ${trayCount(trays)}` : 'Alle Schalen wachsen';
  const seen =
    look === null || seenAgo === null
      ? ''
      : ` Zuletzt gesehen: ${looksSaid[look]}, ${age(seenAgo)}.`;
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
  const more = `${note ? `: ${note}` : ''}${warning ? `, trotz Warnung: ${warning}; entschieden von ${by ?? ''}` : ''}`;
  if (event === 'sown')
    return facts.from
      ? `${trayCount(trays)} von ${facts.from} umgestellt ${toPlace(to)}${when}${more}.`
      : `Gesät in ${trayCount(trays)}, ${to}${when}${more}.`;
  if (event === 'moved') return `Umgestellt ${toPlace(to)}${took}${when}${more}.`;
  if (event === 'parted')
    return `${trayCount(trays)} ${trays === 1 ? 'läuft' : 'laufen'} weiter als ${facts.into ?? ''}${when}.`;
  if (event === 'cut') {
    const price =
      facts.price === undefined || facts.price === null
        ? ''
        : `, zu ${number(perWeight(facts.price), 2)} je ${weightUnit()}`;
    const lost = facts.lostKg ? `, davon ${kilograms(facts.lostKg)} nicht verkauft` : '';
    const again = facts.clears === false ? ', wächst nach' : '';
    return `${kilograms(rounded3(kg))} von ${trayCount(trays)} geschnitten, ${cutStages[facts.stage ?? 'later']}${again}${took}${price}${lost}${when}${more}.`;
  }
  if (event === 'thrown-out')
    return `${trayCount(trays)} weggeworfen: ${look ? looksSaid[look] : ''}${when}${more}.`;
  if (event === 'noted')
    return `Gesehen: ${look ? looksSaid[look] : ''}${facts.photo ? ', mit Foto' : ''}${when}${more}.`;
  if (event === 'worked') return `${facts.work ? batchWorks[facts.work] : ''}${took}${when}.`;
  if (event === 'cleared') return `Geräumt, ohne Schnitt${when}${more}.`;
  if (event === 'corrected')
    return `Berichtigt: ${listed(facts.set ?? [])}${note ? ` (${note})` : ''}.`;
  return 'Ein Eintrag wurde zurückgenommen.';
}
export const batchFields: Readonly<Record<string, string>> = {
  crop: 'Kultur',
  variety: 'Sorte',
  trays: 'Schalen',
  sownAt: 'gesät am',
  place: 'gesät in',
  seedCost: 'Saatgutkosten',
  otherCost: 'andere Kosten',
  meantFor: 'bestimmt für',
};

const several = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
const batchScreens = {
  title: 'Sätze',
  none: 'Soweit die Zentrale weiß, wächst jetzt nichts in Schalen.',
  here: 'Was hier steht',
  hereNone: 'Hier steht jetzt kein Satz.',
  toBatches: 'Alle Sätze',
  standing: (name: string, trays: number) => `${trayCount(trays)} ${name}`,
  name: (trays: number, crop: string, variety: string | null) =>
    `${trayCount(trays)} ${crop}${variety === null ? '' : ` (${variety})`}`,
  trays: trayCount,
  sown: (days: number, time: string) =>
    days < 1
      ? `heute gesät (${time})`
      : `vor ${countedDative(Math.floor(days), 'Tag')} gesät (${time})`,
  grew: (days: number, time: string) =>
    `gesät ${time}, beendet nach ${countedDative(Math.floor(days), 'Tag')}`,
  meantFor: (day: string) => `bestimmt für ${day}`,
  quoted: (note: string) => `„${note}“`,
  partOf: (id: string) => `Teil von ${id}`,
  room: (name: string, standing: number, capacity: number | null) =>
    capacity === null
      ? `${name}: ${trayCount(standing)}`
      : `${name}: ${standing} von ${trayCount(capacity)}`,
  freeRoom: (room: number | null) =>
    room === null ? '' : room === 0 ? 'voll' : `Platz für ${room}`,
  strip: (parts: readonly string[]) => `Wo er stand: ${parts.join(', dann ')}`,
  stripStay: (name: string, days: number) =>
    days < 1 ? `${name}, unter einem Tag` : `${name}, ${counted(Math.round(days), 'Tag')}`,
  now: 'jetzt',
  looks: batchLooks,
  stages: { young: 'Früher Schnitt', later: 'Später Schnitt' } satisfies Record<CutStage, string>,
  works: batchWorks,
  sow: 'Säen',
  sowTitle: 'Einen Satz säen',
  sowThis: 'Aussaat speichern',
  asLastWeek: 'Wie letzte Woche',
  asLastWeekNone: 'An diesem Tag der letzten Woche wurde nichts gesät.',
  again: (trays: number, crop: string, variety: string | null, place: string) =>
    `${trayCount(trays)} ${crop}${variety === null ? '' : ` (${variety})`}, ${place}`,
  againAll: (n: number) => `Alle ${n} säen wie letzte Woche`,
  againDone: 'erledigt',
  crop: 'Kultur',
  otherCrop: 'Andere Kultur',
  place: 'Platz',
  howMany: 'Schalen',
  fewer: 'Eine Schale weniger',
  moreTrays: 'Eine Schale mehr',
  more: 'Mehr dazu',
  variety: 'Sorte, falls wichtig',
  sownAt: 'Gesät am',
  seedCost: (currency: string) => `Saatgut für alles, in ${currency}`,
  otherCost: (currency: string) => `Schalen, Erde und Verpackung für alles, in ${currency}`,
  meant: 'Bestimmt für die Lieferung am',
  minutes: 'Minuten Arbeit, falls bekannt',
  move: 'Umstellen',
  moveTo: (name: string) => `${sentenceCase(toPlace(name))} umstellen`,
  some: 'Nur einige der Schalen',
  someHow: (n: number) => `Wie viele der ${n} Schalen`,
  moved: (what: string, place: string) => `Gespeichert: ${what} ${toPlace(place)} umgestellt.`,
  cut: 'Schneiden',
  get kg() {
    return `Gewicht in ${weightUnit()}`;
  },
  lastWeights: 'Wie die letzten Schnitte',
  stage: 'Welcher Schnitt',
  clears: 'Diese Schalen sind danach leer',
  price: (currency: string) => `Preis je ${weightUnit()}, falls anders, in ${currency}`,
  get lost() {
    return `Davon nicht verkauft, in ${weightUnit()}`;
  },
  nothingLost: 'Davon ging nichts verloren',
  cutStored: (kg: number, crop: string) => `Gespeichert: ${kilograms(kg)} ${crop} geschnitten.`,
  note: 'Notiz',
  noteTitle: 'Was ist zu sehen?',
  noteMore: 'Ein Wort dazu, falls gewünscht',
  noted: (look: BatchLook) => `Gespeichert: ${looksSaid[look]}.`,
  throwOut: 'Wegwerfen',
  why: 'Warum',
  thrownOut: (trays: number, crop: string) =>
    `Gespeichert: ${trayCount(trays)} ${crop} weggeworfen.`,
  moreOn: 'Mehr',
  work: 'Arbeitsminuten',
  workKind: 'Welche Arbeit',
  workMinutes: 'Minuten',
  worked: (minutes: number) => `Gespeichert: ${number(minutes, 0)}${HARD}min Arbeit.`,
  clear: 'Ohne Schnitt räumen',
  cleared: (crop: string) => `Gespeichert: ${crop} geräumt.`,
  correct: 'Berichtigen',
  corrected: 'Die Berichtigung ist gespeichert; der Verlauf behält beides.',
  history: 'Verlauf',
  historyLine: (time: string, who: string, what: string) =>
    `${what} Eingetragen ${time} von ${who}.`,
  takenBack: 'zurückgenommen',
  store: 'Speichern',
  sending: 'Wird gesendet…',
  stored: (what: string) => `Gespeichert: ${what}.`,
  sownStored: (what: string) => `Gespeichert: ${what} gesät.`,
  undo: 'Rückgängig',
  undone: 'Zurückgenommen; der Verlauf behält beides.',
  failed: (sentence: string) => `Nicht gespeichert: ${sentence}`,
  warned: 'Warnung',
  anyway: 'Trotzdem ausführen',
  nameWhy: 'Eine Entscheidung braucht einen Namen.',
  back: 'Zurück',
  elsewhere: 'Anderswo',
  ended: 'Beendete Sätze',
  endedNone: 'In den letzten 90 Tagen ist keiner beendet worden.',
  growing: 'Was jetzt wächst',
  cutLine: (kg: number, trays: number, perTray: number) =>
    `${kilograms(rounded3(kg))} von ${trayCount(trays)}, ${withUnit(perTray, 'kg', 2)} je Schale`,
  file: 'Sätze als Datei',
  fileWhy:
    'Eine Tabelle (CSV) mit einer Zeile für alles, was getan wurde, oder eine einfache mit den Spalten crop, trays, sown, place und, falls bekannt, cut, kg, minutes.',
  fileOut: 'Alle Sätze als Datei (CSV)',
  fileIn: 'Datei einlesen (CSV)',
  fileNothing: 'Die Datei enthält nichts Neues für die Zentrale.',
  fileWould: (batches: number, entries: number) =>
    `Das wären ${counted(entries, 'Eintrag')} für ${counted(batches, 'Satz')}.`,
  fileKnown: (n: number) => `${several(n, 'Zeile ist', 'Zeilen sind')} schon in der Zentrale.`,
  fileRefused: (n: number) => `${several(n, 'Zeile lässt', 'Zeilen lassen')} sich nicht eintragen:`,
  fileLine: (line: number, reason: string) => `Zeile ${line}: ${reason}`,
  fileIgnored: (columns: string) => `Diese Spalten sagen der Zentrale nichts: ${columns}.`,
  fileEnter: 'Eintragen',
  fileEntered: (batches: number, entries: number) =>
    `Gespeichert: ${counted(entries, 'Eintrag')} für ${counted(batches, 'Satz')}.`,
  fileBatch: (what: string, sown: string, place: string, entries: number, fresh: boolean) =>
    `${what}, gesät ${sown}, ${place}: ${fresh ? 'neu, ' : 'bekannt, '}${counted(entries, 'Eintrag')}`,
  fileMore: (n: number) => `und ${n} weitere`,
  fileTooLong: 'Erwartet: eine Datei von höchstens 2 MB, erhalten: eine längere',
};

const recordScreens = {
  title: 'Temperaturaufzeichnung',
  week: 'Die Aufzeichnung dieser Woche',
  print: 'Die Aufzeichnung zum Drucken',
  csv: 'Als Datei (CSV)',
  printNow: 'Drucken',
  heading: (room: string) => `Temperaturaufzeichnung: ${room}`,
  range: (from: string, to: string) => `${from} bis ${to}`,
  from: 'Von',
  to: 'Bis',
  show: 'Anzeigen',
  columns: {
    day: 'Tag',
    above: 'Über Grenzwert h',
    below: 'Bis Grenzwert h',
    unknown: 'Nicht bekannt h',
    get highest() {
      return `Höchst ${degree()}`;
    },
    get lowest() {
      return `Tiefst ${degree()}`;
    },
    get mean() {
      return `Kinetisches Mittel ${degree()}`;
    },
    known: 'Bekannt',
  },
  gaps: 'Zeiten ohne Messwerte',
  noGaps: 'Keine in diesen Tagen.',
  gap: (day: string, from: string, to: string, long: number) =>
    `${day}, ${from} bis ${to} (${span(long)})`,
  moreGaps: (n: number) => `und ${n} weitere in der Datei`,
  actions: 'Was getan wurde',
  noActions: 'Für diese Tage ist nichts eingetragen.',
  action: (saw: string, did: string) => `Gesehen: ${saw} Getan: ${did}`,
  core: (value: number) => `Kerntemperatur ${temperature(value)}.`,
  correctedLater: 'später berichtigt',
  correctsEarlier: 'berichtigt einen anderen',
  enterAction: 'Eintragen, was getan wurde',
  saw: 'Was gesehen wurde',
  did: 'Was getan wurde',
  by: 'Von wem',
  get coreReading() {
    return `Kerntemperatur in ${degree()}, falls gemessen`;
  },
  store: 'Speichern',
  storedAction: 'Gespeichert, was getan wurde.',
  checks: 'Prüfungen der Fühler',
  check: (id: string) => `${id} prüfen`,
  get reading() {
    return `Er zeigt, in ${degree()}`;
  },
  readingNow: (value: number | null) =>
    value === null
      ? 'Kein frischer Messwert von ihm.'
      : `Die Zentrale liest jetzt ${temperature(value)}.`,
  get second() {
    return `Ein zweiter Punkt, mindestens ${figureApart(15)} entfernt`;
  },
  get secondReading() {
    return `Er zeigt dort, in ${degree()}`;
  },
  get secondTrue() {
    return `Richtig dort, in ${degree()}`;
  },
  apply: 'Korrigieren, was er ab jetzt sendet; Gespeichertes bleibt.',
  storedCheck: 'Die Prüfung ist gespeichert.',
  none: 'In diesem Raum misst kein Fühler die Temperatur.',
  clocks: 'Grenzwerte und Höchstzeiten, wie vereinbart',
  printed: 'Was einige Länder vorgeben',
  clockOf: (name: string, limit: number | null, hours: number | null) =>
    `${sentenceCase(name)}: ${limit === null ? 'der eigene Grenzwert des Raums' : `Grenzwert ${temperature(limit)}`}, ${hours === null ? 'keine Höchstzeit' : `Höchstzeit ${number(hours)}${HARD}h`}`,
  clockSet: (by: string, time: string) => `eingetragen von ${by}, ${time}`,
  change: 'Ändern',
  get limit() {
    return `Grenzwert in ${degree()}, oder der eigene des Raums`;
  },
  hours: 'Höchstzeit darüber in Stunden, oder keine',
  words: 'Text, der dabei gezeigt wird, oder keiner',
};

// How sure the cause of a cool room's trouble is, and how long it holds: times come as words.

type Sure = NonNullable<CoolRoom['sure']>;
const sureWords: Record<Sure, string> = {
  sure: 'Das ist sicher: ein Fühler hier sieht es.',
  likely: 'Das ist wahrscheinlich, nicht sicher.',
  'cannot-tell': '',
};
const contentsWords: Record<NonNullable<CoolRoom['holdOver']['contents']>, string> = {
  empty: 'fast leer',
  half: 'halb voll',
  full: 'voll',
};

/** "the air is at 5 °C between 03:10 and 04:00"; one time where both are the same minute. */
const betweenTimes = (from: string, to: string | null) =>
  to === null ? `nach ${from}` : from === to ? `gegen ${from}` : `zwischen ${from} und ${to}`;

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
      ? 'Niemand hat angegeben, was darin liegt.'
      : `Nach seinen Posten ist er jetzt ${contentsWords[contents]} (${inside === null ? notKnown : kilograms(inside)}; gemessen am Höchststand aus vier Wochen).`;
  const fast = `Er legt 63${HARD}% des Wegs zur Außentemperatur in etwa ${number(tauHours)}${HARD}h zurück.`;
  if (learnedFrom === 0)
    return `Über diesen Raum ist noch nichts gelernt: ${number(tauHours)}${HARD}h ist unsere Annahme. Gelernt wird aus Stopps ab einer halben Stunde bei geschlossener Tür. ${lies}`;
  const stops = countedDative(learnedFrom, 'Stopp');
  if (contents === null) return `${fast} Gelernt aus ${stops}. ${lies}`;
  return sameContents > 0
    ? `${fast} Gelernt aus ${stops} mit etwa gleich viel darin. ${lies}`
    : `${fast} Gelernt aus ${stops} mit mehr oder weniger darin als jetzt; über einen so vollen Raum ist noch nichts gelernt. ${lies}`;
}

/** The room's own cycle, or that it is not learned. */
function cycleLine(habits: CoolRoom['habits'], defrostTimes: readonly string[]): string {
  if (!habits.learned)
    return `Der Kühltakt ist noch nicht gelernt: dazu braucht es zwei ganze Tage mit Messwerten der Luft alle paar Minuten (bisher ${habits.days}).`;
  const { bottom, top, minutes, runningShare, defrosts, days } = habits;
  const round = minutes === null ? '' : `, einmal in etwa ${spanDative(minutes * MINUTE)}`;
  const runs =
    runningShare === null
      ? ''
      : ` Die Kühlung läuft ${number(runningShare * 100, 0)}${HARD}% der Zeit.`;
  const thaws =
    defrosts === null
      ? ' Ein Abtauen nach Schaltuhr ist nicht zu sehen.'
      : ` Taut gegen ${listed(defrostTimes)} ab; die Luft steigt dabei etwa ${number(defrosts.minutes, 0)}${HARD}min lang.`;
  return `Üblich von ${degrees(bottom)} bis ${temperature(top)}${round}.${runs}${thaws} Gelernt aus ${countedDative(days, 'Tag')}.`;
}

/** Whether the room needs more than its weather explains. */
function trendLine({ trend, energyDays }: Pick<CoolRoom, 'trend' | 'energyDays'>, since: string) {
  const days = energyDays.filter((day) => day.kilowattHours !== null && day.gap !== null).length;
  if (trend.line === null || trend.above === null)
    return `Ob er mehr braucht, als sein Wetter erklärt, ist noch nicht bekannt: dazu braucht es mehr als zwei Wochen an Tagen mit einem Zähler und einem Fühler draußen (bisher ${days}).`;
  const much = `${number(Math.abs(trend.above))}${HARD}kWh am Tag${trend.share === null ? '' : ` (${number(Math.abs(trend.share) * 100, 0)}${HARD}%)`}`;
  if (trend.signal === 'more')
    return `Er braucht ${much} mehr, als sein Wetter erklärt${since === '' ? '' : `, seit ${since}`}. Nachsehen: Eis am Verdampfer, verschlissene Türdichtung, schmutziger Verflüssiger, häufiger genutzte Tür.`;
  if (trend.signal === 'less')
    return `Er braucht ${much} weniger, als sein Wetter erklärt${since === '' ? '' : `, seit ${since}`}: weniger Inhalt, seltener genutzte Tür, oder ein Zähler, der nicht alles zählt.`;
  return 'Er braucht so viel, wie sein Wetter erklärt.';
}

const solarLines: Readonly<Record<string, readonly [name: string, from: string]>> = {
  get 'energy-per-kelvin'() {
    return [
      `Energie am Tag je ${degree()}, um das es draußen wärmer ist als innen`,
      'kleinste Quadrate durch die gemessenen Tage',
    ] as const;
  },
  'energy-without-weather': [
    'Energie am Tag, die nicht vom Wetter abhängt: Tür, Ware, Lüfter, Abtauen',
    'kleinste Quadrate durch die gemessenen Tage',
  ],
  'outside-less-inside': [
    'Draußen wärmer als innen, höchster der gemessenen Tage',
    'hier gemessen; steht für den schlimmsten Monat, bis ein heißerer eingegeben ist',
  ],
  'energy-a-day': [
    'Energie, die am Tag zu erzeugen ist',
    'nach den drei Zeilen darüber; ohne sie das Mittel der gemessenen Tage',
  ],
  'sun-hours': [
    'Volle Sonnenstunden am Tag im schlimmsten Nutzungsmonat',
    'übliche Praxis, keine Quelle: den eigenen Wert nachschlagen',
  ],
  'system-factor': [
    'Anteil der Nennleistung, der ankommt',
    'übliche Praxis, keine Quelle: Hitze, Schmutz, Leitungen, Laderegler',
  ],
  panels: ['Module', 'Energie ÷ (Sonnenstunden × Anteil, der ankommt)'],
  'days-without-sun': ['Tage ohne Sonne zu überbrücken', 'übliche Praxis, keine Quelle'],
  'depth-of-discharge': [
    'Nutzbarer Anteil der Batterie',
    'übliche Praxis, keine Quelle: Angabe des Herstellers',
  ],
  'battery-efficiency': [
    'Anteil, der von der Ladung wieder herauskommt',
    'übliche Praxis, keine Quelle',
  ],
  battery: ['Batterie', 'Energie × Tage ÷ (nutzbarer Anteil × Anteil, der herauskommt)'],
};

const fuels: Record<NonNullable<CoolRoom['fuel']>['fuel'], string> = {
  petrol: 'Benzin',
  diesel: 'Diesel',
};
const roomScreens = {
  title: 'Kühlraum',
  none: 'In der Betriebsdatei steht kein Kühlraum.',
  unknown: 'Diesen Kühlraum gibt es im Betrieb nicht.',
  rooms: 'Kühlräume',
  now: roomNowWords,
  /** Since when what is wrong is wrong. */
  wrongSince: (time: string, long: number) => `Etwas stimmt nicht seit ${time} (${span(long)}).`,
  cause: (among: readonly string[], sure: Sure | null) =>
    `${among.length === 0 ? 'Die Ursache ist unklar.' : mayBe(among)} ${sure === null ? '' : sureWords[sure]}`.trim(),
  wellSince: 'Alles in Ordnung, soweit seine Fühler sehen.',
  defrosting: 'Er taut jetzt ab, wie üblich um diese Zeit. Das ist kein Fehler.',
  pullDown: (since: string, peak: number, back: string | null) =>
    `Er wird nach warmer Ware, offener Tür oder einem Stopp heruntergekühlt: höchstens ${temperature(peak)}, seit ${since}. ${back === null ? 'Wann er wieder in seinem Kühltakt ist, lässt sich noch nicht sagen.' : `Wieder im Kühltakt voraussichtlich gegen ${back}.`} Das ist kein Fehler.`,
  above: (hours: number, limit: number) =>
    hours <= 0
      ? ''
      : `In den letzten 24 Stunden ${span(hours * HOUR)} über ${temperature(limit)}: die örtliche Lebensmittelaufsicht fragen, was das für die Ware heißt.`,
  why: 'Was die Fühler dazu sagen',
  held: (limit: string) => `üblicher Grenzwert hier ${limit}`,
  source: (source: string) => `Quelle: ${source}`,
  holdOver: 'Bei ausgeschalteter Kühlung',
  hold: (minutes: number | null, limit: number) =>
    minutes === null
      ? 'Wie lange er ohne Kühlung kalt bliebe, ist nicht bekannt, oder er würde nie zu warm.'
      : minutes <= 0
        ? `Die Luft liegt schon über ${temperature(limit)}.`
        : `Etwa ${span(minutes * MINUTE)} bis ${temperature(limit)}.`,
  /** Clock times between which the air, and the middle of a crate, reach the limit. */
  holdAir: (limit: number, from: string, to: string | null) =>
    `Ab jetzt ohne Kühlung: Luft bei ${temperature(limit)} ${betweenTimes(from, to)}`,
  holdCrates: (from: string, to: string | null) => `Kisten ${betweenTimes(from, to)}`,
  cratesThere: (limit: number) => `Die Mitte einer Kiste ist schon bei ${temperature(limit)}.`,
  holdSpan: (least: number, most: number | null) =>
    `Die Luft braucht ${span(least * MINUTE)}${most === null ? ' oder länger' : ` bis ${span(most * MINUTE)}`}; es gilt das kürzere Ende.`,
  holdPicture: 'Ab jetzt ohne Kühlung',
  rows: { air: 'Luft', crates: 'Kisten' },
  holdKey: (limit: number) =>
    `Gefüllt: unter ${temperature(limit)}. Umrandet: wird irgendwo hier erreicht.`,
  holdLearned,
  cycleTitle: 'Sein Kühltakt',
  cycleLine,
  generator: 'Der Stromerzeuger',
  mustRun: (at: string, minutes: number | null, litres: number | null) =>
    `Steht er ab jetzt, muss er bis ${at} laufen${minutes === null ? '' : `, etwa ${span(minutes * MINUTE)} lang`}${litres === null ? '' : `, etwa ${number(litres)}${HARD}l`}.`,
  mustRunNow: (minutes: number | null, litres: number | null) =>
    `Er muss jetzt laufen${minutes === null ? '' : `, etwa ${span(minutes * MINUTE)} lang`}${litres === null ? '' : `, etwa ${number(litres)}${HARD}l`}.`,
  needNotRun:
    'Draußen ist es nicht warm genug, um den Raum bis zum Grenzwert zu bringen, oder die Wärme draußen ist nicht bekannt: kein Lauf ist geplant.',
  thenHolds: (minutes: number) =>
    `Vom Tiefpunkt des Kühltakts hält der Raum dann von selbst etwa ${span(minutes * MINUTE)}.`,
  runCosts: (kg: number | null, money: string | null) =>
    [kg === null ? '' : `${withUnit(kg, 'kg')} CO₂`, money === null ? '' : `etwa ${money}`]
      .filter(Boolean)
      .join(', '),
  runCostsLine: (costs: string) => `Dieser Lauf: ${costs}.`,
  burnsNotTold:
    'Der Verbrauch des Stromerzeugers steht nicht in der Betriebsdatei (power: litresPerHour).',
  plannedOn: (until: string | null) =>
    `Nach seinen Stunden läuft er jetzt${until === null ? '' : ` bis ${until}`}.`,
  plannedOff: (until: string | null) =>
    `Nach seinen Stunden steht er jetzt${until === null ? '' : ` bis ${until}`}; das ist kein Fehler.`,
  usualHours: (hours: readonly string[], days: number) =>
    `Vom Zähler gelernt: er läuft meist ${listed(hours.map((one) => one.split('-').map(wallTime).join(' bis ')))} (${days} der letzten 14 Tage). Die Betriebsdatei nennt keine Stunden; sobald sie es tut, gelten diese.`,
  fumes:
    'Nur im Freien, mindestens 6\u00a0m von Türen, Fenstern und Lüftungsöffnungen, Auspuff weggerichtet: die Abgase töten, und das schlimmste davon riecht nicht. Vor dem Tanken abstellen und abkühlen lassen.',
  wiring:
    'Umschalter, Erdung und feste Leitungen sind Sache einer zugelassenen Elektrofachkraft, nach den örtlichen Vorschriften; nie über eine Steckdose einspeisen.',
  day: 'Der letzte Tag',
  dayKey: 'Linie: Luft; dünne Linie: eine Kiste. Eine Lücke ist Zeit ohne Messwerte.',
  lines: { set: 'Sollwert', limit: 'Grenzwert' },
  lanes: {
    door: 'Tür offen',
    running: 'Kühlung läuft',
    noPower: 'kein Strom',
    defrost: 'übliches Abtauen',
  },
  dayWords: 'Der letzte Tag in Zahlen',
  columns: {
    hour: 'Stunde',
    get low() {
      return `Tiefst ${degree()}`;
    },
    get high() {
      return `Höchst ${degree()}`;
    },
  },
  energy: 'Energie',
  energyNone: 'Nicht bekannt: kein Zähler eingebaut.',
  perDay: (kWh: number | null) =>
    kWh === null
      ? 'Die Energie des letzten Tages ist nicht bekannt.'
      : `${number(kWh)}${HARD}kWh in den letzten 24 Stunden.`,
  duty: (share: number | null) =>
    share === null ? '' : `Die Kühlung lief ${number(share * 100, 0)}${HARD}% der Zeit.`,
  fuel: ({ hours, litres, fuel }: NonNullable<CoolRoom['fuel']>, money: string | null) =>
    `Der Stromerzeuger lief ${span(hours * HOUR)} der letzten 24 Stunden: etwa ${number(litres)}${HARD}l ${fuels[fuel]}${money === null ? '' : `, ${money}`}.`,
  carbon: (kg: number) => `Das Verbrennen ergibt etwa ${withUnit(kg, 'kg')} CO₂.`,
  fuelFrom: ({ litresPerHour, fuel, money }: NonNullable<CoolRoom['fuel']>) =>
    `${number(litresPerHour, 2)}${HARD}l je Stunde${money === null ? '' : ' und der Preis'}: aus der Betriebsdatei; Stunden: vom eigenen Zähler des Raums. CO₂: ${fuel === 'petrol' ? '2,348' : '2,689'}${HARD}kg je Liter ${fuels[fuel]} (US EPA, greenhouse gas equivalencies), nur das Verbrennen; eine Beimischung braucht einen örtlichen Faktor.`,
  fuelUnlikely: (perKwh: number) =>
    `${number(perKwh)}${HARD}l je kWh ist mehr, als Stromerzeuger brauchen (0,25 bis 1,2): er versorgt mehr als diesen Raum, oder ein Eintrag ist falsch.`,
  trendLine,
  energyPicture: 'Energie jedes Tages, und was sein Wetter erklärt',
  energyKey:
    'Balken: gemessene kWh. Linie: was die Tage der ersten zwei Wochen bei solchem Wetter sagen. Ein Tag ohne Balken ist nicht bekannt.',
  energyTable: 'Energie je Tag in Zahlen',
  energyColumns: {
    day: 'Tag',
    energy: 'kWh',
    get gap() {
      return `Draußen wärmer um ${degree()}`;
    },
    duty: 'Läuft %',
    get index() {
      return `kWh je ${degree()}`;
    },
    usual: 'Das Wetter erklärt, kWh',
  },
  energyLine: (slope: number, low: number, high: number, rest: number) =>
    `Jedes ${degree()}, um das es draußen wärmer ist, kostet ${number(perDegree(slope), 2)}${HARD}kWh am Tag (${number(perDegree(low), 2)} bis ${number(perDegree(high), 2)} in 95 von 100 solchen Anpassungen), und ${number(rest)}${HARD}kWh kommen bei jedem Wetter dazu. Nach kleinsten Quadraten; ein Tag mit weniger als ${figureApart(3)} Unterschied hat keine kWh je ${degree()}.`,
  kilowattHours: (value: number) => `${number(value, 0)}`,
  solar: 'Solar und Batterie auf dem Papier',
  solarNone: 'Noch nicht bekannt: es braucht drei ganze Tage mit einem Zähler.',
  solarShort: (kWh: number, panels: number, battery: number) =>
    `${number(kWh)}${HARD}kWh am Tag: etwa ${number(panels)}${HARD}kW Module und ${number(battery)}${HARD}kWh Batterie.`,
  solarOpen: 'Das Blatt, Zeile für Zeile, zum Drucken',
  solarOwn: 'Eigene Zahlen',
  solarWork: 'Berechnen',
  solarAsked: {
    get gap() {
      return `Draußen wärmer als innen im schlimmsten Monat, in ${degree()}`;
    },
    sunHours: 'Volle Sonnenstunden am Tag im schlimmsten Monat',
    systemFactor: 'Anteil der Nennleistung, der ankommt, 0,1 bis 1',
    days: 'Tage ohne Sonne zu überbrücken',
    depth: 'Nutzbarer Anteil der Batterie, 0,1 bis 1',
    efficiency: 'Anteil, der von der Ladung herauskommt, 0,1 bis 1',
  },
  solarSheet: (room: string) => `Solar und Batterie, auf dem Papier berechnet: ${room}`,
  solarLine: (what: string) => solarLines[what]?.[0] ?? plain(what),
  solarFrom: (what: string, own: readonly string[] = []) =>
    own.includes(solarTellers[what] ?? '') ? 'eigene Zahl' : (solarLines[what]?.[1] ?? ''),
  solarCautions: [
    'Das sind Zahlen zum Besprechen, kein Bauplan. Auslegung, Verdrahtung, Absicherung und Erdung von Modulen, Batterie und Wechselrichter sind Sache einer zugelassenen Fachkraft, nach den örtlichen Vorschriften.',
    'Ein Verdichter läuft mit dem Drei- bis Sechsfachen seines Betriebsstroms an (übliche Praxis): danach richten sich der Wechselrichter und der Stromerzeuger, der daneben bleibt.',
    'Batterien brennen und geben Gas ab: wo sie stehen, wie sie belüftet und womit sie geladen werden, bestimmen die zugelassene Fachkraft und die Anleitung des Herstellers. Den Stromerzeuger behalten, bis ein Winter gezeigt hat, was die Module bringen.',
  ],
  solarValue: (value: number, unit: string) =>
    unit === 'd'
      ? `${number(value, 0)} ${value === 1 ? 'Tag' : 'Tage'}`
      : unit === 'K'
        ? difference(value, 2)
        : unit === 'kWh/K'
          ? `${number(perDegree(value), 2)}${HARD}kWh/${degree()}`
          : withUnit(value, unit, unit === 'h' ? 0 : 2),
  solarMeasured: (days: number, from: string, to: string) =>
    fullStop(`Hier an ${countedDative(days, 'Tag')} gemessen, ${from} bis ${to}`),
  toRoom: 'Kühlraum',
  checkDue: 'Prüfungen der Fühler',
};

const signInScreens = {
  title: 'Anmelden',
  claimTitle: 'Zentrale in Besitz nehmen',
  claimWhy:
    'Noch niemand hat diese Zentrale in Besitz genommen. Beim ersten Start hat sie einen Einmalcode ausgegeben: in ihrem Fenster oder in ihrem Protokoll.',
  code: 'Einmalcode',
  name: 'Eigener Name',
  password: 'Passwort',
  newPassword: 'Ein neues Passwort',
  atLeast: 'Mindestens 10 Zeichen.',
  signIn: 'Anmelden',
  claim: 'In Besitz nehmen',
  sending: 'Wird gesendet…',
  failed: (sentence: string) => `Nicht angenommen: ${sentence}`,
  noNeed: 'Sie sind angemeldet.',
  haveCode: 'Ich habe einen Code',
  havePassword: 'Ich habe ein Passwort',
  joinTitle: 'Beitreten mit einem Code',
  joinWhy:
    'Eine Gärtnerin oder ein Gärtner hat einen Code für Sie erstellt. Damit legen Sie Namen und Passwort fest. Gilt er für ein neues Passwort, den Namen so angeben, wie er ist.',
  join: 'Beitreten',
};

// What a change of the farm's description is, in words.

export type FarmPart = 'farm' | 'place' | 'crop' | 'mix' | 'delivery' | 'probe' | 'mapping';

const farmParts: Record<FarmPart, string> = {
  farm: 'Betrieb',
  place: 'Platz',
  crop: 'Kultur',
  mix: 'Mischung',
  delivery: 'Liefertag',
  probe: 'Fühler',
  mapping: 'Nachrichtenform',
};

/** Each field of a description, by the part it belongs to. */
export const farmFieldNames: Readonly<Record<FarmPart, Readonly<Record<string, string>>>> = {
  farm: {
    name: 'Name',
    zone: 'Zeitzone',
    lat: 'Grad Nord',
    lon: 'Grad Ost',
    altitude: 'Meter über dem Meer',
    money: 'Währung',
    wage: 'Stundenlohn',
    language: 'Sprache',
    units: 'Einheiten',
    'units.temperature': 'Temperaturen in',
    'units.weight': 'Gewichte in',
    'units.clock': 'Stunden der Uhr',
    'units.weekStart': 'erster Tag der Woche',
  },
  place: {
    id: 'Kurzname',
    name: 'Name',
    kind: 'Art',
    vents: 'Lüftung',
    airing: 'übliches Lüften',
    'airing.opens': 'üblicherweise offen ab',
    'airing.shuts': 'üblicherweise geschlossen ab',
    capacity: 'Platz für Schalen',
    crop: 'Kultur',
    trays: 'Schalen, die dort stehen',
    covers: 'Abdeckung',
    cover: 'Abdecken',
    'cover.minutes': 'Minuten zum Ab- und Aufdecken',
    'cover.value': 'Wert unter der Abdeckung',
    'cover.damage': 'Temperatur, bei der Schaden beginnt',
    'cover.effect': 'Anteil des Schadens, den eine Abdeckung abhält',
    stage: 'Stand der Kultur',
    picking: 'Pflücken',
    'picking.from': 'erster Pflücktag',
    'picking.to': 'letzter Pflücktag',
    'picking.minutes': 'Minuten zum Pflücken',
    'picking.value': 'Wert des Reifen, das hängt',
    wet: 'Grenzen für nasse Blätter',
    water: 'wann zu gießen ist',
    'water.below': 'gießen unter, % Bodenfeuchte',
    'water.minutes': 'Minuten zum Gießen',
    'wet.at': 'Luftfeuchte, ab der Blätter als nass gelten',
    'wet.below': 'Luftfeuchte, unter der Blätter als trocken gelten',
    'wet.hours': 'Nassstunden, ab denen zu lüften ist',
    setPoint: 'Sollwert',
    limit: 'Grenzwert',
    volume: 'Rauminhalt',
    value: 'Wert der Ware darin',
    checkDays: 'Tage zwischen Prüfungen der Fühler',
    power: 'Strom',
    'power.hours': 'Stunden mit Strom',
    'power.litresPerHour': 'Liter je Stunde',
    'power.fuel': 'Kraftstoff',
    'power.litrePrice': 'Preis je Liter',
  },
  crop: {
    id: 'Kurzname',
    name: 'Name',
    base: 'Basistemperatur',
    band: 'Wohlfühlbereich',
    heatLimit: 'Hitzegrenze',
    chill: 'Kältegrenze',
    disease: 'Krankheiten',
    get price() {
      return `Preis je ${weightUnit()}`;
    },
    get perTray() {
      return `${weightUnit()} je Schale`;
    },
    keeps: 'Haltbarkeit',
    'keeps.like': 'hält sich wie',
    'keeps.days': 'Tage, die es sich hält',
    'keeps.at': 'bei der Temperatur',
    get 'keeps.q10'() {
      return `mal schneller je ${figureApart(10)}`;
    },
    'keeps.freezes': 'gefriert bei',
    'keeps.chill': 'Kälteschaden im Lager unter',
    'keeps.class': 'Art der Ware',
    days: 'Tage von der Aussaat bis zum Schnitt',
    seed: 'Saatgut je Schale',
    other: 'andere Kosten je Schale',
    minutes: 'Arbeit',
    'minutes.sow': 'Minuten, um eine Schale zu säen',
    'minutes.tend': 'Minuten Pflege je Schale und Woche',
    'minutes.cut': 'Minuten, um eine Schale zu schneiden',
    get 'minutes.pack'() {
      return `Minuten, um ein ${weightUnit()} zu packen`;
    },
    'minutes.move': 'Minuten, um eine Schale umzustellen',
    young: 'früher Schnitt',
    'young.days': 'Tage bis zum frühen Schnitt',
    get 'young.perTray'() {
      return `${weightUnit()} je Schale, früher Schnitt`;
    },
    get 'young.price'() {
      return `Preis je ${weightUnit()}, früher Schnitt`;
    },
    regrows: 'wächst nach einem Schnitt nach',
  },
  mix: {
    id: 'Kurzname',
    name: 'Name',
    get price() {
      return `Preis je ${weightUnit()}`;
    },
    parts: 'Anteile',
  },
  delivery: { day: 'Tag', wants: 'gewünscht' },
  probe: {
    id: 'Name',
    place: 'Platz',
    spot: 'Messstelle',
    every: 'Zeit zwischen Messwerten',
    bare: 'blanke Messperle',
    offset: 'Korrektur',
  },
  mapping: {
    topic: 'Thema (Topic)',
    probe: 'wo der Name des Fühlers steht',
    sender: 'Absender',
    time: 'wo die Zeit steht',
    fields: 'Felder',
  },
};

const farmDays: Readonly<Record<string, string>> = {
  monday: 'Montag',
  tuesday: 'Dienstag',
  wednesday: 'Mittwoch',
  thursday: 'Donnerstag',
  friday: 'Freitag',
  saturday: 'Samstag',
  sunday: 'Sonntag',
};

/** Terms that stand as a value in the farm's description. */
const farmTerms: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'units.temperature': { C: '°C', F: '°F' },
  'units.weekStart': { monday: 'Montag', saturday: 'Samstag', sunday: 'Sonntag' },
  covers: { cloches: 'Hauben', fleece: 'Vlies' },
  'power.fuel': fuels,
  'keeps.class': lotClasses,
  day: farmDays,
};

const farmValue = (value: unknown): string => {
  if (value === undefined || value === null) return 'nicht angegeben';
  if (typeof value === 'boolean') return value ? 'ja' : 'nein';
  if (typeof value === 'number')
    return `${value < 0 ? '−' : ''}${String(Math.abs(value)).replace('.', ',')}`;
  if (Array.isArray(value)) return value.length === 0 ? 'keine' : value.map(farmValue).join(', ');
  if (typeof value === 'object') return Object.values(value).map(farmValue).join(' ');
  return String(value);
};

/** A field of the farm's description, turned into the units of the farm where it has one. */
const farmFigure = (part: FarmPart, field: string, given: unknown): string => {
  const unit = farmUnits[part]?.[field];
  if (unit === undefined) return farmTerms[field]?.[String(given)] ?? farmValue(given);
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
    ? 'Betrieb'
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
  /** `4 kg Basilikum`, `20 % Basilikum`. */
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
        return `Fühler ${name} kommt hinzu: ${value('probe', 'place', fields.place)}, ${value('probe', 'spot', fields.spot)}`;
      if (part === 'place') return `${name} kommt hinzu: ${value('place', 'kind', fields.kind)}`;
      return `${farmName(part, name)} kommt hinzu`;
    },
    gone: (part: FarmPart, name: string): string => `${farmName(part, name)} wird entfernt`,
    moved: (name: string, fields: Readonly<Record<string, unknown>>): string =>
      `Fühler ${name} hängt ab jetzt hier: ${value('probe', 'place', fields.place)}, ${value('probe', 'spot', fields.spot)}`,
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
  [/^(?:number|int) to be <=(.+)$/, 'eine Zahl, höchstens $1'],
  [/^(?:number|int) to be >=(.+)$/, 'eine Zahl, mindestens $1'],
  [/^(?:number|int) to be >(.+)$/, 'eine Zahl über $1'],
  [/^int$/, 'eine ganze Zahl'],
  [/^number$/, 'eine Zahl'],
  [/^string$/, 'ein Wort'],
  [/^string to have >=1 characters$/, 'ein Wort'],
  [/^string to have <=(\d+) characters$/, 'höchstens $1 Zeichen'],
  [/^array to have >=1 items$/, 'mindestens eins'],
  [/^one of "(.*)"$/, 'eins von $1'],
  [/"\|"/g, ', '],
  [/setPoint/, 'der Sollwert'],
  [/`at`/, 'die erste der beiden'],
  [/cover\.damage/, 'eine Temperatur, bei der Schaden beginnt'],
  [/^shares that make one whole$/, 'Anteile, die zusammen 100 % ergeben'],
];

/** How a refusal is framed: `Erwartet: eine Zahl in places[0].limit, erhalten: "cold"`. */
export const refused = {
  sentence: (wanted: string, where: string, got: string) =>
    `Erwartet: ${wanted}${where}, erhalten: ${got}`,
  noField: (field: string) => `kein Feld ${field}`,
  inField: (field: string) => ` in ${field}`,
  valid: (what: string) => `gültig: ${what}`,
  nothing: 'nichts',
  /** In place of a secret. */
  another: 'etwas anderes',
  tooDeep: 'etwas, das zu tief verschachtelt ist, um es zu zeigen',
  /** What a schema asks for, where it is said in other words than the schema’s own. */
  get wants(): readonly (readonly [RegExp, string])[] {
    return [
      ...wantedSaid,
      [/^boolean$/, 'ja oder nein (true, false)'],
      [/^object$/, 'ein Objekt'],
      [/^array$/, 'eine Liste'],
      [/^date$/, 'ein Datum'],
      [/^array to have <=(\d+) items$/, 'höchstens $1 Einträge'],
      [/^array to have >=(\d+) items$/, 'mindestens $1 Einträge'],
      [/^string to have >=(\d+) characters$/, 'mindestens $1 Zeichen'],
      [/^(?:number|int) to be <(.+)$/, 'eine Zahl unter $1'],
    ];
  },
};

/** Where nothing can be told because nobody has said where the farm lies. */
export const noFarmYet =
  'Erwartet: ein Betrieb, dessen Lage angegeben ist, erhalten: noch keiner; eine Gärtnerin oder ein Gärtner beschreibt ihn unter Einrichtung';

// Describing a farm step by step.

/** Minutes of work, for a tray or a kilogram. */
const workWords: Readonly<Record<string, string>> = {
  sow: 'säen',
  tend: 'eine Woche pflegen',
  cut: 'schneiden',
  pack: 'ein kg packen',
  move: 'tragen',
};

const setUpSteps = {
  title: 'Den Betrieb beschreiben',
  why: 'Jeder Schritt bleibt in der Zentrale. Aufhören ist jederzeit möglich, weitermachen auch.',
  step: (n: number, of: number) => `Schritt ${n} von ${of}`,
  names: {
    name: 'Name und Währung',
    position: 'Lage',
    units: 'Sprache und Einheiten',
    places: 'Plätze',
    crops: 'Kulturen',
    deliveries: 'Liefertage',
    probes: 'Fühler',
    alarms: 'Alarme',
    first: 'Erster Blick',
  } as Readonly<Record<string, string>>,
  states: { done: 'erledigt', open: 'zu tun', optional: 'kann warten' },
  nameFirst: 'Zuerst dem Betrieb einen Namen geben: der erste Schritt.',
  next: (name: string) => `Weiter: ${name}`,
  goOn: (name: string) => `Weitermachen: ${name}`,
  all: 'Alle Schritte',
  store: 'Speichern',
  storeAndGo: 'Speichern und weiter',
  add: 'Hinzufügen',
  storing: 'Wird gespeichert…',
  stored: 'Gespeichert.',
  notStored: (sentence: string) => `Nicht gespeichert: ${sentence}`,
  preview: 'Speichern ändert:',
  seeAbove: 'Noch nicht richtig: siehe oben.',
  lost: (comment: string) => `Die Notiz „${comment}“ in der Betriebsdatei ginge verloren.`,
  overtaken:
    'Nicht gespeichert: inzwischen hat jemand den Betrieb geändert. Das Getippte steht noch hier, über dem jetzigen Stand: ansehen und noch einmal speichern.',
  theirs: (who: string, at: string) => `${who} hat um ${at} geändert:`,
  begin: 'Noch niemand hat diesen Betrieb beschrieben. Es dauert einige Minuten.',
  beginNow: 'Betrieb beschreiben',
  waits:
    'Wo dieser Betrieb liegt, ist noch anzugeben: durch eine Gärtnerin oder einen Gärtner. Messwerte werden behalten; entschieden wird nichts.',
  here: 'Standort dieses Geräts verwenden',
  hereNot:
    'Ein Browser nennt seinen Standort nur einer Seite, die über https oder von diesem Rechner kommt: hier eintippen.',
  hereFailed: 'Dieses Gerät hat seinen Standort nicht genannt: hier eintippen.',
  sun: (rise: string, set: string) =>
    `Heute geht dort die Sonne um ${rise} auf und um ${set} unter. Stimmt das?`,
  noSun: 'Die Sonne geht dort heute nicht auf oder nicht unter.',
  clockThere: (time: string, offset: string) => `Dort ist es jetzt ${time} (${offset}).`,
  zoneName: (zone: string) => zone.replaceAll('_', ' '),
  zoneTown: (zone: string) => (zone.split('/').at(-1) ?? zone).replaceAll('_', ' '),
  startAt: (town: string) => `Bei ${town} beginnen`,
  away: (km: number, town: string, far: boolean) =>
    far
      ? `Das sind ${km}${HARD}km von ${town}: stimmen Vorzeichen und Zeitzone?`
      : `Das sind ${km}${HARD}km von ${town}.`,
  globe: {
    label:
      'Wo der Betrieb liegt: Pfeiltasten bewegen den Punkt, Plus und Minus gehen näher und weiter',
    how: 'Tippen oder ziehen bewegt den Punkt; näher für feinere Schritte. Die Punkte sind Städte, nach denen Zeitzonen heißen.',
    closer: 'Näher',
    wider: 'Weiter',
    degrees: (value: number) => `${number(value, Number.isInteger(value) ? 0 : 1)}°`,
    town: (zone: string) => (zone.split('/').at(-1) ?? zone).replaceAll('_', ' '),
  },
  unitsWhy:
    'Für das, was Menschen lesen und tippen. Die Zentrale behält °C und kg; Programme, die sie fragen, bekommen diese.',
  language: 'Sprache',
  temperatures: 'Temperaturen',
  temperatureUnits: { C: 'Celsius (°C)', F: 'Fahrenheit (°F)' },
  weights: 'Gewichte',
  weightUnits: { kg: 'Kilogramm (kg)', lb: 'Pfund (lb)' },
  clock: 'Uhr',
  clocks: { 24: '24 Stunden (19:40)', 12: '12 Stunden (7:40 PM)' },
  weekStart: 'Erster Tag der Woche',
  farmMoney: (name: string) => `Die Währung ist die des ersten Schritts: ${name}.`,
  none: 'Noch keine.',
  addPlace: 'Platz hinzufügen',
  changePlace: (name: string) => `${name} ändern`,
  change: 'Ändern',
  takeOut: 'Entfernen',
  forName: (what: string, name: string) => `${what}: ${name}`,
  addAnother: 'Stattdessen hinzufügen',
  outdoorWhy: 'Mit einem Platz im Freiland werden alle anderen verglichen.',
  placesElse:
    'Der Kurzname eines Platzes ändert sich nie: seine Messwerte hängen daran. Nachrichtenformen anderer Fühler stehen in der Betriebsdatei.',
  addCrop: 'Kultur hinzufügen',
  otherCrop: 'eine andere Kultur',
  cropLine: (name: string, price: unknown, perTray: unknown, currency: string) =>
    [
      name,
      price === undefined
        ? 'Preis nicht angegeben'
        : `${farmValue(price)} ${currency} je ${weightUnit()}`,
      perTray === undefined
        ? 'Ertrag nicht angegeben'
        : `${farmValue(perTray)} ${weightUnit()} von einer Schale`,
    ].join(', '),
  retire: 'Diese Kultur aufgeben',
  retireWhy: 'Was über eine aufgegebene Kultur eingetragen ist, bleibt in den Aufzeichnungen.',
  keepIt: 'Behalten',
  minutesLine: (minutes: Readonly<Record<string, number>>) =>
    Object.entries(minutes)
      .map(([what, min]) => `${workWords[what] ?? what} ${farmValue(min)}`)
      .join(', '),
  mixes: 'Mischungen',
  mixesLater: 'Mit zwei Kulturen oder mehr kann es Mischungen geben, die als eine verkauft werden.',
  addMix: 'Mischung hinzufügen',
  mixLine: (name: string, parts: readonly { crop: string; share: number }[]) =>
    `${name}: ${parts.map(({ crop, share }) => `${crop} ${number(share * 100, 0)}${HARD}%`).join(', ')}`,
  choose: 'Auswählen',
  cropNames: {
    basil: 'Basilikum',
    'pea-shoots': 'Erbsensprossen',
    radish: 'Radieschen',
    'brassica-microgreens': 'Kohl-Microgreens',
    lettuce: 'Kopf- und Blattsalat',
    strawberry: 'Erdbeere',
    eggplant: 'Aubergine',
  } as Readonly<Record<string, string>>,
  figures: 'Zahlen für den Anfang, und woher sie sind',
  figure: 'Größe',
  value: 'Wert',
  source: 'Quelle',
  addDelivery: 'Lieferung hinzufügen',
  days: farmDays,
  deliveryLine: (day: string, wants: readonly { of: string; kg: number }[]) =>
    [day, ...wants.map(({ of, kg }) => `${withUnit(kg, 'kg')} ${of}`)].join(', '),
  probesWhy: 'Ein Fühler, der sich meldet, erscheint hier von selbst. Angeben, wo er hängt.',
  noProbes: 'Noch kein Fühler hat sich gemeldet.',
  newProbe: 'Ein Passwort für einen Fühler',
  newProbeWhy:
    'Dem Fühler diesen Namen, dieses Passwort und die Adresse der Zentrale geben. Das Passwort wird einmal gezeigt.',
  probeName: 'Name des Fühlers',
  makePassword: 'Passwort erstellen',
  probeUser: (user: string) => `MQTT-Name ${user}, Passwort`,
  placesFirst: 'Noch gibt es keine Plätze: zuerst einen hinzufügen, unter Plätze.',
  speaks: (id: string, values: readonly string[]) =>
    values.length === 0
      ? `Ein Fühler namens ${id} meldet sich: wo ist er?`
      : `Ein Fühler namens ${id} meldet sich: ${values.join(' ')}. Wo ist er?`,
  itIs: 'Ja, dort hängt er',
  elsewhere: 'Anderswo',
  silent: (ids: readonly string[]) => `Mit Passwort, noch nicht gehört: ${ids.join(', ')}.`,
  moreOf: (id: string) => `Wie oft ${id} sich meldet, und Korrekturen`,
  publishTo: (user: string, host: string) =>
    `Er sendet an garden/${user}/temperature und dergleichen, bei ${host}. Das Passwort wird nicht noch einmal gezeigt.`,
  passedOn: 'Ich habe es weitergegeben',
  soundHere: 'Ton auf diesem Bildschirm',
  trySound: 'Einmal ertönen lassen',
  sounded: 'Der Ton kam. War er laut genug?',
  notSounded: 'Dieser Browser hat den Ton nicht zugelassen.',
  alarmsWhy:
    'Jemanden mit E-Mail-Adresse oder Webhook hinzufügen, speichern und von hier eine Probe senden.',
  asIf: 'Ein ganzer Alarm, zur Probe',
  asIfWhy: 'Er geht den Weg eines echten: an die erste Person, und weiter, wenn niemand antwortet.',
  toAlarms: 'Alles über Alarme',
  fileWhy:
    'Alles hier ist eine Betriebsdatei; Nachrichtenformen anderer Fühler und weitere Korrekturen stehen dort und werden mit „dewpost farm import“ eingelesen.',
  file: 'Betriebsdatei ansehen',
  missing: {
    position: 'Die Lage des Betriebs ist nicht angegeben.',
    places: 'Er hat keine Plätze.',
    probes: 'Noch hängt nirgends ein Fühler.',
    reading: 'Noch ist kein Messwert gekommen.',
  },
  ready: 'Für einen ersten Blick ist alles da.',
  toToday: 'Zu Heute',
  changes: 'Änderungen des Betriebs',
  changesWhy:
    'Rückgängig stellt den Betrieb her, wie er vor dieser Änderung war; was später geändert wurde, geht mit.',
  undo: 'Rückgängig',
  undone: 'Der frühere Stand ist wiederhergestellt.',
  undoes: 'Wiederhergestellt.',
  by: (who: string, when: string) => `${who}, ${when}`,
};

// Every field of the farm's description, as it is asked for on a page: its label with its unit, and
// what it means, with what is usual. Those without a hint say all in their label.

/** Crops of the table of how things keep. */
const keptCropNames: Readonly<Record<string, string>> = {
  'lettuce-leaf': 'Blattsalat',
  'lettuce-head': 'Kopfsalat',
  strawberry: 'Erdbeeren',
  basil: 'Basilikum',
  eggplant: 'Auberginen',
  'pea-shoots': 'Erbsensprossen',
  'radish-microgreens': 'Radieschen-Microgreens',
  'buckwheat-microgreens': 'Buchweizen-Microgreens',
  'salad-mix': 'Salatmischung',
  cucumber: 'Gurken',
  pepper: 'Paprika',
  'snap-bean': 'Buschbohnen',
};

const setUpFields = {
  from: (label: string) => `${label}, von`,
  to: (label: string) => `${label}, bis`,
  nth: (label: string, n: number) => `${label} (${n})`,
  oneMore: 'Eins mehr',
  notTold: 'nicht angegeben',
  nothing: 'nichts',
  noCovers: 'keine',
  covers: { cloches: 'Hauben', fleece: 'Vlies' },
  fuels: { petrol: 'Benzin', diesel: 'Diesel' },
  keptCrops: (id: string) => keptCropNames[id] ?? plain(id),
  /** What a place of a kind is mostly called; a house has a name of its own. */
  placeNames: { outdoor: 'Freiland', 'cool-room': 'Kühlraum' } as Readonly<Record<string, string>>,
  groups: {
    grows: 'Was dort wächst',
    cover: 'Abdeckung und Frost',
    picking: 'Wann dort reife Früchte hängen',
    wet: 'Wann Blätter als nass gelten',
    airing: 'Wann üblicherweise gelüftet wird',
    water: 'Gießen nach Bodenfühler',
    room: 'Mehr über diesen Raum',
    power: 'Was ihn speist',
    climate: 'Klima und Krankheiten',
    work: 'Arbeit und Kosten',
    young: 'Stattdessen als junge Blätter geschnitten',
    keeps: 'Wie es sich nach dem Schnitt hält',
  } as Readonly<Record<string, string>>,
  diseases: {
    'grey-mould': 'Grauschimmel',
    anthracnose: 'Anthraknose',
    'powdery-mildew': 'Echter Mehltau',
    'basil-downy-mildew': 'Falscher Mehltau (Basilikum)',
    'lettuce-downy-mildew': 'Falscher Mehltau (Salat)',
    'brassica-downy-mildew': 'Falscher Mehltau (Kohl)',
    'late-blight': 'Kraut- und Braunfäule',
    'early-blight': 'Dürrfleckenkrankheit',
    'tray-mould': 'Schimmel auf Schalen',
  } as Readonly<Record<string, string>>,
  stages: {
    'tight-bud': 'geschlossene Knospe',
    balloon: 'Ballonstadium',
    'open-flower': 'offene Blüte',
    'green-fruit': 'grüne Frucht',
    'late-autumn-flower': 'Blüte im Spätherbst',
    'dormant-crown': 'ruhender Wurzelstock',
    'flower-bud-in-crown': 'Blütenknospe im Herz',
    plant: 'Pflanze',
    fruit: 'Frucht',
    spring: 'im Frühjahr',
    winter: 'im Winter',
    seedling: 'Sämling',
  } as Readonly<Record<string, string>>,
  farm: {
    name: ['Name des Betriebs'],
    money: ['Währung, drei Buchstaben', 'EUR, CHF, USD …'],
    wage: ['Was eine Stunde Arbeit kostet', 'Was jemand dafür bekäme.'],
  },
  where: {
    zone: ['Zeitzone'],
    lat: ['Grad Nord (Süd ist negativ)', '−90 bis 90; ein Zehntel sind 11 km.'],
    lon: ['Grad Ost (West ist negativ)', '−180 bis 180.'],
    altitude: ['Meter über dem Meer', 'Leer: 0. Zählt für den Luftdruck.'],
  },
  place: {
    kind: ['Art'],
    name: ['Sein Name'],
    capacity: ['Platz für Schalen', 'Wie viele zugleich hineinpassen. Leer: nicht bekannt.'],
    vents: ['Lässt sich lüften'],
    get setPoint() {
      return [
        `Sollwert, ${degree()}`,
        'Worauf der Regler steht; für die meisten Salate 2 bis 4.',
      ] as const;
    },
    get limit() {
      return [
        `Zu warm ab, ${degree()}`,
        'Welcher Grenzwert für die Ware gilt, sagen die örtlichen Vorschriften für Lebensmittel.',
      ] as const;
    },
    volume: ['Rauminhalt, m³', 'Länge × Breite × Höhe, innen.'],
    value: ['Wert dessen, was meist darin liegt', 'In Geld: was ein warmer Raum kosten würde.'],
    checkDays: ['Tage zwischen Prüfungen der Fühler', '7 bis 1000. Leer: 90.'],
    'power.hours': [
      'Stunden mit Strom',
      'Wie 06:00-10:00, 16:00-22:00. Leer: immer, oder wie gelernt.',
    ],
    'power.litresPerHour': ['Liter je Stunde des Stromerzeugers'],
    'power.fuel': ['Kraftstoff'],
    'power.litrePrice': ['Preis je Liter'],
    crop: ['Kultur'],
    trays: ['Schalen, die dort stehen', 'Zählt nur, bis Sätze eingetragen sind.'],
    covers: ['Abdeckung'],
    'cover.minutes': ['Minuten, um abzudecken', 'Für den ganzen Platz: meist 20 bis 60.'],
    'cover.value': ['Wert dessen, was ein Frost verdürbe', 'In Geld.'],
    get 'cover.damage'() {
      return [
        `Schaden beginnt bei, ${degree()}`,
        'Was der Fühler dann zeigt. Leer: das Stadium unten sagt es.',
      ] as const;
    },
    'cover.effect': [
      'Anteil des Schadens, den die Abdeckung abhält, %',
      'Über 0, bis 100; 80, wenn nicht bekannt.',
    ],
    stage: ['Stadium der Kultur', 'Für Kulturen mit veröffentlichter Frostgrenze.'],
    'picking.from': ['Erster Tag der Ernte', 'Monat und Tag, wie 05-20.'],
    'picking.to': ['Letzter Tag der Ernte', 'Monat und Tag, wie 10-31.'],
    'picking.minutes': ['Minuten für einen Pflückgang'],
    'picking.value': ['Wert dessen, was reif hängt', 'In Geld.'],
    'airing.opens': ['Üblich geöffnet um', 'Wie 08:30. Dann kommt nur, was nicht üblich ist.'],
    'airing.shuts': ['Üblich geschlossen um', 'Wie 19:00. Leer: eine Stunde vor Sonnenuntergang.'],
    'water.below': [
      'Gießen, wenn der Boden weniger sagt als, %',
      '0 bis 100. Braucht einen Bodenfühler.',
    ],
    'water.minutes': ['Minuten zum Gießen'],
    'wet.hours': ['Nassstunden, ab denen zu lüften ist', '1 bis 48. Leer: 4.'],
    'wet.at': ['Nass ab dieser Luftfeuchte, %', '50 bis 100. Leer: 90.'],
    'wet.below': [
      'Wieder trocken unter dieser Luftfeuchte, %',
      '50 bis 100, nicht über der ersten. Leer: 87.',
    ],
  },
  crop: {
    starter: ['Kultur'],
    stands: ['Wächst in'],
    get price() {
      return [
        `Eigener Preis je ${weightUnit()}`,
        'Selbst anzugeben: keine Liste kennt ihn.',
      ] as const;
    },
    get perTray() {
      return [
        `${weightUnit()} von einer Schale`,
        'Selbst anzugeben: eine Schätzung genügt, eigene Sätze berichtigen sie.',
      ] as const;
    },
    days: [
      'Tage von der Aussaat bis zum Schnitt',
      'Wenigste und meiste, bis eigene Sätze es sagen.',
    ],
    name: ['Ihr Name'],
    get base() {
      return [
        `Wächst nicht unter, ${degree()}`,
        'Basistemperatur ihrer Wärmesumme. Leer: 10.',
      ] as const;
    },
    get band() {
      return [`Wohlfühlbereich, ${degree()}`] as const;
    },
    get heatLimit() {
      return [`Zu heiß ab, ${degree()}`] as const;
    },
    get chill() {
      return [`Kälteschaden unter, ${degree()}`] as const;
    },
    disease: ['Krankheiten, auf die zu achten ist'],
    seed: ['Saatgut je Schale, in Geld'],
    other: ['Andere Kosten je Schale, in Geld', 'Substrat, Abnutzung der Schale, Verpackung.'],
    'minutes.sow': ['Minuten, um eine Schale zu säen'],
    'minutes.tend': ['Minuten Pflege je Schale und Woche'],
    'minutes.cut': ['Minuten, um eine Schale zu schneiden'],
    get 'minutes.pack'() {
      return [`Minuten, um ein ${weightUnit()} zu waschen und zu packen`] as const;
    },
    'minutes.move': ['Minuten, um eine Schale umzustellen'],
    regrows: ['Wächst nach einem Schnitt nach'],
    'young.days': ['Tage bis zum frühen Schnitt'],
    get 'young.perTray'() {
      return [`${weightUnit()} von einer Schale, früher Schnitt`] as const;
    },
    get 'young.price'() {
      return [`Preis je ${weightUnit()}, früher Schnitt`] as const;
    },
    'keeps.like': ['Hält sich wie', 'Leer: wie sie selbst, wo eine Quelle davon spricht.'],
    'keeps.days': ['Tage, die es sich hält'],
    get 'keeps.at'() {
      return [`bei dieser Temperatur, ${degree()}`, '0 bis 35. Leer: 0.'] as const;
    },
    get 'keeps.q10'() {
      return [
        `Altert um so viel schneller, ${difference(10)} wärmer (mal)`,
        '1 bis 10; meist 2 bis 3.',
      ] as const;
    },
    get 'keeps.freezes'() {
      return [`Gefriert bei, ${degree()}`] as const;
    },
    get 'keeps.chill'() {
      return [`Kälteschaden im Lager unter, ${degree()}`] as const;
    },
    'keeps.class': ['Nach Lebensmittelregeln ist es'],
  },
  mix: {
    name: ['Ihr Name'],
    parts: ['Was darin ist', 'Anteile nach Gewicht, zusammen 100 %.'],
    'parts.crop': ['Kultur'],
    'parts.share': ['Anteil, %'],
    get price() {
      return [`Eigener Preis je ${weightUnit()}`] as const;
    },
  },
  delivery: {
    day: ['Tag jeder Woche'],
    wants: [
      'Was gewünscht wird',
      'Kann leer bleiben und später für einzelne Tage geändert werden.',
    ],
    'wants.of': ['Gewünscht'],
    get 'wants.kg'() {
      return [`${weightUnit()}`] as const;
    },
  },
  probe: {
    every: ['Meldet sich alle', 'Wie 30s, 5m oder 1h.'],
    bare: ['Blanke Messperle zwischen den Blättern, ohne Dach'],
    get 'offset.temperature'() {
      return [`Zu seiner Temperatur addiert, ${degree()}`, 'Leer: nichts.'] as const;
    },
    'offset.humidity': ['Zu seiner Luftfeuchte addiert, %', 'Leer: nichts.'],
    'offset.soil-moisture': ['Zu seiner Bodenfeuchte addiert, %', 'Leer: nichts.'],
    get 'offset.soil-temperature'() {
      return [`Zu seiner Bodentemperatur addiert, ${degree()}`, 'Leer: nichts.'] as const;
    },
  },
} as const;
/** The fields of one part, each by its path. */
export type FieldWords = Readonly<Record<string, readonly [label: string, hint?: string]>>;

// The page Set-up: who may sign in, and one’s own sign-in.

const setUpScreens = {
  title: 'Einrichtung',
  open: 'Bei dieser Zentrale muss sich niemand anmelden: sie hört nur auf ihrem eigenen Rechner. Personen und Passwörter gibt es, wenn sie ohne --open gestartet wird.',
  helper: 'Betrieb, Plätze, Fühler und Personen ändert eine Gärtnerin oder ein Gärtner.',
  people: 'Personen',
  roles: { grower: 'Gärtnerin oder Gärtner', helper: 'Hilfe' },
  rolesWhy:
    'Gärtnerin oder Gärtner: darf alles ändern. Hilfe: liest die Seiten, beantwortet Aufgaben und trägt ein, was getan wurde.',
  you: '(Sie)',
  seen: (ms: number) => `zuletzt gesehen ${age(ms)}`,
  neverSeen: 'noch nicht gesehen',
  add: 'Person hinzufügen',
  role: 'Rolle',
  makeCode: 'Code erstellen',
  newPasswordFor: 'Code für ein neues Passwort',
  remove: 'Entfernen',
  removeWhy: (name: string) => `${name} wird sofort abgemeldet und kann sich nicht mehr anmelden.`,
  removeSure: (name: string) => `${name} entfernen`,
  keep: 'Behalten',
  forName: (what: string, name: string) => `${what}: ${name}`,
  removed: (name: string) => `${name} ist entfernt.`,
  codeFor: (role: string, name: string | null) =>
    name === null
      ? `Code für eine neue Person: ${role}`
      : `Code für ${name}, für ein neues Passwort`,
  codeWhy: (until: string) =>
    `Er gilt einmal, bis ${until}, und wird nur jetzt gezeigt. Er wird im Browser auf der Anmeldeseite unter „${signInScreens.haveCode}“ eingetippt.`,
  codeSeen: 'Ich habe ihn weitergegeben',
  waiting: 'Noch nicht benutzte Codes',
  waitingLine: (role: string, name: string | null, until: string) =>
    `${name === null ? `neu: ${role}` : `${name}, neues Passwort`}, bis ${until}`,
  takeBack: 'Zurücknehmen',
  takenBack: 'Der Code ist zurückgenommen.',
  yours: 'Eigene Anmeldung',
  signedIn: (name: string, role: string) => `Angemeldet als ${name}, ${role}.`,
  change: 'Eigenes Passwort ändern',
  passwordNow: 'Jetziges Passwort',
  newPassword: 'Ein neues Passwort',
  changed: 'Ihr Passwort ist geändert. Ihre anderen Browser sind abgemeldet.',
  everywhere: 'Überall abmelden',
  everywhereWhy: 'Meldet Sie in jedem Browser ab, auch hier.',
  failed: (sentence: string) => `Nicht ausgeführt: ${sentence}`,
  sending: 'Wird gesendet…',
};

// Every fixed word of the screens, in German. Sentences that depend on what was measured come from
// the hub already worded; here are the labels round them and the states a page can be in.

const spots: Record<Spot, string> = {
  canopy: 'Bestand',
  air: 'Luft',
  'under-cover': 'unter der Abdeckung',
  product: 'Ware',
  grass: 'Gras',
  unit: 'Kühlaggregat',
};

const quantities: Record<Quantity, string> = {
  temperature: 'Temperatur',
  humidity: 'Luftfeuchte',
  'soil-moisture': 'Bodenfeuchte',
  'soil-temperature': 'Bodentemperatur',
  'leaf-wetness': 'Blattnässe',
  light: 'Licht',
  rain: 'Regen',
  wind: 'Wind',
  power: 'Leistung',
  energy: 'Energie',
  door: 'Tür',
  battery: 'Batterie',
};

const kinds: Record<PlaceKind, string> = {
  tunnel: 'Folienhaus',
  patch: 'Beet',
  outdoor: 'Freiland',
  'cool-room': 'Kühlraum',
};

const limits: Record<Strip['limits'][number]['what'], string> = {
  damage: 'Frostschaden',
  chill: 'Kälteschaden',
  heat: 'zu heiß',
  'cool-room-limit': 'Grenzwert',
  'set-point': 'Sollwert',
};

const coolRoomStates: Record<CoolRoom['state'], string> = {
  holding: 'Hält',
  warming: 'Erwärmt sich',
  warm: 'Zu warm',
  unknown: 'Nicht zu sagen',
};

const coolRoomCauses: Record<NonNullable<CoolRoom['cause']>, string> = {
  door: 'Wahrscheinliche Ursache: Tür.',
  unit: 'Wahrscheinliche Ursache: Kühlaggregat.',
  power: 'Wahrscheinliche Ursache: Strom.',
  controller: 'Wahrscheinliche Ursache: Regler; seine Anzeige ablesen, Zahl und Einheit.',
  probe: 'Wahrscheinliche Ursache: Fühler.',
  unclear: 'Die Ursache ist unklar.',
};

const wetness = ({ wet }: Pick<PlaceNow, 'wet'>) =>
  wet === null ? 'Ob nass, nicht zu sagen' : wet ? 'Nass' : 'Trocken';

/** A probe's value as it is read aloud: a door is open or shut, the rest are  */
function reading({ quantity, value, unit }: { quantity: Quantity; value: number; unit: string }) {
  if (quantity === 'door') return value > 0.5 ? 'offen' : 'zu';
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
    ? `, in 8 von 10 Nächten zwischen ${degrees(between[0])} und ${degrees(between[1])}`
    : '';
  const cross = by === null ? '' : `, ab etwa ${by}`;
  const learned =
    nights < 10 // the same ten that rules/frost asks for before it trusts a fit
      ? `grob geschätzt, bis zehn Nächte bekannt sind (bisher ${nights})`
      : `gelernt aus ${countedDative(nights, 'Nacht')}`;
  return `Tiefstwert ${temperature(mean)}${range}; unter ${degrees(at)} mit ${chance(p)} Wahrscheinlichkeit${cross}; ${learned}`;
}

function coolRoom(room: CoolRoom): string {
  const is =
    room.temperature === null
      ? 'Kein frischer Messwert, wie warm es ist.'
      : `${temperature(room.temperature)}; Sollwert ${degrees(room.setPoint)}, Grenzwert ${degrees(room.limit)}.`;
  const cause = room.cause === null ? '' : ` ${coolRoomCauses[room.cause]}`;
  const left = room.holdOver.minutesToLimit;
  const hold =
    left === null
      ? ' Wie lange er ohne Kühlung unter dem Grenzwert bliebe, ist nicht bekannt.'
      : left <= 0
        ? ''
        : ` Ohne Kühlung bleibt er etwa ${span(left * 60_000)} unter dem Grenzwert.`;
  const above = room.aboveLimit.hours;
  const long = span(above * 3_600_000);
  const over =
    above <= 0
      ? ''
      : room.aboveLimit.since === null
        ? ` In den letzten 24 Stunden lag er ${long} über dem Grenzwert.`
        : ` Er liegt über dem Grenzwert; ${long} in den letzten 24 Stunden.`;
  const ask =
    above <= 0 ? '' : ' Die örtliche Lebensmittelaufsicht fragen, was das für die Ware heißt.';
  return `${is}${cause}${hold}${over}${ask}`;
}

// The frost page: tonight on one axis, and how good its forecasts have been.

const frostLimits: Readonly<Record<'damage' | 'chill' | 'freezing', string>> = {
  damage: 'Frostschaden',
  chill: 'Kälteschaden',
  freezing: 'Gefrierpunkt',
};
/** `nights` that rules/frost asks for before it trusts a fit. */
const learnedFrom = (nights: number) =>
  nights < 10
    ? `Grob geschätzt, bis zehn Nächte bekannt sind (bisher ${nights}).`
    : `Gelernt aus ${countedDative(nights, 'Nacht')}.`;

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
    const by = crossesAt === null ? '' : `, ab etwa ${clock(crossesAt, zone)}`;
    return `Unter ${temperature(at)} (${frostLimits[what]}) mit ${chance(p)} Wahrscheinlichkeit${by}`;
  });
  const low = `Tiefstwert etwa ${temperature(mean)}, in 8 von 10 Nächten zwischen ${degrees(from)} und ${temperature(to)}`;
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
    covered === null ? 'niemand hat angegeben, ob abgedeckt ist' : placeScreens.covered(covered);
  const few =
    'Ein Fühler unter der Abdeckung und einer daneben zeigen es, sobald neun klare Nächte bekannt sind';
  const worth =
    median === null || gain === null
      ? `Was die Abdeckung bringt, ist nicht bekannt. ${few}.`
      : nights < 9
        ? `In der ${nights === 1 ? 'bisher einzigen klaren Nacht' : `mittleren von ${countedDative(nights, 'klare Nacht')}`} brachte die Abdeckung ${difference(median)}; vor neun wird mit nichts gerechnet.`
        : `In neun von zehn klaren Nächten brachte die Abdeckung ${difference(gain)} oder mehr (${counted(nights, 'Nacht')}).`;
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
  const lay = (nights: number) => (nights === 1 ? 'lag' : 'lagen');
  const below = `unter ${temperature(at)}`;
  const again =
    told.persistenceError === null
      ? ''
      : `; mit dem Tiefstwert der Nacht davor wären es ${difference(told.persistenceError)}`;
  const first = `${counted(n, 'Nacht')}: im Mittel ${difference(told.error)} daneben${again}.`;
  if (!enough)
    return [
      first,
      'Zu wenige, um zu sagen, wie gut die Wahrscheinlichkeiten sind: das braucht 20 Nächte.',
    ];
  const when = (share: Share, words: string) =>
    share.n === 0
      ? `Noch nie vorhergesagt: ${words}.`
      : `Vorhergesagt ${words}: ${counted(share.n, 'Nacht')}, davon ${lay(share.happened)} ${share.happened} ${below}.`;
  return [
    first,
    `${told.inside} von ${n} Tiefstwerten ${lay(told.inside)} in der Spanne, die für 8 von 10 galt.`,
    when(often, `70${HARD}% oder mehr`),
    when(seldom, `unter 30${HARD}%`),
    `${counted(happened, 'Nacht')} ${lay(happened)} ${below}, davon ${told.misses} ohne Warnung; ${counted(told.falseAlarms, 'Warnung')} ohne Folgen. Eine Warnung heißt: Wahrscheinlichkeit von ${chance(warnFrom)} oder mehr.`,
    skill === null
      ? 'Keine Nacht war anders als die anderen, darum lässt sich keine Güte angeben.'
      : skill > 0
        ? `Die Wahrscheinlichkeiten sagen mehr als die Jahreszeit allein (Güte ${number(skill, 2)}; 1 ist vollkommen).`
        : `Die Wahrscheinlichkeiten sagen nicht mehr als die Jahreszeit allein (Güte ${number(skill, 2)}).`,
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
    return `${source}: ${counted(nights, 'Nacht')} bekannt; vor zehn zählt sie nicht mit.`;
  const record = `${source}: korrigiert über ${counted(nights, 'Nacht')} ${difference(error)} daneben; was hier gelernt ist, liegt ${difference(ownError)} daneben.`;
  if (!reaches) return `${record} Die neueste Ausgabe enthält nicht die ganze heutige Nacht.`;
  return weight > 0
    ? `${record} Ihr Anteil am Tiefstwert für heute Nacht ist ${chance(weight)}.`
    : `${record} Sie zählt nicht mit, solange sie nicht die bessere ist.`;
}

const frostScreens = {
  title: 'Frost',
  tonight: 'Heute Nacht',
  none: 'Noch keine Vorhersage für heute Nacht.',
  noNight:
    'Die Sonne geht hier heute nicht unter und auf, darum gibt es keine Nacht vorherzusagen.',
  picture: (name: string | null) =>
    name === null
      ? 'Temperaturen heute Nacht an allen Messstellen'
      : `Temperaturen heute Nacht an allen Messstellen, Spanne von ${name}`,
  key: 'Durchgezogen: gemessen. Gestrichelt: erwartet. Schattiert: 8 von 10, für die gewählte Messstelle.',
  range: 'Spanne zeigen von',
  all: 'allen Messstellen',
  limits: frostLimits,
  limit: (what: 'damage' | 'chill' | 'freezing', at: number) =>
    `${frostLimits[what]} ${degrees(at)}`,
  table: 'Heute Nacht in Zahlen',
  columns: {
    spot: 'Messstelle',
    get low() {
      return `Tiefst ${degree()}`;
    },
    range: '8 von 10',
    get limit() {
      return `Grenzwert ${degree()}`;
    },
    chance: 'Wahrscheinlichkeit darunter',
    crosses: 'Darunter ab',
  },
  notCrossed: 'nicht zu erwarten',
  get hours() {
    return `Stunde für Stunde erwartet, ${degree()}`;
  },
  covers: 'Abdeckungen jetzt',
  noCovers: 'Kein Platz hat laut Betriebsdatei eine Abdeckung.',
  scores: 'Wie gut diese Vorhersagen sind',
  noScores: 'Noch keine Vorhersage ist bewertet: die erste wird es, wenn ihre Nacht vorbei ist.',
  noneScored: 'Hier noch nicht bewertet.',
  choose: 'Messstelle',
  methods: {
    'through-the-night': 'Durch die Nacht, drei Stunden nach Sonnenuntergang',
    evening: 'Zwei Stunden nach Sonnenuntergang',
    afternoon: 'Am Nachmittag',
    'recent-nights': 'Am Morgen',
    station: 'Mit einer Wetterstation, erste Nächte',
    'wide-default': 'Erste Nächte, grob geschätzt',
  } as Readonly<Record<string, string>>,
  reliability: 'Was vorhergesagt war und was kam',
  band: (from: number, to: number) => `${number(100 * from, 0)} bis ${number(100 * to, 0)}${HARD}%`,
  bandWords: (from: number, to: number, n: number, happened: number) =>
    `Vorhergesagt ${number(100 * from, 0)} bis ${number(100 * to, 0)}${HARD}%, ${counted(n, 'Nacht')}: ${happened} darunter.`,
  bandColumns: {
    said: 'Vorhergesagt',
    nights: 'Nächte',
    below: 'Darunter',
    share: 'Anteil',
    between: 'Spanne 95 %',
  },
  bandKey:
    'Band: was vorhergesagt war. Punkt: Anteil, der darunter lag. Strich: wo der wahre Anteil liegt, in neunzehn von zwanzig Fällen.',
  list: 'Die neuesten Nächte',
  listColumns: {
    night: 'Nacht',
    get said() {
      return `Gesagt ${degree()}`;
    },
    chance: 'Wahrscheinlichkeit',
    get came() {
      return `Gekommen ${degree()}`;
    },
    below: 'Darunter',
  },
  yes: 'ja',
  no: 'nein',
  sources: 'Vorhersagen, die geschickt werden',
  noSources: 'Niemand schickt eine Vorhersage. Wie es geht, steht in der README.',
};

// The page that shows how a number came about.

/** Names of the numbers put into a formula. */
const growingInputs = {
  batch: 'Satz',
  crop: 'Kultur',
  'delivery-at': 'Abfahrt',
  'delivery-day': 'Lieferung am',
  'past-batches': 'Frühere Sätze, auf denen es beruht',
  'ready-at': 'Erntereif, gesehen oder erwartet',
  'sow-on': 'Zu säen am',
  'sow-trays': 'Schalen',
  'wanted-weight': 'Gewünschtes Gewicht',
};

export const inputLabels: Readonly<Record<string, string>> = {
  ...growingInputs,
  ...trayInputs,
  kilograms: 'Was dort steht, zusammen',
  'share-lost': 'Anteil des Werts, den eine Nacht mit Schaden nimmt',
  'shuts-at': 'Üblicherweise geschlossen um',
  'above-since': 'Darüber seit',
  get 'afternoon-temperature'() {
    return `Temperatur um ${wallTime('15:00')}`;
  },
  'clear-nights-under-cover': 'Klare, ruhige Nächte unter dieser Abdeckung',
  'clock-hours': 'Vereinbarte Höchstzeit',
  bearing: 'Trägt im Juni oder fortlaufend',
  'clean-cost': 'Arbeit des Ausputzens',
  'close-up': 'Ergebnis der Regel zum Schließen',
  'cut-cost': 'Arbeit des Zurückschneidens',
  'day-length': 'Tageslänge',
  'days-since-picking': 'Tage seit dem letzten Pflückgang',
  'each-day': 'Weitermachen, je Tag',
  'each-picking': 'Jeder Pflückgang, gleich wie viel er bringt',
  'frost-in-14-days': 'Ein tödlicher Frost binnen 14 Tagen',
  'fruit-hanging': 'Gezählte Früchte und Blüten',
  'grower-insists': 'Der Schnitt ist trotzdem gewünscht',
  get 'hard-frosts'() {
    return `Nächte unter ${figureDegrees(-4)} in dieser Saison`;
  },
  hygiene: 'Nutzen: Krankheit, die mit den Blättern verschwindet',
  'leaves-flat-and-red': 'Blätter liegen flach und sind rot',
  'lost-share': 'Anteil am nächsten Jahr, den ein Schnitt grüner Blätter kostet',
  get margin() {
    return `Preis je ${kilogramWord()}, Pflücken bezahlt`;
  },
  'next-year': 'Wert des Beets im nächsten Jahr',
  'rot-dry': 'Fault an einem trockenen Tag',
  'rot-wet': 'Fault an einem nassen Tag',
  'still-to-gain': 'Noch zu gewinnen durch Weiterpflücken',
  'wet-days': 'Ein Tag ist nass',
  cost: 'Kosten der Arbeit',
  'at-top-since': 'Am höchsten Punkt des Kühltakts seit',
  'cycle-bottom': 'Tiefpunkt des Kühltakts',
  'cycle-top': 'Höchster Punkt des Kühltakts',
  'moved-since': 'Verschoben seit',
  'no-way-down-since': 'Kein Weg nach unten seit',
  'out-of-cycle-above': 'Außerhalb des Kühltakts über',
  'running-share': 'Laufanteil des Kühlaggregats',
  trouble: 'Was gesehen wurde',
  'crop-floor': 'Kälteste Temperatur, die die Kultur verträgt',
  'crosses-at': 'Unterschritten ab',
  'damage-below': 'Schaden beginnt unter',
  'days-left-least': 'Verbleibende Tage, mindestens',
  'days-to-sale': 'Tage bis zur nächsten Lieferung',
  'degrees-of-freedom': 'Freiheitsgrade',
  drop: 'Geretteter Anteil',
  'dry-ends-spell': 'Trockene Zeit, die eine Nässe beendet',
  'evening-dew-point': 'Taupunkt zwei Stunden nach Sonnenuntergang',
  'evening-temperature': 'Temperatur zwei Stunden nach Sonnenuntergang',
  'expected-beforehand': 'Tiefstwert, allein aus früheren Nächten erwartet',
  'fewest-nights': 'Nächte, die nötig sind, bevor mit einem Gewinn gerechnet wird',
  'forecast-from': 'Vorhersage aus',
  'foretold-at': 'Vorhergesagt',
  'foretold-by': 'Vorhergesagt von',
  'checked-at': 'Geprüft',
  'heard-at': 'Zuletzt gehört',
  'hours-known': 'Bekannte Stunden seit der Ernte',
  'hours-not-known': 'Nicht bekannte Stunden der Nässe',
  'inside-humidity': 'Luftfeuchte innen',
  'inside-temperature': 'Temperatur innen',
  'keeps-at': 'Diese Tage gelten bei',
  'keeps-least': 'Tage, die es sich hält, mindestens',
  'keeps-most': 'Tage, die es sich hält, höchstens',
  latitude: 'Breite',
  'lies-at': 'Wo er jetzt liegt',
  limit: 'Grenzwert',
  longitude: 'Länge',
  'lot-hours-not-known': 'Nicht bekannte Stunden seit der Ernte',
  'measures-since': 'Misst hier seit',
  'measured-days': 'Tage mit Messungen seither',
  'newest-reading': 'Neuester Messwert',
  'nights-learned': 'Nächte, aus denen gelernt ist',
  now: 'Berechnet',
  'off-since': 'Aus seit',
  'open-since': 'Offen, oder steigend, seit',
  'open-up': 'Ergebnis der Regel zum Lüften',
  'outdoors-mean': 'Mittel draußen in diesen Stunden',
  'outside-humidity': 'Luftfeuchte draußen',
  'outside-temperature': 'Temperatur draußen',
  probability: 'Wahrscheinlichkeit, 0 bis 1',
  probe: 'Fühler',
  get q10() {
    return `Altert so viele Male schneller, ${figureApart(10)} wärmer`;
  },
  quantity: 'Größe',
  'pickings-counted': 'Gezählte Pflückgänge',
  'speed-fastest': 'Ein Kilogramm braucht mindestens, in 8 von 10 Fällen',
  'speed-slowest': 'Ein Kilogramm braucht höchstens, in 8 von 10 Fällen',
  'rain-from': 'Regen aus',
  'read-at': 'Gemessen',
  'readings-from': 'Messwerte seit',
  'released-at': 'Gesagt',
  'reports-every': 'Meldet sich alle',
  rise: 'Anstieg in einer Stunde',
  'room-air': 'Luft im Raum',
  'room-or-crate': 'Gemessen, wo Posten lagern',
  'room-power': 'Aufgenommene Leistung',
  rule: 'Regel',
  'set-point': 'Sollwert',
  'share-prevented': 'Anteil des Ausfalls, den die Arbeit verhindert',
  'spell-from': 'Nässe von',
  'spell-to': 'Nässe bis',
  spread: 'Streuung der Vorhersage (Standardabweichung)',
  'stored-at': 'Eingelagert',
  'stuck-since': 'Gleicher Wert seit',
  sunrise: 'Sonnenaufgang',
  sunset: 'Sonnenuntergang',
  'time-constant': 'Zeitkonstante des Raums',
  'time-constant-of-produce': 'Zeitkonstante einer Kiste',
  'tonight-low': 'Tiefstwert, heute Nacht erwartet',
  'under-cover': 'Temperatur unter der Abdeckung',
  'usual-pause': 'Übliche Pause der Kühlung',
  value: 'Wert dessen, was hängt',
  'value-at-risk': 'Wert in Gefahr',
  wage: 'Stundenlohn',
  'warmest-of-day': 'Höchstwert des Tages',
  'warmest-outside-ahead': 'Höchstwert draußen in den nächsten Stunden',
  'wet-at': 'Blätter gelten als nass ab',
  'wet-below': 'Blätter gelten als trocken unter',
  work: 'Zeit, die die Arbeit braucht',
};

const inputValues: Readonly<Record<string, string>> = {
  'through-the-night': 'Messwerte der Nacht bisher und frühere Nächte',
  station: 'eine grobe Schätzung und die Nächte einer Wetterstation',
  'coil-starved': 'ein viel zu kalter Verdampfer',
  'door-open': 'eine offene Tür',
  'lost-bottom': 'Luft, die nicht hinunterkommt',
  'not-cooling': 'ein Aggregat, das nicht kühlt',
  'set-elsewhere': 'ein Kühltakt, der anderswo liegt',
  stalled: 'Luft, die nicht weiter nach unten geht',
  stuck: 'ein Fühler, der stillsteht',
  'supply-off': 'kein Strom',
  'too-cold': 'viel zu kalte Luft',
  evening: 'Messwerte zwei Stunden nach Sonnenuntergang und frühere Nächte',
  get afternoon() {
    return `Messwerte um ${wallTime('15:00')} und frühere Nächte`;
  },
  'recent-nights': 'die letzten Nächte',
  'wide-default': 'eine grobe Schätzung, bis Nächte bekannt sind',
  act: 'tun',
  june: 'im Juni',
  ever: 'fortlaufend',
};

// What a formula does is told by the code's own comments, which are English in every language.

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
  title: 'So ist es berechnet',
  link: 'So ist es berechnet',
  toTask: 'Zurück zur Aufgabe',
  input: (what: string) => inputLabels[what] ?? plain(what),
  inputValue: (value: string) => inputValues[value] ?? value,
  name: formulaName,
  /** `FALLEN_BY_EVENING` as it is read: fallen by evening. */
  constant: (name: string) =>
    /^[A-Z0-9_]+$/.test(name) ? name.toLowerCase().replaceAll('_', ' ') : formulaName(name),
  fromCode,
  words: 'In Worten (aus dem Code, englisch)',
  put: 'Eingesetzte Zahlen',
  noPut: 'Ohne Aufgabe geöffnet, darum sind keine Zahlen zu zeigen.',
  gone: 'Die Aufgabe steht nicht mehr in der Liste; ihre Zahlen sind hier nicht behalten.',
  result: 'Ergebnis',
  limits: 'Grenzen',
  against: (limit: string, setter: string) => `Verglichen mit ${limit}: ${setter}.`,
  noLimit: 'Nicht mit einem Grenzwert verglichen.',
  refuses: (words: string) => `Keine Antwort: ${fromCode(words)}.`,
  noRange: 'Dafür ist kein Bereich angegeben.',
  source: 'Quelle',
  measured: (probe: string, time: string) =>
    `Gemessen vom Fühler ${probe}, ${time}. Nichts wurde berechnet.`,
  told: 'Wie es jemand eingetragen hat. Nichts wurde berechnet.',
  by: (words: string, name: string | null) =>
    name === null ? fromCode(words) : `${fromCode(words)} (${formulaName(name)})`,
  builtOn: 'Beruht auf',
  usedBy: 'Auch verwendet für',
  code: (file: string, line: number) => `Im Code: ${file}, Zeile ${line}.`,
};

// Alarms on their way to people: what a message says, and the words of the page about them.

const alarmKindNames: Readonly<Record<string, string>> = {
  warm: 'Ware zu warm',
  door: 'Tür',
  unit: 'Kühlaggregat',
  power: 'Strom',
  probe: 'Fühler in einem Kühlraum',
  frost: 'Frost',
  test: 'Probe',
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
    ? `Verschoben bis ${at(putOffUntil)}${seenBy === null ? '' : ` von ${seenBy}`}.`
    : `Vorbei seit ${at(clearedAt ?? 0)}; ${seenBy === null ? 'noch von niemandem gesehen' : `gesehen von ${seenBy}`}.`;

/** The same for e-mail and webhook: a subject of one line, and text that stands by itself. */
export function alarmMessage(news: AlarmNews): { subject: string; text: string } {
  const { what, farm, zone, now, link } = news;
  const at = (t: number) => dayAndTime(t, zone);
  const lines: (string | false)[] = [];
  let subject = '';
  if (what === 'test') {
    subject = 'Probe des Alarms';
    lines.push(
      'Das ist eine Probe. Alles ist in Ordnung.',
      'Auf der Seite „Gesehen“ wählen, damit es im Protokoll steht.',
    );
  } else if (what === 'trouble') {
    subject = 'Alarmnachrichten kommen nicht durch';
    lines.push(news.words, 'Die Zentrale versucht es weiter.');
  } else if (what === 'summary') {
    subject = `${counted(news.held.length, 'Nachricht')} zurückgehalten`;
    lines.push(
      'Für eine Stunde waren es zu viele Nachrichten. Diese wurden zurückgehalten:',
      ...news.held,
    );
  } else {
    const title = firstSentence(news.words);
    const ended = news.putOffUntil === null ? 'Vorbei' : 'Verschoben';
    const is = what === 'over' ? ended : news.urgent ? 'Alarm' : 'Hinweis';
    subject = `${is}: ${title}${title.toLowerCase().includes(news.place.toLowerCase()) ? '' : ` (${news.place})`}`;
    lines.push(
      news.words,
      news.since !== null && `Seit ${at(news.since)}, ${age(now - news.since)}.`,
      what === 'over' && news.clearedAt !== null && endWords(news, at),
      what === 'raised' &&
        news.doBy !== null &&
        `Zu erledigen bis ${at(news.doBy)} (${countdown(news.doBy - now)}).`,
      what === 'raised' && news.minutes !== null && `Etwa ${number(news.minutes, 0)} min Arbeit.`,
      news.count > 1 && `Er kam ${repeated(news.count)}.`,
      ...news.folded.map((words) => `Dazu: ${words}`),
      what === 'raised' && news.caution !== null && `Vorsicht: ${news.caution}`,
      news.others.length > 0 &&
        `Auch benachrichtigt: ${listed(news.others.map(({ name, at: t }) => `${name} (${at(t)})`))}.`,
      what === 'raised' &&
        news.urgent &&
        'Auf der Seite „Gesehen“ wählen, damit sonst niemand geweckt wird.',
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
  `Eine Nachricht an ${person} per ${channel === 'email' ? 'E-Mail' : 'Webhook'} kommt nicht durch: ${said}`;

const alarmChannels: Readonly<Record<string, string>> = {
  email: 'E-Mail',
  webhook: 'Webhook',
  alive: 'Lebenszeichen',
};
const messageStates: Readonly<Record<string, string>> = {
  waiting: 'noch nicht gesendet',
  held: 'zurückgehalten, zu viele in einer Stunde',
  delivered: 'angenommen',
  refused: 'abgewiesen',
  dropped: 'nicht gesendet',
  summarised: 'in einer Zusammenfassung gemeldet',
};

const alarmScreens = {
  title: 'Alarme',
  none: 'Kein Alarm steht an, und alle sind gesehen.',
  standing: 'Alarme, die anstehen oder noch nicht gesehen sind',
  nobody:
    'Niemand wird per E-Mail oder Webhook benachrichtigt. Alarme erscheinen auf offenen Seiten und über MQTT.',
  kind: alarmKindName,
  channel: (name: string) => alarmChannels[name] ?? plain(name),
  ranks: { urgent: 'dringend', today: 'heute', note: 'Notiz' },
  ranksWhy:
    'Dringend weckt und tönt. Heute wird zu wachen Stunden gemeldet. Notiz wird nur aufgeschrieben.',
  states: {
    'active-unacknowledged': 'Steht an, von niemandem gesehen',
    'active-acknowledged': 'Steht an, gesehen',
    'cleared-unacknowledged': 'Von selbst vorbei, von niemandem gesehen',
    over: 'Vorbei',
  },
  sinceTime: (time: string, ms: number) => `seit ${time}, ${age(ms)}`,
  overAt: (time: string) => `vorbei seit ${time}`,
  count: (n: number) => `kam ${repeated(n)}`,
  folded: (words: string) => `Dazu: ${words}`,
  seenLine: (who: string, time: string) => `Gesehen von ${who}, ${time}.`,
  seen: 'Gesehen',
  seenFalse: 'Gesehen, Fehlalarm',
  wasRight: 'Er war richtig',
  wasFalse: 'Es war ein Fehlalarm',
  was: { right: 'Laut Eintrag richtig.', false: 'Laut Eintrag ein Fehlalarm.' },
  seenOf: (answer: string, words: string) => `${answer}: ${firstSentence(words)}`,
  notDone: (sentence: string) => `Nicht ausgeführt: ${sentence}`,
  told: (name: string, channel: string, time: string) =>
    `${name} per ${alarmChannels[channel] ?? channel}, ${time}`,
  toldState: (state: string, words: string) =>
    `${messageStates[state] ?? plain(state)}${words === '' ? '' : `: ${words}`}`,
  toldNobody: 'Niemand bekam eine Nachricht.',
  toPage: 'Zu den Alarmen',
  troubles: (
    { person, channel, words }: { person: string; channel: string; words: string },
    more: number,
  ) => {
    const said =
      channel === 'alive'
        ? `Das Lebenszeichen kommt nicht durch: ${words}`
        : alarmTroubleWords(person, channel, words);
    const end = /[.!?…]$/.test(said) ? '' : '.';
    return `${said}${end}${more > 0 ? ` Auch ${several(more, 'weiterer Weg kommt', 'weitere Wege kommen')} nicht durch.` : ''}`;
  },
  hubSilent: 'Die Zentrale ist seit mehr als fünf Minuten stumm. Selbst nach dem Kühlraum sehen.',
  sound: {
    title: 'Ton auf dieser Seite',
    on: 'Der Ton ist an: diese Seite tönt, bis jemand „Gesehen“ wählt.',
    off: 'Der Ton ist auf dieser Seite aus.',
    waiting: 'Dieser Browser wartet auf ein Antippen, bevor die Seite tönen darf.',
    none: 'Dieser Browser kann keine Töne erzeugen.',
    allow: 'Ton einschalten',
    stop: 'Ton ausschalten',
    sounding: 'Jetzt tönt ein Alarm.',
  },
  silence: {
    title: 'Ruhe',
    none: 'Kein Alarm ruht.',
    line: (what: string, until: string) => `Alarme ruhen: ${what}, bis ${until}.`,
    work: 'geplante Arbeit',
    farm: 'der ganze Betrieb',
    by: (who: string, reason: string) => `${who}: ${reason}.`,
    end: 'Jetzt beenden',
    keeps:
      'Die Ruhe endet von selbst. Zu warme Ware und Frost ruhen höchstens zwei Stunden, bei geplanter Arbeit gar nicht.',
    where: 'Wo',
    everywhere: 'Der ganze Betrieb',
    which: 'Welche Alarme',
    all: 'Alle Arten',
    long: 'Wie lange',
    reason: 'Grund',
    isWork: 'Geplante Arbeit: zu warme Ware und Frost trotzdem melden',
    make: 'Ruhen lassen',
    minutes: (n: number) => span(n * MINUTE),
  },
  people: {
    title: 'Wer geweckt wird, in dieser Reihenfolge',
    none: 'Noch niemand.',
    name: 'Name',
    email: 'E-Mail-Adresse',
    webhook: 'Webhook-Adresse',
    webhookKept: (server: string) =>
      `Webhook-Adresse (behalten: ${server}; leer lassen, um sie zu behalten)`,
    webhookAway: 'Webhook entfernen',
    urgentHours: 'Darf von dringenden Alarmen geweckt werden',
    todayHours: 'Darf über den Rest benachrichtigt werden',
    always: 'jederzeit',
    never: 'nie',
    between: 'nur zwischen',
    from: 'von',
    to: 'bis',
    up: (name: string) => `Früher: ${name}`,
    down: (name: string) => `Später: ${name}`,
    upShort: 'Früher',
    downShort: 'Später',
    remove: 'Entfernen',
    removeOf: (name: string) => `${name} entfernen`,
    add: 'Person hinzufügen',
    save: 'Speichern',
    test: (channel: string) => `${alarmChannels[channel] ?? channel} proben`,
    testOf: (channel: string, name: string) =>
      `${alarmChannels[channel] ?? channel} an ${name} proben`,
    testing: 'Wird versucht…',
    outcomes: {
      delivered: 'Von der Gegenseite angenommen',
      later: 'Kam nicht durch',
      refused: 'Abgewiesen',
    },
    outcome: (outcome: string, words: string) => (words === '' ? outcome : `${outcome}: ${words}`),
    saveFirst: 'Zuerst speichern, dann proben.',
  },
  sending: {
    title: 'Wie gesendet wird',
    rules: 'Wartezeiten, Ränge, Ruhezeit und wöchentliche Probe',
    ways: 'Mailserver, Webhooks, Links und Lebenszeichen',
    waits: 'Ohne Antwort',
    second: 'die zweite Person benachrichtigen nach, min',
    third: 'die dritte nach, min',
    everybody: 'alle nach, min',
    everybodyWhy: 'Alle heißt auch: Personen außerhalb ihrer Stunden.',
    most: 'Nachrichten an eine Person in einer Stunde, höchstens',
    quiet: 'Ruhezeit, in der nur dringende Alarme gemeldet werden',
    quietOff: 'keine Ruhezeit',
    rank: 'Rang jeder Art',
    guarded: 'Zu warme Ware und Frost sind immer dringend.',
    weekly: 'Wöchentlicher Probealarm',
    weeklyOff: 'keine wöchentliche Probe',
    weekday: 'Tag',
    at: 'Zeit',
    address: 'Adresse dieser Seiten, für Links in Nachrichten',
    mail: 'Mailserver',
    mailOff: 'Es wird keine E-Mail gesendet.',
    mailOn: 'E-Mail senden',
    host: 'Server',
    port: 'Port',
    security: 'Verschlüsselung',
    securities: {
      tls: 'TLS von Anfang an (Port 465)',
      starttls: 'STARTTLS (Port 587)',
      none: 'keine: alle auf dem Weg können mitlesen',
    },
    user: 'Benutzer (leer, wenn keiner nötig ist)',
    password: 'Passwort',
    passwordKept: 'Passwort (behalten; leer lassen, um es zu behalten)',
    fromAddress: 'Absenderadresse',
    certificate: 'Zertifikat, dem vertraut wird (PEM), für einen eigenen Server',
    secret: 'Webhook-Geheimnis (mindestens 16 Zeichen)',
    secretKept: 'Webhook-Geheimnis (behalten; leer lassen, um es zu behalten)',
    alive: 'Lebenszeichen an etwas außerhalb',
    aliveOn: 'Senden',
    aliveUrl: 'Adresse',
    aliveKept: (server: string) => `Adresse (behalten: ${server}; leer lassen, um sie zu behalten)`,
    aliveEvery: 'Alle, min',
    save: 'Speichern',
    saving: 'Wird gespeichert…',
    saved: 'Gespeichert.',
    notSaved: (sentence: string) => `Nicht gespeichert: ${sentence}`,
    rehearse: 'Probealarm an alle jetzt',
    rehearsed: 'Der Probealarm ist unterwegs.',
  },
  weekdays: {
    sunday: 'Sonntag',
    monday: 'Montag',
    tuesday: 'Dienstag',
    wednesday: 'Mittwoch',
    thursday: 'Donnerstag',
    friday: 'Freitag',
    saturday: 'Samstag',
  },
  log: {
    title: 'Protokoll der letzten 30 Tage',
    none: 'Kein Alarm in dieser Zeit.',
    csv: 'Als Tabelle (CSV)',
    counts: 'Anzahl je Monat und Art',
    noCounts: 'Noch nichts zu zählen.',
    entry: (day: string, said: string, state: string) =>
      `${shortDay(day)}: ${firstSentence(said)}. ${state}.`,
    line: (raised: number, seen: number, minutes: number | null) =>
      `${counted(raised, 'Alarm')}, ${number(seen, 0)} gesehen${
        minutes === null ? '' : `, die Hälfte davon binnen ${spanDative(minutes * MINUTE)}`
      }.`,
    share: (falseOnes: number, answered: number, low: number, high: number) =>
      `Fehlalarme: ${falseOnes} von ${answered}, zu denen es jemand gesagt hat; der wahre Anteil liegt zwischen ${number(low * 100, 0)} und ${number(high * 100, 0)}${HARD}% (Wilson, 95${HARD}%).`,
    noShare: 'Niemand hat gesagt, ob es Fehlalarme waren.',
    targets:
      'Ziel: höchstens ein dringender Fehlalarm in 30 Tagen, höchstens drei Hinweise am Tag.',
  },
  testTitle: 'Probealarm',
  testWords: 'Probe des Alarms. Alles ist in Ordnung.',
  testAnswered: (who: string, time: string) => `Beantwortet von ${who}, ${time}.`,
  testOpen: 'Noch hat niemand geantwortet.',
};

// The season's odds of frost, and the planner of a patch.

const seasonScreens = {
  title: 'Frostwahrscheinlichkeit dieser Saison',
  place: 'Platz',
  limit: 'Grenzwert',
  limits: {
    frost: (at: string) => `Frost, ${at}`,
    damage: (at: string) => `Schaden hier, ${at}`,
  },
  none: 'Der Betrieb hat noch kein Beet und keinen Platz im Freiland.',
  at: (place: string, spot: string | null) => (spot === null ? place : `${place}, ${spot}`),
  cannot: (missing: readonly string[]) =>
    `Nicht zu sagen ohne ${listed(missing.map(missingLabel))}.`,
  years: (seasons: number) =>
    `Bisher ${counted(seasons, 'Saison')} aufgezeichnet; acht sind nötig.`,
  nights: (nights: number) =>
    `Noch nicht bekannt: bisher ${counted(nights, 'Nacht')} von hier behalten, acht Saisons sind nötig.`,
  howTo: 'Frühere Aufzeichnungen einer Station an der Zentrale einlesen, mit ihrem Befehl:',
  command: 'npx dewpost import DATEI --station NAME --lat=GRAD --lon=GRAD',
  commandOnly:
    'Er liest Dateien der Formen GHCN-Daily, ISD-Lite und CSV. Von dieser Seite aus lässt sich keine Datei einlesen.',
  first: (at: string, ahead: readonly { days: number; p: number | null }[]) =>
    `In dieser Saison bisher kein ${at}. Wahrscheinlichkeit des ersten binnen ${aheadWords(ahead)}.`,
  came: (at: string, day: string) => fullStop(`Der erste ${at} dieser Saison kam am ${day}`),
  last: (at: string, p: number | null, ahead: readonly { day: string; p: number | null }[]) =>
    `Wahrscheinlichkeit, dass in diesem Frühjahr noch ein ${at} kommt: nach heute ${orNot(p)}, ${ahead
      .map(({ day, p: later }) => `nach dem ${day} ${orNot(later)}`)
      .join(', ')}.`,
  unknownNights: (n: number) =>
    n === 0
      ? ''
      : `${counted(n, 'Nacht')} dieser Saison ${n === 1 ? 'wurde' : 'wurden'} nicht gemessen.`,
  // Both are masculine: sentences above and below say "kein", "der erste".
  limitWords: (what: 'frost' | 'damage', at: string) =>
    what === 'frost' ? `Frost (${at} oder darunter)` : `Frost mit Schaden (${at} oder darunter)`,
  dates: (side: 'first' | 'last', early: string, middle: string, late: string) =>
    fullStop(
      `In Saisons mit Frost kommt der ${side === 'first' ? 'erste' : 'letzte'} um den ${middle}; in einer von zehn vor dem ${early}, in einer von zehn nach dem ${late}`,
    ),
  risk: (side: 'first' | 'last', p: number | null, in5: number | null, in10: number | null) =>
    p === null
      ? ''
      : `${side === 'first' ? 'Bis zu diesem Datum ist er gekommen' : 'Nach diesem Datum kommt noch einer'}: in ${chance(p)} der Saisons; mindestens einmal in 5 Saisons: ${orNot(in5)}, in 10 Saisons: ${orNot(in10)}.`,
  fitted: {
    own: (shared: number) => `Aus ${countedDative(shared, 'Saison')}, hier gemessen.`,
    dates: (station: string, shared: number, by: number | null) =>
      `Nach ${station}, um ${number(by, 0)} Tage verschoben: von beiden ${shared === 1 ? 'ist' : 'sind'} ${counted(shared, 'Saison')} bekannt.`,
    nights: (station: string, shared: number, by: number | null) =>
      `Nach ${station}. In ${countedDative(shared, 'klare, ruhige Nacht')} mit Messwerten von beiden war es hier ${difference(Math.abs(by ?? 0))} ${(by ?? 0) < 0 ? 'kälter' : 'wärmer'}, darum zählen die Jahre der Station um so viel ${(by ?? 0) < 0 ? 'über' : 'unter'} dem Grenzwert.`,
    none: (station: string) =>
      `Nach ${station}, unverändert: keine klaren, ruhigen Nächte sind von beiden bekannt, und in einer Senke kann es Wochen früher gefrieren als an einer Station.`,
  },
  away: (name: string, km: number) => `${name}, ${number(km, 0)}${HARD}km entfernt`,
  from: (seasons: number, withFrost: number, way: 'curve' | 'counted' | 'unknown') =>
    `${counted(seasons, 'Saison')} aufgezeichnet, ${withFrost} mit solchem Frost. ${
      way === 'curve'
        ? 'Wahrscheinlichkeiten nach einer Kurve durch ihre Tage.'
        : 'Zu wenige für eine Kurve: ausgezählt.'
    }`,
  picture: {
    first: 'Wahrscheinlichkeit, dass der erste gekommen ist, nach Datum',
    last: 'Wahrscheinlichkeit, dass noch einer kommt, nach Datum',
  },
  today: (day: string) => `heute, ${day}`,
  key: 'Linie: Wahrscheinlichkeit nach Datum. Striche unten: frühere Jahre. Senkrechte Linie: heute.',
  columns: {
    until: 'Bis',
    after: 'Nach',
    p: 'Nach der Kurve',
    counted: 'Ausgezählt',
    season: 'Saison ab',
    date: 'Datum',
  },
  aheadRow: (days: number, day: string) => `${counted(days, 'Tag')}, ${day}`,
  table: 'Die Wahrscheinlichkeiten als Tabelle',
  pastYears: 'Frühere Jahre',
  noFrost: 'keiner',
  overrides: 'Für heute Nacht sagt die Vorhersage des Tiefstwerts mehr.',
  stations: 'Eingelesene Stationen',
  noStations: 'Noch keine.',
  station: (name: string, km: number, first: string | null, last: string | null, days: number) =>
    `${name}, ${number(km, 0)}${HARD}km entfernt: ${number(days, 0)} Tage, ${first ?? notKnown} bis ${last ?? notKnown}`,
  remove: 'Entfernen',
  removeOf: (name: string) => `${name} entfernen`,
  sure: (name: string) => `${name} und alle ihre Tage entfernen?`,
  yes: 'Entfernen',
  keep: 'Behalten',
};

const orNot = (p: number | null) => (p === null ? notKnown : chance(p));
const aheadWords = (ahead: readonly { days: number; p: number | null }[]) =>
  listed(ahead.map(({ days, p }) => `${countedDative(days, 'Tag')} ${orNot(p)}`));

/** Money that may be lost: a minus is a cost. */
const gain = (value: number | null, currency: string) =>
  value === null ? notKnown : money(value, currency).replace('-', '−');

const figureNames: Readonly<Record<string, string>> = {
  get price() {
    return `Preis je ${kilogramWord()}`;
  },
  wage: 'Stundenlohn',
  perDay: 'Weitermachen, je Tag',
  get minutesPerKg() {
    return `Pflücken je ${kilogramWord()}`;
  },
  minutesPerPicking: 'Jeder Pflückgang, gleich wie viel er bringt',
  rotWet: 'Reifende Früchte, die an einem nassen Tag faulen',
  rotDry: 'Reifende Früchte, die an einem trockenen Tag faulen',
  cleanRotWet: 'Dasselbe an einem nassen Tag, nach dem Ausputzen',
  cleanRotDry: 'Dasselbe an einem trockenen Tag, nach dem Ausputzen',
  cleanMinutes: 'Ausputzen',
  cutMinutes: 'Zurückschneiden',
  hygiene: 'Nutzen: Krankheit, die mit den Blättern verschwindet',
  nextYear: 'Wert des Beets im nächsten Jahr',
  lostShare: 'Anteil daran, den ein Schnitt grüner Blätter kostet',
  flowerUnits: 'Wärmesumme von der Blüte bis zur Reife',
  unitsAhead: 'Wärmesumme von morgen',
  wetDays: 'Wahrscheinlichkeit, dass morgen nass ist',
  coversSave: 'Anteil eines Frostausfalls, den die Abdeckung verhindert',
};

const figureSources: Readonly<
  Record<'told' | 'farm-file' | 'measured' | 'station' | 'usual', string>
> = {
  told: 'eigene Angabe',
  'farm-file': 'Betriebsdatei',
  measured: 'hier gemessen',
  station: 'Station',
  usual: 'unsere Annahme, ohne Quelle',
};

const cutBackScreens = {
  money: gain,
  title: 'Wann aufhören und ausputzen',
  of: (name: string) => `Wann aufhören und ausputzen: ${name}`,
  none: 'Der Betrieb hat kein Erdbeerbeet.',
  cannot: (missing: readonly string[]) =>
    `Nicht zu sagen ohne ${listed(missing.map(missingLabel))}.`,
  advice: {
    wait: 'Es ist nicht die Zeit zum Ausputzen: das Beet wächst auf seine Ernte zu.',
    'pick-on': 'Weiterpflücken.',
    'pick-last': 'Das Reife pflücken, dann aufhören und ausputzen.',
    clean: 'Zuerst ausputzen, dann weiterpflücken.',
    'clear-out': 'Mit dem Pflücken aufhören und ausputzen.',
    'cut-back': 'Jetzt zurückschneiden.',
    unknown: 'Noch nicht zu sagen.',
  },
  window: (from: string, to: string, best: string, value: string) =>
    from === to
      ? `Am besten am ${best} aufhören. Bis dahin sind etwa ${value} zu erwarten, nach Abzug aller Kosten.`
      : `Am besten vom ${from} bis zum ${to} aufhören. Bis zum ${best} sind etwa ${value} zu erwarten, nach Abzug aller Kosten.`,
  windowNow: (value: string) =>
    `Am besten heute aufhören. Was jetzt zu pflücken ist, bringt etwa ${value}, nach Abzug aller Kosten.`,
  nearly: (day: string) => `Am ${day} aufzuhören brächte fast ebenso viel.`,
  reasons: {
    'nothing-left': 'Es wurde nichts gezählt, was noch zu pflücken wäre.',
    'not-worth': 'Ab jetzt lohnt kein Pflückgang seinen Aufwand.',
    'rest-not-worth':
      'Was danach bleibt, kostet durch Frost, Fäulnis und Arbeit mehr, als es voraussichtlich bringt.',
    'picked-out': 'Bis dahin ist alles Gezählte gereift.',
  },
  tonight:
    'Die erste Nacht richtet sich nach der Vorhersage für heute Nacht, die anderen nach den Wahrscheinlichkeiten der Saison.',
  season:
    'Alle Nächte richten sich nach den Wahrscheinlichkeiten der Saison: für dieses Beet gibt es keine Vorhersage für heute Nacht.',
  frostFirst: (limit: string) =>
    `Wird früher eine Nacht mit ${limit} oder darunter vorhergesagt, am Abend davor alles pflücken, was sich verkaufen lässt; danach lohnt das Warten nicht mehr.`,
  picture: 'Noch zu gewinnen, und durch Warten verloren, Tag für Tag',
  key: 'Durchgezogen: noch zu gewinnen. Gestrichelt: bis dahin verloren durch Frost, Fäulnis und Weitermachen. Band: die Tage zum Aufhören.',
  gainLabel: 'zu gewinnen',
  lostLabel: 'verloren',
  summary: (gainNow: string, gone: string, day: string) =>
    `Heute sind noch ${gainNow} zu gewinnen. Bis zum ${day} zu warten kostet voraussichtlich ${gone} von dem, was hängt.`,
  summaryNow: (gone: string, day: string) =>
    `Bis zum ${day} zu warten kostet voraussichtlich ${gone} von dem, was hängt.`,
  table: 'Tag für Tag als Tabelle',
  columns: {
    day: 'Tag',
    get ripe() {
      return `Reift ${weightUnit()}`;
    },
    units: 'Wärmesumme',
    daylight: 'Tageslicht h',
    frost: 'Frost in der Nacht %',
    survives: 'Kein Frost bis dahin %',
    wet: 'Nasser Tag %',
    toGain: 'Noch zu gewinnen',
    lost: 'Bis dahin verloren',
  },
  shortDays: (day: string) =>
    `Ab dem ${day} sind die Tage kürzer als 10 h: Früchte reifen später, als die Wärmesumme sagt.`,
  changes: 'Was das ändern würde',
  change: {
    'price-below': (value: string, day: string) =>
      `Fiele der Preis unter ${value} je ${kilogramWord()}, wäre am besten am ${day} aufzuhören.`,
    'price-above': (value: string, day: string) =>
      `Stiege der Preis über ${value} je ${kilogramWord()}, wäre am ${day} aufzuhören.`,
    'frost-sooner': (value: string, day: string) =>
      `Wären Fröste ${value} ${value === '1' ? 'Tag' : 'Tage'} früher zu erwarten, wäre am ${day} aufzuhören.`,
    wetter: (value: string, day: string) =>
      `Wären ${value} der Tage nass, wäre am ${day} aufzuhören.`,
  },
  unchanged:
    'Weder Preis noch früherer Frost oder nasseres Wetter in Reichweite würde den Tag ändern.',
  ways: 'Die Wege im Vergleich',
  way: {
    keep: 'Weiterpflücken wie bisher',
    clean: 'Zuerst ausputzen',
    cut: 'Jetzt zurückschneiden',
  },
  wayUnknown: {
    clean: 'Um das Ausputzen zu vergleichen, unten angeben, wie viel weniger dann fault.',
    cut: 'Um das Zurückschneiden zu vergleichen, unten angeben, was das Beet im nächsten Jahr wert ist.',
  },
  care: 'Vorsicht',
  caution: [
    'Die übliche Herbstarbeit ist, Ausläufer, tote und fleckige Blätter und faule Früchte herauszunehmen. Grüne Blätter stehen lassen, bis sie flach liegen und sich röten: Pflanzen ohne Blätter härteten sich in Klimakammern nicht gegen Kälte ab (Boyce, in Penn State 2015).',
    'Ein Schnitt bis aufs Herz wird nur binnen vier Wochen nach dem letzten Pflückgang einer im Juni tragenden Kultur angeboten, oder nach Zeichen der Winterruhe, oder wenn er ausdrücklich gewünscht ist.',
  ],
  mayCut: {
    renovation:
      'Zurückschneiden wird angeboten: der letzte Pflückgang liegt weniger als vier Wochen zurück.',
    dormant: 'Zurückschneiden wird angeboten: die Pflanzen sind in Winterruhe.',
    grower: 'Zurückschneiden wird angeboten, weil es gewünscht ist. Das ist eingetragen.',
  },
  mayNot: 'Zurückschneiden wird jetzt nicht angeboten.',
  assumed: 'Worauf es beruht',
  figure: (what: string) => figureNames[what] ?? plain(what),
  figureFrom: figureSources,
  count: {
    title: 'Was dort hängt',
    last: (day: string, who: string) =>
      who === 'file' ? `Gezählt am ${day}, aus einer Datei.` : `Gezählt am ${day} von ${who}.`,
    never: 'Noch hat niemand gezählt.',
    line: (stage: string, kg: string, ripe: string | null) =>
      `${kg} ${stage}${ripe === null ? '' : `, reif etwa am ${ripe}`}`,
    stages: { ripe: 'reif', turning: 'umfärbend', green: 'grün', flower: 'in Blüte' },
    stage: 'Stand',
    get kg() {
      return weightUnit();
    },
    flowered: 'Blüten markiert am',
    enter: 'Zählung eintragen',
    hint: 'Eine Schätzung mit dem Auge genügt. Bei Blüten das Gewicht angeben, das sie voraussichtlich tragen. Frühere Zählungen bleiben.',
    add: 'Weitere Zeile',
    drop: 'Diese Zeile weglassen',
    send: 'Zählung speichern',
    sending: 'Wird gesendet…',
    kept: 'Die Zählung ist gespeichert.',
    failed: (sentence: string) => `Nicht gespeichert: ${sentence}`,
    lineName: (n: number) => `Zeile ${n}`,
  },
  terms: {
    title: 'Eigene Zahlen',
    hint: 'Leer gelassen, gilt die Betriebsdatei oder eine übliche Zahl von uns.',
    percent: (label: string) => `${label}, %`,
    minutes: (label: string) => `${label}, Minuten`,
    money: (label: string, currency: string) => `${label}, ${currency}`,
    units: (label: string) => `${label}, ${degree()}${HARD}d`,
    bearing: 'Die Pflanzen tragen',
    june: 'einmal, im Juni',
    ever: 'fortlaufend bis zum Herbst',
    lastPicking: 'Letzter Pflückgang am',
    leaves: 'Die Blätter liegen flach und sind rot',
    insists: 'Ich will trotzdem zurückschneiden',
    untold: 'nicht angegeben',
    send: 'Zahlen speichern',
    kept: 'Die Zahlen sind gespeichert.',
  },
  trial: {
    title: 'An früheren Herbsten geprüft',
    what: 'Jeder frühere Herbst wird Tag für Tag durchgegangen, mit dem, was die anderen Jahre allein gesagt hätten, und mit einem Beet, in dem jede Woche gleich viel zur Blüte kommt.',
    start: 'An früheren Herbsten prüfen',
    again: 'Noch einmal prüfen',
    cancel: 'Prüfung abbrechen',
    running: (done: number, of: number) => `${done} von ${of} Herbsten geprüft…`,
    canceled: 'Vor dem Ende abgebrochen.',
    failed: (why: string) =>
      missingLabels[why] === undefined
        ? `Nicht gelungen: ${why}`
        : `Nicht zu sagen ohne ${missingLabel(why)}.`,
    rule: (t: Trial, within: number) =>
      `In ${countedDative(t.n, 'Herbst')} hätte diese Regel ${repeated(t.near)} binnen ${countedDative(within, 'Tag')} vor dem Frost aufgehört, ${repeated(t.early)} früher, und ${repeated(t.late)} wäre der Frost zuerst gekommen${rest(t)}; im Mittel ${t.money} je Saison.`,
    average: (t: Trial, day: string, within: number) =>
      `Am mittleren Tag des Frosts aufhören, etwa am ${day}: ${repeated(t.near)} binnen ${countedDative(within, 'Tag')} davor, ${repeated(t.early)} früher, ${repeated(t.late)} Frost zuerst${rest(t)}; ${t.money} je Saison.`,
    foresight: (value: string) => `Wer den Tag gekannt hätte, hätte ${value} eingenommen.`,
    years: 'Jahr für Jahr',
    columns: { season: 'Saison ab', stop: 'Aufgehört', frost: 'Frost', money: 'Eingenommen' },
    noFrost: 'keiner',
  },
};

type Trial = { n: number; near: number; early: number; late: number; money: string };
const rest = ({ n, near, early, late }: Trial) =>
  n - near - early - late > 0
    ? `; ${repeated(n - near - early - late)} kam bis zur Wintermitte keiner`
    : '';

/** What keeps the store from keeping things, in a sentence and what to do about it. */
// What crops, places and pickings earn.

type WorthMoney = { readonly money: string; readonly wage: number };
type WorthRangeSaid = {
  readonly n: number;
  readonly ratio: number;
  readonly low: number | null;
  readonly high: number | null;
};
/** All take "im": `im Frühjahr`. */
const yearSeasonNames: Readonly<Record<YearSeason, string>> = {
  winter: 'Winter',
  spring: 'Frühjahr',
  summer: 'Sommer',
  autumn: 'Herbst',
};
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
/** An amount of money with as many digits as it bears: 0.05, 8.2, 24. */
const amountDigits = (value: number) =>
  value === 0 || Math.abs(value) >= 10 ? 0 : Math.abs(value) < 1 ? 2 : 1;
const moneyNumber = (value: number, digits = amountDigits(value)) => number(value, digits);
const moneySaid = (value: number, currency: string) => `${moneyNumber(value)}${HARD}${currency}`;
/** `zwischen 17 und 24 EUR`; of one or two without a range: `etwa 20 EUR`. */
const rangeSaid = ({ ratio, low, high }: WorthRangeSaid, currency: string) => {
  if (low === null || high === null) return `etwa ${moneySaid(ratio, currency)}`;
  const digits = Math.min(amountDigits(low), amountDigits(high));
  const [a, b] = [number(low, digits), number(high, digits)];
  return a === b ? `etwa ${a}${HARD}${currency}` : `zwischen ${a} und ${b}${HARD}${currency}`;
};
const batchWord = (of: 'batches' | 'pickings') => (of === 'batches' ? 'Satz' : 'Pflückgang');
const ofBatches = (n: number, of: 'batches' | 'pickings') => counted(n, batchWord(of));
/** After "aus", "von": `3 Sätzen`. */
const ofBatchesDative = (n: number, of: 'batches' | 'pickings') => countedDative(n, batchWord(of));

/** `Basilikum in Haus 1`, `Basilikum, gesät im Frühjahr`, `Gepflückt im Frühjahr`. */
export function worthGroupName(group: {
  readonly of: 'batches' | 'pickings';
  readonly crop: string | null;
  readonly place: string | null;
  readonly season: YearSeason | null;
}): string {
  const { of, crop, place, season } = group;
  const when = season === null ? null : `im ${yearSeasonNames[season]}`;
  const done = of === 'batches' ? 'gesät' : 'gepflückt';
  if (crop !== null && place !== null) return `${crop} ${inPlace(place)}`;
  if (crop !== null && when !== null) return `${crop}, ${done} ${when}`;
  if (crop !== null) return of === 'batches' ? crop : `${crop}, Pflücken`;
  if (place !== null) return of === 'batches' ? place : `${place}, Pflücken`;
  return `${capital(done)} ${when ?? `(${notKnown})`}`;
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
    leftOut === 0 ? '' : ` ${ofBatches(leftOut, of)} ausgelassen: etwas ist nicht bekannt.`;
  const more =
    moreNeeded === null
      ? ''
      : ofBatches(moreNeeded, of).replace(' ', moreNeeded === 1 ? ' weiterer ' : ' weitere ');
  if (perHour === null || n < 3 || verdict === 'cannot-tell') {
    if (perHour === null || perHour.low === null)
      return `${name}: noch nicht zu sagen (${ofBatches(n, of)} ganz bekannt), nötig mindestens ${more}.${out}`;
    const hope =
      moreNeeded === null
        ? 'Es liegt zu nahe am Stundenlohn, als dass irgendeine Zahl davon es zeigen könnte.'
        : `Etwa ${more} ${moreNeeded === 1 ? 'kann' : 'können'} es zeigen.`;
    return `${name}: noch nicht zu sagen, ${rangeSaid(perHour, currency)} je Stunde aus ${ofBatchesDative(n, of)}, und eine Stunde soll ${moneySaid(wage, currency)} bringen. ${hope}${out}`;
  }
  const said = `${rangeSaid(perHour, currency)} je Stunde aus ${ofBatchesDative(n, of)}`;
  return verdict === 'pays'
    ? `${name}: lohnt sich, ${said}.${out}`
    : `${name}: lohnt sich nicht, ${said}, und eine Stunde soll ${moneySaid(wage, currency)} bringen.${out}`;
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
      : ` Eine Stunde daran bringt ${rangeSaid(perHour, currency)}; sie soll ${moneySaid(wage, currency)} bringen.`;
  const now =
    price === null
      ? ''
      : ` Laut Betriebsdatei erzielt es ${moneySaid(perWeight(price), currency)}.`;
  return [
    {
      'go-on': `${name}: weitermachen.${hours}`,
      stop: `${name}: nicht mehr ${of === 'batches' ? 'anbauen' : 'pflücken'}, oder Preis, Arbeit oder Ausfälle ändern.${hours}`,
      'cannot-tell': `${name}: ob aufzuhören ist, lässt sich noch nicht sagen.${hours}`,
    }[answer],
    ...(priceToPay === null
      ? []
      : [
          `Preis, der die Stunden bezahlt: ${rangeSaid(ofWeight(priceToPay), currency)} je ${kilogramWord()}.${now}`,
        ]),
    ...(of === 'pickings'
      ? ['Was Pflanzen und Pflegen des Beets kostet, ist nicht darin: das fällt in jedem Fall an.']
      : instead === null
        ? ['Noch keine andere Kultur hat drei Sätze, die zeigen, was der Platz tragen könnte.']
        : [
            `Je Schale und Tag bringt es ${perTrayDay === null ? notKnown : rangeSaid(perTrayDay, currency)}; ${instead.name} bringt ${rangeSaid(instead.perTrayDay, currency)} aus ${ofBatchesDative(instead.perTrayDay.n, 'batches')}${
              {
                more: ': mehr.',
                less: ': weniger.',
                'cannot-tell': '. Was davon mehr ist, lässt sich noch nicht sagen.',
              }[instead.brings]
            }`,
          ]),
  ];
}

const adviceSaid: Readonly<Record<string, string>> = {
  wait: 'es ist nicht die Zeit zum Ausputzen',
  'pick-on': 'weiterpflücken',
  'pick-last': 'das Reife pflücken, dann aufhören',
  clean: 'zuerst ausputzen, dann weiterpflücken',
  'clear-out': 'aufhören und ausputzen',
  'cut-back': 'zurückschneiden',
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
  const where = `${name} ${inPlace(placeName)}`;
  const four = Math.max(0, 4 - (pickings - leftOut));
  const kgHour = (value: number) => withUnit(value, 'kg');
  const first =
    perHour === null
      ? `${where}: noch nicht zu sagen, ob weiterzupflücken ist${four > 0 ? `: nötig ${four === 1 ? 'ist' : 'sind'} ${several(four, 'weiterer Pflückgang', 'weitere Pflückgänge')} mit Gewicht, Ausfall und Minuten` : ''}.`
      : {
          pays: `${where}: weiterpflücken. Der Pflückgang am ${shortDay(next)} bezahlt seine Stunden.`,
          'does-not-pay': `${where}: nicht mehr pflücken. Der Pflückgang am ${shortDay(next)} würde seine Stunden nicht bezahlen.`,
          'cannot-tell': `${where}: ob der Pflückgang am ${shortDay(next)} seine Stunden bezahlt, lässt sich nicht sagen.`,
        }[verdict];
  return [
    first,
    ...(speed === null || perHour === null
      ? []
      : [
          `Voraussichtlich bringt er zwischen ${bareWeight(speed.low)} und ${kgHour(speed.high)} je Stunde, ${rangeSaid({ n: 4, ratio: perHour.expected, low: perHour.low, high: perHour.high }, currency)}.`,
        ]),
    ...(asked.breakEvenSpeed === null || perKilogram === null
      ? []
      : [
          `Unter ${kgHour(asked.breakEvenSpeed)} je Stunde lohnt er sich nicht: von einem ${kilogramWord()} bleiben ${moneySaid(perWeight(perKilogram), currency)}, eine Stunde soll ${moneySaid(wage, currency)} bringen.`,
        ]),
    ...(leftOut === 0
      ? []
      : [
          `${leftOut} von ${ofBatchesDative(pickings, 'pickings')} ausgelassen, nicht bekannt: ${listed(missing.map((gap) => worthGapNames[gap]))}.`,
        ]),
    ...(planner === null
      ? []
      : [
          fullStop(
            `Der Planer des Beets: ${adviceSaid[planner.advice] ?? planner.advice}, am besten bis zum ${shortDay(planner.best)}${planner.survives === null ? '' : `; mit ${chance(planner.survives)} Wahrscheinlichkeit nimmt vor dem ${shortDay(next)} kein Frost die Früchte`}`,
          ),
        ]),
  ];
}

/** What is not known: follows a colon. */
const worthGapNames: Readonly<Record<WorthGap, string>> = {
  lost: 'was aussortiert wurde',
  price: 'ein Preis',
  seed: 'Saatgutkosten',
  other: 'andere Kosten',
  sowing: 'Minuten zum Säen',
  tending: 'Minuten zum Pflegen',
  moving: 'Minuten zum Umstellen',
  cutting: 'Minuten zum Schneiden',
  packing: 'Minuten zum Packen',
  minutes: 'Minuten',
};
export const worthUnitWords = (missing: readonly WorthGap[]): string =>
  missing.length === 0 ? '' : `Nicht bekannt: ${listed(missing.map((gap) => worthGapNames[gap]))}.`;

/** How money is counted, said once. */
export const worthHow = ({ lots }: { readonly lots: boolean }): string[] => [
  'Ein Satz zählt, sobald er beendet ist, einer ohne Ertrag wie jeder andere. Einer, von dem etwas nicht bekannt ist, wird ausgelassen und nie als null gerechnet.',
  'Der Verdienst ist das Verkaufte mal sein Preis, weniger Saatgut und andere Kosten, vor jedem Stundenlohn. Die Stunden sind die aufgeschriebenen, sonst die der Betriebsdatei je Schale, Woche oder Kilogramm.',
  'Verkauft ist, was geschnitten wurde, weniger was aussortiert wurde.',
  lots
    ? 'Was aus dem Lager weggeworfen wurde, ist auch abgezogen: Posten nennen keinen Satz, darum trägt alles, was in einer Saison von einer Kultur geschnitten wurde, den gleichen Anteil. Was vorher aussortiert wurde, ist in keinem Posten, darum wird nichts doppelt abgezogen.'
    : 'Noch kein Posten dieser Kulturen hat das Lager verlassen, darum wird für das Lager nichts abgezogen.',
  'Ein Pflückgang trägt weder Saatgut noch Platz: er zeigt, ob das Pflücken seine Stunden bezahlt, nicht ob das Beet es tut.',
  'Ein Satz steht für den Platz, an dem er am längsten stand, und für die Jahreszeit, in der er gesät wurde. Schalen einer Aussaat sind ein Satz, wohin sie auch getragen wurden.',
  'Spannen gelten in 8 von 10 Fällen, wenn es mit den Sätzen weitergeht wie bisher. Mit weniger als etwa zehn sind sie grob.',
];

const worthScreens = {
  title: 'Was es bringt',
  lead: 'Was eine Stunde, eine Schale und ein Tag Platz gebracht haben, nach den Einträgen.',
  empty:
    'Noch lässt sich nichts sagen. Einzutragen sind von jedem Satz, was gesät, geschnitten und aussortiert wurde, und die Minuten jeder Arbeit; von jedem Pflückgang das Gewicht, was aussortiert wurde, und die Minuten. Drei Sätze geben die erste Antwort.',
  growing: (n: number) =>
    `${several(n, 'Satz wächst', 'Sätze wachsen')} noch: gezählt, wenn beendet.`,
  toBatches: 'Sätze',
  toPicks: 'Pflückgänge',
  answers: 'Kurz gesagt',
  stops: 'Weitermachen oder aufhören',
  pickOns: 'Weiterpflücken oder nicht',
  noPickOn: 'In dieser Saison ist noch nichts gepflückt.',
  picture: 'Dasselbe als Bild',
  per: 'Je',
  perHour: 'Stunde',
  perTray: 'Schale',
  perTrayDay: 'Schale und Tag',
  by: 'Nach',
  bys: { crop: 'Kultur', place: 'Platz', season: 'Jahreszeit', 'crop-place': 'Kultur und Platz' },
  wageLine: (wage: string) => `Stundenlohn ${wage}`,
  noneToDraw: 'Hier gibt es keine Zahlen zu zeichnen.',
  pictureLabel: (by: string, per: string, currency: string) =>
    `Verdienst in ${currency} je ${per}, nach ${by}`,
  key: 'Punkt: bisher verdient. Linie: in 8 von 10 Fällen dazwischen. Ein Ring ohne Linie: weniger als drei, darum keine Spanne. Eckige Punkte sind Pflückgänge.',
  wageKey: 'Gestrichelt: was eine Stunde bringen soll.',
  columns: {
    name: 'Was',
    n: 'Sätze oder Pflückgänge',
    ratio: 'Verdienst',
    low: 'Von',
    high: 'Bis',
    verdict: 'Antwort',
  },
  verdicts: {
    pays: 'lohnt sich',
    'does-not-pay': 'lohnt sich nicht',
    'cannot-tell': 'nicht zu sagen',
  },
  groupTitle: 'Zahlen je Kultur und Platz',
  groupColumns: {
    name: 'Was',
    n: 'Gezählt von',
    trays: 'Schalen',
    hours: 'Stunden',
    get kg() {
      return `Schnitt ${weightUnit()}`;
    },
    lost: 'Ausfall %',
    get perTrayKg() {
      return `${weightUnit()} je Schale`;
    },
    earned: 'Verdienst',
    get breakEven() {
      return `Lohnt ab, je ${weightUnit()}`;
    },
  },
  countedOf: (n: number, all: number) => `${n} von ${all}`,
  units: 'Satz für Satz',
  showAll: (n: number) => `Alle ${n} zeigen`,
  unitColumns: {
    name: 'Was',
    when: 'Beendet',
    get kg() {
      return `Schnitt ${weightUnit()}`;
    },
    get lost() {
      return `Ausfall ${weightUnit()}`;
    },
    price: 'Preis',
    seed: 'Saatgut',
    other: 'Anderes',
    minutes: 'Minuten',
    earned: 'Verdienst',
    perHour: 'Je Stunde',
  },
  unitName: (name: string, place: string) => `${name}, ${place}`,
  fill: 'Ergänzen',
  moreVague: (n: number) => `${n} weitere mit fehlenden Angaben`,
  fillWhat: (name: string, day: string) => `Ergänzen: ${name}, ${day}`,
  froms: {
    written: 'eingetragen',
    'farm-file': 'aus der Betriebsdatei',
    both: 'teilweise aus der Betriebsdatei',
    lots: 'aus weggeworfenen Posten',
    'not-needed': 'trifft nicht zu',
    unknown: 'nicht bekannt',
  },
  marks: {
    written: '',
    'farm-file': 'b',
    both: 't',
    lots: 'p',
    'not-needed': '',
    unknown: '',
  },
  marksKey: 'b: aus der Betriebsdatei. t: teilweise. Alles andere ist eingetragen.',
  how: 'Wie gerechnet wird',
  amount: moneyNumber,
  amountIn: moneySaid,
  range: rangeSaid,
};

const pickScreens = {
  title: 'Pflückgänge',
  enter: 'Pflückgang eintragen',
  where: 'Wo',
  elsewhere: 'Anderswo, oder eine andere Kultur',
  place: 'Platz',
  crop: 'Kultur',
  get weight() {
    return `Gepflückt, in ${weightUnit()}`;
  },
  lastWeights: 'Gewichte vom letzten Mal',
  minutes: 'Minuten, mit Weg und Sortieren',
  notTold: 'Nicht angegeben',
  min: (n: number) => withUnit(n, 'min', 0),
  get lost() {
    return `Aussortiert, in ${weightUnit()}`;
  },
  nothing: 'Nichts',
  share: (percent: number, kg: number) => `${percent}${HARD}%: ${kilograms(kg)}`,
  lostOther: 'Anderes Gewicht',
  more: 'Mehr dazu',
  walk: 'Davon Weg, in Minuten',
  pickers: 'Pflückende',
  pickersHint: 'Minuten sind die jeder einzelnen Person.',
  price: (currency: string) => `Preis je ${kilogramWord()}, ${currency}`,
  priceHint: 'Leer gelassen gilt der aus der Betriebsdatei.',
  at: 'Gepflückt am',
  note: 'Notiz',
  send: 'Speichern',
  stored: (kg: number, crop: string, place: string) =>
    `Gespeichert: ${kilograms(kg)} ${crop}, ${place}.`,
  corrected: 'Die Berichtigung ist gespeichert; der Verlauf behält beides.',
  list: 'Letzte Pflückgänge',
  none: 'Noch ist kein Pflückgang eingetragen.',
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
      told.lost === null ? 'aussortiert: nicht bekannt' : `aussortiert ${kilograms(told.lost)}`,
      told.minutes === null
        ? 'Minuten: nicht bekannt'
        : `${number(told.minutes, 0)}${HARD}min${told.pickers > 1 ? ` von ${told.pickers} Pflückenden` : ''}`,
      told.who === 'file' ? 'aus einer Datei' : `von ${told.who}`,
    ].join(' · '),
  fill: 'Ergänzen oder berichtigen',
  takeBack: 'Zurücknehmen',
  takenBack: 'Zurückgenommen; der Verlauf behält beides.',
  file: 'Alle als Datei (CSV)',
  worth: 'Was es bringt',
  noPlace: 'In der Betriebsdatei steht kein Platz zum Pflücken.',
};

export const storeTrouble: Readonly<
  Record<'full' | 'read-only' | 'damaged' | 'gone' | 'failing', string>
> = {
  full: 'Die Karte ist voll: neue Messwerte werden nicht behalten. Auf ihr Platz schaffen; dann macht die Zentrale von selbst weiter.',
  'read-only':
    'Auf die Karte lässt sich nichts schreiben: neue Messwerte werden nicht behalten. Eine solche Karte ist oft verschlissen. Eine andere einsetzen und die letzte Sicherung zurückspielen.',
  damaged:
    'Der Datenspeicher ist beschädigt: neue Messwerte werden nicht behalten. Die Zentrale rettet, was lesbar ist.',
  gone: 'Die Datei des Datenspeichers ist weg: neue Messwerte werden nicht behalten. Die Zentrale schreibt sie neu.',
  failing:
    'Die Karte antwortet nicht richtig: neue Messwerte werden nicht behalten. Eine andere Karte und die letzte Sicherung bereithalten.',
};
/** Said on the pages while it lasts, and as an alarm. */
export const storeAlarm = 'Regeln und Alarme laufen aus dem Arbeitsspeicher weiter.';
export const storeRefuses =
  'Erwartet: Platz, um das zu behalten, erhalten: eine Störung des Datenspeichers; nichts wurde gespeichert';

const megabytes = (bytes: number) =>
  bytes >= 1e9 ? `${number(bytes / 1e9)}\u00a0GB` : `${number(bytes / 1e6)}\u00a0MB`;

export const keepingWords = {
  title: 'Aufbewahrung',
  notKept: 'Jetzt wird nichts behalten',
  goesOn: storeAlarm,
  size: (bytes: number, free: number) =>
    `Der Datenspeicher belegt ${megabytes(bytes)}; ${megabytes(free)} sind auf seiner Karte frei.`,
  raw: (days: number, since: string | null) =>
    `Einzelne Messwerte bleiben ${counted(days, 'Tag')} erhalten${since === null ? '' : `, jetzt ab ${since}`}. Stunden, Tage und die Aufzeichnung bleiben für immer.`,
  noBackup:
    'Kein Ordner für Sicherungen ist angegeben. Ohne ihn geht mit einer kaputten Karte alles verloren.',
  backup: (old: number) => `Die letzte gute Sicherung entstand ${age(old)}.`,
  backupNone: 'Noch ist keine Sicherung gemacht.',
  backupFault: (sentence: string) => `Die letzte Sicherung ist misslungen: ${sentence}`,
  backupAbsent: 'Der Ordner für Sicherungen ist nicht da: steckt der Stick?',
  backupHere:
    'Die Sicherungen liegen auf derselben Karte wie der Datenspeicher: geht er, gehen auch sie.',
  old: 'Das ist mehr als zwei Tage her.',
  mended: (old: number, readings: number, aside: string) =>
    `Der Datenspeicher war beschädigt und wurde ${age(old)} repariert: gerettete Messwerte: ${readings}. Die beschädigte Datei bleibt als ${aside} erhalten.`,
  mendedFrom: (backup: string) => `Was nicht lesbar war, kam aus der Sicherung ${backup}.`,
  mendedLost: 'Für den Rest gab es keine Sicherung: was nicht lesbar war, ist verloren.',
  backUpNow: 'Jetzt sichern',
  backingUp: (share: number) =>
    share < 1
      ? `Eine Sicherung wird geschrieben: ${number(Math.floor(100 * share), 0)}${HARD}%…`
      : 'Die Sicherung ist geschrieben und wird geprüft…',
  backedUp: 'Die Sicherung ist fertig und geprüft.',
  backUpFailed: (sentence: string) => `Keine Sicherung: ${sentence}`,
};

// The plan of the coming weeks, in German.

/** Why some of what is wanted is in no sowing, as it follows "denn". */
const shortReasons: Readonly<Record<ShortReason, (crop: string) => string>> = {
  'no-past-batches': (crop) =>
    `die Wachstumsdauer von ${crop} ist nicht bekannt: kein Satz ist beendet, und die Betriebsdatei nennt keine Tage`,
  'no-weight': (crop) => `was eine Schale ${crop} bringt, ist nicht bekannt`,
  'too-late': (crop) => `es ist zu spät: eine Aussaat von ${crop} heute würde nicht mehr erntereif`,
  'no-room': () => 'jeder passende Platz ist in diesen Tagen voll',
  'beyond-the-days': () => 'es liegt hinter den geplanten Wochen',
  'no-place': () => 'für keinen Platz ist angegeben, wie viele Schalen er fasst',
  'too-cold': (crop) => `für ${crop} ist es in diesen Wochen an jedem Platz zu kalt`,
  'too-warm': (crop) => `für ${crop} ist es in diesen Wochen an jedem Platz zu warm`,
  'no-climate': () => 'noch ist nicht bekannt, wie warm die Plätze sein werden',
  little: () => 'für eine eigene Aussaat ist es zu wenig',
};
type Short = { readonly crop: string; readonly kg: number; readonly reason: ShortReason };
/** `fehlt 1 kg Basilikum`, `fehlen 2 kg Basilikum und 1 kg Radieschen` */
const lacking = (shorts: readonly Pick<Short, 'crop' | 'kg'>[]): string => {
  const amounts = shorts.map(({ kg, crop }) => `${weight(kg)} ${crop}`);
  const one = amounts.length === 1 && amounts[0]?.startsWith(`1${HARD}`);
  return `${one ? 'fehlt' : 'fehlen'} ${listed(amounts)}`;
};
export const shortWords = ({ crop, kg, reason }: Short): string =>
  `Es ${lacking([{ crop, kg }])}, denn ${shortReasons[reason](crop)}.`;

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
  const said = [`Für ${shortDayInText(one.delivery)}, etwa ${weight(one.kg)}.`];
  if (one.late) said.push('Der richtige Tag ist vorbei.');
  if (one.ready !== null) said.push(`Rechtzeitig erntereif: ${chance(one.ready)}.`);
  else if (one.batches === 0)
    said.push('Nach den Tagen der Betriebsdatei; eine Wahrscheinlichkeit ist nicht bekannt.');
  else said.push('Für eine Wahrscheinlichkeit sind zu wenige Sätze beendet.');
  if (one.second !== null && one.tooEarly !== null)
    said.push(
      fullStop(
        `Vor diesem Tag vorbei: ${chance(one.tooEarly)}. Oder zwei kleinere Aussaaten: ${one.trays - one.second.trays} an diesem Tag und ${one.second.trays} am ${shortDayInText(one.second.day)}`,
      ),
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
    const names = group.map(({ crop }) => crop);
    return `Es ${lacking(group)}, denn ${shortReasons[first.reason](listed(names))}.`;
  });
}

type DeliverySaid = {
  readonly state: 'nothing' | 'covered' | 'to-sow' | 'short';
  readonly shorts: readonly Short[];
  readonly chanceShort: number | null;
};
/** Whether a delivery is provided for. */
export function deliveryWords({ state, shorts, chanceShort }: DeliverySaid): string {
  if (state === 'nothing') return 'Nichts ist gewünscht.';
  const risk =
    chanceShort === null
      ? 'Nicht zu sagen, wie wahrscheinlich etwas fehlt: zu wenige Sätze sind beendet.'
      : `Wahrscheinlichkeit, dass etwas fehlt: ${chance(chanceShort)}.`;
  if (state === 'short') return shortsTogether(shorts).join(' ');
  return `${state === 'covered' ? 'Gedeckt durch das, was wächst und lagert.' : 'Gedeckt, sobald gesät ist.'} ${risk}`;
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
    ? `${weight(source.kg)} gelagert ${inPlace(source.place)}`
    : `${weight(source.kg)} im Wachstum ${inPlace(source.place)}${source.day === null ? '' : `, erntereif etwa ${shortDayInText(source.day)}`}`;

/** How full a place will be. */
export const roomWords = (free: readonly number[], capacity: number): string => {
  const least = Math.min(...free.slice(0, 14));
  const now = free[0] ?? 0;
  return `Platz für ${now} von ${trayCount(capacity)} ist frei${least === now ? '' : `, in den nächsten zwei Wochen mindestens für ${least}`}.`;
};

/** As it follows "Nicht zu planen ohne": in the accusative. */
export const planMissing = {
  deliveries: 'Liefertage in der Betriebsdatei (deliveries)',
  wants: 'für die Liefertage gewünschte Gewichte (wants), in der Betriebsdatei oder unten',
  places: 'ein Folienhaus mit Platz für Schalen (capacity) in der Betriebsdatei',
};

type Grown = {
  readonly crop: string;
  readonly trays: number;
  readonly place: string;
  readonly kg: number | null;
};
/** Events of the calendar. */
export const calendarWords = {
  name: (farm: string) => `${farm}: Aussaat und Ernte`,
  about:
    'Was laut Plan zu säen ist, was voraussichtlich erntereif wird, und die Liefertage. Er entsteht neu, während die Sätze wachsen.',
  sow: (one: Omit<SowingSaid, 'second' | 'tooEarly' | 'batches'>) => ({
    summary: `${counted(one.trays, 'Schale')} ${one.crop} ${inPlace(one.place)} säen`,
    description: [
      `Für ${dayInText(one.delivery)}: etwa ${weight(one.kg)}.`,
      ...(one.late ? ['Der richtige Tag ist vorbei.'] : []),
      ...(one.ready === null ? [] : [`Rechtzeitig erntereif: ${chance(one.ready)}.`]),
    ].join(' '),
  }),
  ready: ({ crop, trays, place, kg }: Grown) => ({
    summary: `${crop} etwa jetzt erntereif: ${counted(trays, 'Schale')} ${inPlace(place)}`,
    description: `${kg === null ? '' : `Etwa ${weight(kg)}. `}In acht von zehn Fällen wird in diesen Tagen erntereif, was hier steht.`,
  }),
  harvest: ({ crop, trays, place, kg, delivery }: Grown & { readonly delivery: string }) => ({
    summary: `${crop} ${inPlace(place)} ernten, für ${shortDayInText(delivery)}`,
    description: `${several(trays, 'Schale steht', 'Schalen stehen')} dort; davon gewünscht: ${weight(kg ?? 0)}.`,
  }),
  delivery: (
    wants: readonly { readonly name: string; readonly kg: number }[],
    shorts: readonly Short[],
  ) => ({
    summary:
      wants.length === 0
        ? 'Liefertag'
        : `Lieferung: ${wants.map(({ name, kg }) => `${weight(kg)} ${name}`).join(', ')}`,
    description: shorts.map(shortWords).join(' '),
  }),
  open: 'Ein Kalenderprogramm folgt nur dieser Adresse: wer sie hat, kann den Plan lesen, und nicht mehr. Erneuern, wenn jemand sie nicht mehr haben soll.',
  plain:
    'Die Zentrale spricht ohne TLS: jeder im Netz des Betriebs kann die Adresse und den Plan unterwegs mitlesen. Außerhalb dieses Netzes antwortet die Adresse nicht, solange das niemand einrichtet.',
  closed: 'Noch kann kein Kalenderprogramm den Plan lesen.',
};

/** Lines of the week sheet. */
export const weekWords = {
  sow: (one: { crop: string; trays: number; place: string; delivery: string; late: boolean }) =>
    `${counted(one.trays, 'Schale')} ${one.crop} ${inPlace(one.place)}, für ${shortDayInText(one.delivery)}${one.late ? ' (spät)' : ''}`,
  harvest: (one: { crop: string; trays: number; place: string; delivery: string; kg: number }) =>
    `${weight(one.kg)} ${one.crop} (${counted(one.trays, 'Schale')}, ${one.place}), für ${shortDayInText(one.delivery)}`,
  deliver: (name: string, kg: number) => `${weight(kg)} ${name}`,
  short: (crop: string, kg: number) => `es ${lacking([{ crop, kg }])}`,
  frost: (place: string, low: number, p: number) =>
    `Nacht davor, ${place}: Tiefstwert etwa ${temperature(low)}, Frost ${chance(p)}`,
  frostAhead: (place: string, days: number, p: number) =>
    `Frost binnen ${countedDative(days, 'Tag')}, ${place}: ${chance(p)}.`,
  unsown:
    'Aussaaten und Ernten nach dem jetzigen Plan; er entsteht neu, wenn Sätze wachsen und Gewichte sich ändern.',
};

const planScreens = {
  title: 'Aussaatplan',
  weeks: (n: number) => `Die nächsten ${n} Wochen`,
  asOf: (age: string) =>
    `Erstellt ${age}. Er entsteht neu, wenn sich Sätze, Posten oder Gewichte ändern.`,
  missing: (things: readonly string[]) => `Nicht zu planen ohne ${listed(things)}.`,
  toSow: 'Zu säen',
  thisWeek: 'In den nächsten sieben Tagen',
  later: (n: number) => `Später (${counted(n, 'Aussaat')})`,
  sown: 'Gesät',
  sownOf: (what: string, place: string) => `Gesät: ${what} ${inPlace(place)}`,
  sownSaid: (what: string) => `Gespeichert: ${what}, jetzt gesät, als Satz.`,
  saidSown: {
    done: 'Laut Antwort erledigt, aber noch nicht eingetragen: eintragen, damit der Plan damit rechnet.',
    no: 'Laut Antwort wird nicht gesät: es wird nicht mehr gefragt. Die Lieferung bleibt ohne.',
  },
  sownWhy: '„Gesät“ trägt die Schalen als Satz ein, damit der Plan mit ihnen rechnet.',
  nothingNow: 'In den nächsten sieben Tagen ist nichts zu säen.',
  nothingAtAll: 'In diesen Wochen ist nichts zu säen.',
  trays: (n: number, crop: string) => `${counted(n, 'Schale')} ${crop}`,
  inPlace,
  late: 'Spät',
  day: shortDayInText,
  longDay: dayInText,
  deliveries: 'Lieferungen',
  laterDeliveries: (n: number, short: number) =>
    `Spätere Lieferungen (${n}${short === 0 ? '' : `, bei ${short} fehlt etwas`})`,
  noDeliveries: 'Keine Liefertage in diesen Wochen.',
  states: {
    nothing: 'Nichts gewünscht',
    covered: 'Gedeckt',
    'to-sow': 'Gedeckt, wenn gesät',
    short: 'Es fehlt etwas',
  },
  weight,
  where: 'Woher es kommt',
  toBeSown: (kg: number) => `${weight(kg)} noch zu säen`,
  change: 'Ändern',
  changeOf: (name: string, day: string) => `${name} am ${shortDayInText(day)} ändern`,
  none: 'Nichts',
  asUsual: (kg: number | null) => (kg === null ? 'Zurücknehmen' : `Wie üblich, ${weight(kg)}`),
  usual: (kg: number | null) =>
    kg === null ? 'nur für diesen Tag' : kg === 0 ? 'sonst nichts' : `sonst ${weight(kg)}`,
  by: (who: string) => `angegeben von ${who}`,
  get other() {
    return `Anderes Gewicht, ${weightUnit()}`;
  },
  store: 'Speichern',
  leave: 'Abbrechen',
  sending: 'Wird gesendet…',
  stored: (name: string, day: string, kg: number) =>
    `Gespeichert für ${shortDayInText(day)}: ${name}, ${kg === 0 ? 'nichts' : weight(kg)}.`,
  takenBack: (name: string, day: string) =>
    `Die Änderung für ${name} am ${shortDayInText(day)} ist zurückgenommen.`,
  notStored: (sentence: string) => `Nicht gespeichert: ${sentence}`,
  add: 'Etwas anderes ist gewünscht',
  addWhat: 'Kultur oder Mischung',
  addDay: 'Tag',
  get addKg() {
    return `Gewicht, ${weightUnit()}`;
  },
  choose: 'Auswählen…',
  work: 'Arbeit und Saatgut',
  workColumns: { week: 'Woche ab', trays: 'Schalen', minutes: 'Minuten', seed: 'Saatgut' },
  seed: (value: number, currency: string) => withUnit(value, currency, 2),
  workNote: 'Ein Strich heißt: nicht in der Betriebsdatei angegeben (minutes, seed).',
  rooms: 'Platz in den Häusern',
  chance: 'Wie sicher',
  order:
    'Die nächste Lieferung bekommt den Platz zuerst, und jede Aussaat kommt dorthin, wo sie die wenigsten Tage steht. Es ist ein Plan zum Lesen, nicht der beste von allen.',
  calendar: {
    title: 'Im eigenen Kalender',
    make: 'Adresse erstellen',
    renew: 'Neue Adresse erstellen',
    stop: 'Adresse schließen',
    renewWhy: 'Die vorige führt dann nirgendwohin.',
    once: 'Jetzt kopieren: sie wird nur dieses eine Mal gezeigt, und die Zentrale behält sie nicht im Klartext.',
    address: 'Adresse für ein Kalenderprogramm',
    copy: 'Kopieren',
    copied: 'Kopiert.',
    notCopied: 'Der Browser lässt das Kopieren nicht zu: markieren und von Hand kopieren.',
    file: 'Kalender als Datei speichern',
  },
  sheet: 'Wochenblatt',
  sheetLink: 'Wochenblatt, für Papier',
};
const weekScreens = {
  title: 'Wochenblatt',
  range: (from: string, to: string) => `${dayInText(from)} bis ${dayInText(to)}`,
  print: 'Drucken',
  before: 'Die Woche davor',
  next: 'Die Woche danach',
  now: 'Diese Woche',
  columns: {
    day: 'Tag',
    sow: 'Säen',
    harvest: 'Ernten',
    deliver: 'Liefern',
    other: 'Frost, Aufgaben',
    who: 'Wer',
    minutes: 'Minuten',
  },
  anyDay: 'Offen, an keinem Tag dieser Woche',
  asOf: (day: string, time: string) => `Stand: ${day}, ${time}.`,
  none: '–',
  day: (day: string) => shortDayInText(day),
};

// Photos beside entries.

const photoScreens = {
  add: 'Foto hinzufügen',
  another: 'Anderes Foto aufnehmen',
  taken: 'Das Foto geht mit der Notiz.',
  sending: 'Wird gesendet…',
  why: 'Zuerst wird es in diesem Browser verkleinert; dabei fällt auch weg, wo und wann es aufgenommen wurde.',
  bad: 'Dieses Bild ließ sich hier nicht lesen. Ein JPEG oder PNG versuchen.',
  of: (what: string) => `Foto: ${what}`,
  gone: 'Das Foto ist nicht auf dieser Zentrale.',
};

// Losses: the log, the strips beside the weather, and what may be said of them.

const lossLooks: Record<LossLook, string> = {
  'grey-mould': 'Grauschimmel',
  'white-down': 'Weißer Flaum',
  'stem-rot': 'Fäule am Stängel',
  wilted: 'Welk',
  frosted: 'Erfroren',
  scorched: 'Verbrannt',
  eaten: 'Fraßschaden',
  leggy: 'Vergeilt',
  other: 'Etwas anderes',
};
/** The same within a sentence: nouns keep their capital. */
const lossLooksSaid: Record<LossLook, string> = {
  'grey-mould': 'Grauschimmel',
  'white-down': 'weißer Flaum',
  'stem-rot': 'Fäule am Stängel',
  wilted: 'welk',
  frosted: 'erfroren',
  scorched: 'verbrannt',
  eaten: 'Fraßschaden',
  leggy: 'vergeilt',
  other: 'etwas anderes',
};
/** What it looks like, drawn in words; no diagnosis. */
const lossDrawings: Record<LossLook, string> = {
  'grey-mould': 'grauer Pelz, der beim Anstoßen staubt, darunter braun und weich',
  'white-down': 'weißlicher oder grauer Flaum unter dem Blatt, oben gelbe Flecken',
  'stem-rot': 'Stängel am Boden braun und dünn, die Pflanze fällt um',
  wilted: 'schlaff, ohne Flecken, Erde trocken oder durchnässt',
  frosted: 'glasig, nach kalter Nacht dunkel und schlaff',
  scorched: 'nach heißem Tag ausgebleichte oder trockene Ränder',
  eaten: 'Löcher, Bissspuren, Schleim oder Kot',
  leggy: 'lang, blass und dünn, nicht zu verkaufen',
  other: 'nichts davon',
};
const lossUnitWords = (amount: number, unit: LossUnit): string => {
  const digits = Number.isInteger(amount) ? 0 : 1;
  if (unit === 'share') return withUnit(amount, '%', digits);
  if (unit === 'kg') return kilograms(amount);
  return `${number(amount, digits)}${HARD}${amount === 1 ? 'Schale' : 'Schalen'}`;
};
type LossAmount = Pick<Loss, 'amount' | 'unit' | 'of'>;
const lossAmount = ({ amount, unit, of }: LossAmount): string =>
  `${lossUnitWords(amount, unit)}${of ? ` von ${lossUnitWords(of.amount, of.unit)}` : ''}`;

/** A loss in one line: how much of what, what it looked like, where. */
export const lossWords = (
  told: LossAmount & {
    readonly name: string;
    readonly look: LossLook | null;
    readonly lot: boolean;
  },
): string =>
  `${lossAmount(told)} ${told.name}, ${told.look === null ? `${told.lot ? 'aus einem Posten ' : ''}weggeworfen` : `${lossLooksSaid[told.look]}${told.lot ? ', aus einem Posten' : ''}`}`;

export const lossFields: Readonly<Record<string, string>> = {
  place: 'Platz',
  crop: 'Kultur',
  amount: 'Menge',
  unit: 'Einheit',
  of: 'Bestand dort',
  look: 'Aussehen',
  day: 'Tag',
  batch: 'Satz',
  note: 'Notiz',
};
export const lossLookName = (look: LossLook): string => lossLooksSaid[look];
/** An amount as it was corrected, in its unit; and a unit by itself. */
export const lossAmountWords = (amount: number, unit: LossUnit): string =>
  lossUnitWords(amount, unit);
export const lossUnitName = (unit: LossUnit): string =>
  ({ trays: 'Schalen', kg: weightUnit(), share: '%' })[unit];
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
      return `Eingetragen: ${facts.words}${facts.photo ? ', mit Foto' : ''}.`;
    case 'corrected':
      return `Berichtigt${facts.why ? ` (${facts.why})` : ''}: ${listed(facts.set)}.`;
    case 'photo':
      return facts.added
        ? 'Ein Foto wurde hinzugefügt.'
        : 'Das Foto wurde zurückgezogen und gelöscht.';
    case 'undone':
      return `Zurückgenommen: ${facts.words ?? 'ein Eintrag'}`;
  }
}
export const sameLossWords = (kg: number, crop: string, room: string, day: string): string =>
  `${withUnit(kg, 'kg')} ${crop}, am ${day} ${inPlace(room)} aus einem Posten weggeworfen`;

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
          ? 'kein Grenzwert angegeben'
          : `${hours(told.hotHours)} mit einem Messwert über dem Grenzwert`,
      ]
    : [
        told.wetHours === null ? 'Nassstunden nicht bekannt' : `${hours(told.wetHours)} nass`,
        told.hotHours === null ? 'keine Hitzegrenze angegeben' : `${hours(told.hotHours)} zu heiß`,
        told.coldHours === null
          ? 'keine Kältegrenze angegeben'
          : `${hours(told.coldHours)} zu kalt`,
      ];
  const gap = told.unknownHours < 0.5 ? '' : `, ${hours(told.unknownHours)} nicht bekannt`;
  const lost =
    told.losses.length === 0 ? 'Kein Ausfall eingetragen.' : `Ausfall: ${told.losses.join('; ')}.`;
  return `${told.name}, ${counted(told.days, 'Tag')}: ${facts.join(', ')}${gap}. ${lost}`;
}

const exposureLabels: Record<ExposureTerm, string> = {
  'wet-spell': 'Lange Nasszeit',
  'wet-hours': 'Viele Nassstunden',
  'infection-index': 'Grauschimmelwetter',
  'hot-hours': 'Zu heiß',
  'cold-hours': 'Zu kalt',
  'cool-room-hours': 'Zu warmer Kühlraum',
};
export const exposureLabel = (what: ExposureTerm): string => exposureLabels[what];
/** Of a case that had it, behind its plural: `Wochen nach einer langen Nasszeit`. */
const exposedCases: Record<ExposureTerm, (cases: string) => string> = {
  'wet-spell': (cases) => `${cases} nach einer langen Nasszeit`,
  'wet-hours': (cases) => `${cases} nach vielen Nassstunden`,
  'infection-index': (cases) => `${cases} nach Grauschimmelwetter`,
  'hot-hours': (cases) => `${cases} nach Hitze`,
  'cold-hours': (cases) => `${cases} nach Kälte`,
  'cool-room-hours': (cases) => `zu warm gelagerten ${cases}`,
};
const exposureMeant: Record<ExposureTerm, (limit: number) => string> = {
  'wet-spell': (limit) =>
    `eine Nasszeit von mehr als ${withUnit(limit, 'h')} in den sieben Tagen davor: bei der dafür günstigsten Temperatur gibt es dann ein Infektionsereignis von Grauschimmel`,
  'wet-hours': (limit) =>
    `mehr als ${withUnit(limit, 'h', 0)} mit nassen Blättern in den sieben Tagen davor, 7 am Tag`,
  'infection-index': (limit) =>
    `ein Grauschimmel-Index (das Modell gilt für Erdbeerblüten) von mehr als ${number(limit)} in den sieben Tagen davor`,
  'hot-hours': (limit) =>
    `mehr als ${withUnit(limit, 'h', 0)} mit einem Messwert über der Hitzegrenze der Kultur in den sieben Tagen davor`,
  'cold-hours': (limit) =>
    `mehr als ${withUnit(limit, 'h', 0)} mit einem Messwert unter dem, was die Kultur verträgt, in den sieben Tagen davor`,
  'cool-room-hours': (limit) =>
    `mehr als ${withUnit(limit, 'h', 0)} über dem Grenzwert des Raums, während der Posten dort lag`,
};
const familyNames: Record<ComparedUnit, string> = {
  'place-week': 'Folienhäuser, Woche für Woche',
  'patch-week': 'Beete, Woche für Woche',
  batch: 'Sätze',
  lot: 'Posten im Kühlraum',
};
export const familyName = (unit: ComparedUnit): string => familyNames[unit];
const caseNames: Record<ComparedUnit, readonly [one: string, many: string, dative: string]> = {
  'place-week': ['Woche', 'Wochen', 'Wochen'],
  'patch-week': ['Woche', 'Wochen', 'Wochen'],
  batch: ['Satz', 'Sätze', 'Sätzen'],
  lot: ['Posten', 'Posten', 'Posten'],
};

/** How many cases there are, and why some say nothing. */
export function familyWords(
  unit: ComparedUnit,
  count: { readonly [basis in 'entered' | 'said-none' | 'no-entry' | 'not-kept']: number },
): string {
  const [one, many] = caseNames[unit];
  const all = count.entered + count['said-none'] + count['no-entry'] + count['not-kept'];
  const ended = several(all, `beendeter ${one}`, `beendete ${many}`);
  if (unit === 'lot') return `${ended}: von ${count.entered} wurde etwas weggeworfen.`;
  const parts = [
    `${count.entered} mit eingetragenem Ausfall`,
    `${count['said-none']} laut Angabe ohne Ausfall`,
    `${count['no-entry']} ohne Eintrag, während die Ausfälle eingetragen wurden`,
  ];
  const kept = `${unit === 'batch' ? ended : `${several(all, one, many)} einzelner Plätze`}: ${parts.join(', ')}.`;
  return count['not-kept'] === 0
    ? kept
    : `${kept} ${count['not-kept']} ${count['not-kept'] === 1 ? 'ist' : 'sind'} ausgelassen, weil damals niemand Ausfälle eintrug: kein Eintrag heißt nicht kein Ausfall.`;
}

/** `in etwa 3 von 100 Fällen`; never "nie". */
export function chanceTimes(p: number): string {
  if (p < 0.001) return 'in weniger als 1 von 1000 Fällen';
  if (p < 0.0095) return `in etwa ${Math.round(p * 1000)} von 1000 Fällen`;
  if (p > 0.995) return 'fast immer';
  return `in etwa ${Math.round(p * 100)} von 100 Fällen`;
}

export type ComparisonTold = Omit<LossComparison, 'words' | 'cases' | 'label'> & {
  readonly of: ComparedUnit;
  readonly tried: number;
};
/** The finding, how sure it is, and what it is not. */
export function comparisonWords(told: ComparisonTold): string[] {
  const { what, of, exposedLost, exposedKept, otherLost, otherKept, tried } = told;
  const [one, many, dative] = caseNames[of];
  const exposed = exposedLost + exposedKept;
  const others = otherLost + otherKept;
  const split = `Bei ${exposedLost} von ${exposed} ${exposedCases[what](dative)} ging mehr als ein Zehntel verloren, bei ${otherLost} von ${others} anderen`;
  const tail = 'die Ursache zeigt das nicht.';
  const first =
    told.chance === null
      ? `${split}. Zu wenige für einen Vergleich: nur gezählt; ${tail}`
      : `${split}; allein durch Zufall käme das ${chanceTimes(told.chance)} vor; ${tail}`;
  const meant = `Gemeint: ${exposureMeant[what](told.limit)}.`;
  const percent = (share: number) => number(share * 100, 0);
  const range = (span: { least: number; most: number }) =>
    `${percent(span.least)} bis ${withUnit(span.most * 100, '%', 0)}`;
  const care =
    told.adjusted === null || tried < 2
      ? `Angestellt ${tried === 1 ? 'wurde ein Vergleich' : `wurden ${tried} Vergleiche`}.`
      : `${tried} Vergleiche wurden angestellt; das eingerechnet ${chanceTimes(told.adjusted)}.`;
  const { difference } = told;
  const spread =
    told.exposedShare && told.otherShare && difference
      ? `Der wahre Anteil, der so viel verliert, kann bei den ersten ${range(told.exposedShare)} sein und bei den anderen ${range(told.otherShare)}; der Unterschied ${percent(difference.low)} bis ${percent(difference.high)} Punkte (Spannen zu 95${HARD}%${(told.chance ?? 0) > (told.p ?? 0) ? ', als hätten Plätze in derselben Woche nichts gemeinsam: sie sind zu eng' : ''}).`
      : null;
  const verdicts = {
    'counts-only': null,
    'worth-a-trial': 'Einen eigenen Versuch wert.',
    'a-hint': 'Ein Hinweis, mehr nicht.',
    'nothing-to-see': 'Noch nichts zu sehen, was nicht dasselbe ist wie keine Wirkung.',
  };
  const rival =
    told.rival === null
      ? of === 'lot'
        ? 'Posten, die dort zu warm lagen, können auch die der großen Erntetage oder die schwer verkäuflichen gewesen sein.'
        : 'Aufeinanderfolgende Wochen gleichen sich: auch eine Jahreszeit, ein Schädling oder eine Partie Saatgut kann dahinterstehen.'
      : `Auf fast dieselben ${many} trifft auch dies zu: „${exposureLabels[told.rival]}“. Welches von beiden es war, lässt sich daraus nicht sagen.`;
  const left =
    told.leftOut === 0
      ? null
      : `${several(told.leftOut, `${one} ist`, `${many} sind`)} ausgelassen: was verloren ging oder was vorausging, ist nicht genau genug bekannt.`;
  const needed =
    told.needed === null
      ? null
      : `Es braucht noch mindestens ${told.needed.more} ${told.needed.more === 1 ? one : many}, bevor sich überhaupt etwas zeigen kann (${told.needed.exposed} damit, ${told.needed.others} ohne).`;
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
  `${from} bis ${to}, ${several(weeks, 'ganze Woche', 'ganze Wochen')}. ${tried === 0 ? 'Noch ließ sich nichts vergleichen.' : `${several(tried, 'Vergleich wurde', 'Vergleiche wurden')} angestellt, und alle sind hier zu sehen.`}`,
  `Jeder fragt, ob mehr als ${limit === 0.1 ? 'ein Zehntel' : withUnit(limit * 100, '%', 0)} verloren ging, nach sieben Tagen mit einer Bedingung oder ohne sie. Die Grenzen stehen vorher fest und sind für jeden Betrieb dieselben.`,
  'Was zusammen auftritt, muss nicht Ursache und Wirkung sein. Was einen Versuch wert ist, an einem Teil versuchen und einen anderen lassen, wie er ist.',
];

const lossScreens = {
  title: 'Ausfälle',
  quickTitle: 'Ausfall eintragen',
  where: 'Wo',
  which: 'Welche Kultur',
  standing: 'steht dort',
  otherCrop: 'Andere Kultur',
  howMuch: 'Wie viel davon',
  looks: lossLooks,
  thrownOut: 'Weggeworfen',
  drawings: lossDrawings,
  looked: 'Wie es aussah: das speichert',
  lookedWhat: 'Wie es aussah',
  amountButton: (amount: number, unit: LossUnit): string => {
    const names: Readonly<Record<number, string>> = {
      5: 'Ein Zwanzigstel',
      10: 'Ein Zehntel',
      25: 'Ein Viertel',
      50: 'Die Hälfte',
      100: 'Alles',
    };
    const named = unit === 'share' ? names[amount] : undefined;
    return named ?? lossUnitWords(amount, unit);
  },
  ofTrays: (trays: number) => `von ${lossUnitWords(trays, 'trays')} dort`,
  exactly: 'Andere Menge',
  amount: 'Menge',
  unit: 'In',
  units: {
    get kg() {
      return weightUnit();
    },
    trays: 'Schalen',
    share: '% von dem, was dort stand',
  },
  ofAmount: 'Von wie viel, falls bekannt',
  whenSeen: 'Gesehen am',
  todaySeen: 'Heute',
  yesterday: 'Gestern',
  batch: 'Satz, falls er einen Namen hat',
  note: 'Notiz',
  more: 'Mehr dazu',
  chooseAmount: 'Zuerst angeben, wie viel.',
  sending: 'Wird gesendet…',
  stored: (what: string, place: string) => `Gespeichert: ${what}, ${place}.`,
  undo: 'Rückgängig',
  undone: 'Zurückgenommen; der Verlauf behält beides.',
  failed: (sentence: string) => `Nicht gespeichert: ${sentence}`,
  another: 'Es ist ein anderer Ausfall: auch speichern',
  photoSent: 'Das Foto ist gespeichert.',
  withdrawPhoto: 'Foto löschen',
  photoWithdrawn: 'Das Foto ist gelöscht; der Verlauf behält, dass es eines gab.',
  quiet: 'Kein Ausfall',
  quietWhy: 'Eine Woche ohne Eintrag sagt nichts, solange niemand angibt, dass nichts ausfiel.',
  quietAll: (week: string) => `Sonst kein Ausfall in der Woche vom ${week}`,
  quietAllSaid: (week: string) => `Angegeben für die Woche vom ${week}: sonst kein Ausfall.`,
  quietSaid: (place: string, week: string) =>
    `Gespeichert: kein Ausfall ${inPlace(place)} in dieser Woche (vom ${week}).`,
  quietPlaces: (places: string) => `Ohne Eintrag in dieser Woche: ${places}.`,
  quietNone:
    'Für jeden Platz gibt es in dieser Woche einen Eintrag oder die Angabe, dass nichts ausfiel.',
  picture: 'Ausfälle und was ihnen vorausging',
  weeks: 'Gezeigte Wochen',
  weeksOption: (weeks: number) => counted(weeks, 'Woche'),
  key: 'Legende',
  keys: {
    wet: 'Nassstunden des Tages, von unten nach oben',
    hot: 'ein Tag mit zu heißen Stunden',
    cold: 'ein Tag mit zu kalten Stunden',
    unknown: 'ein Tag mit mehr als 6 nicht bekannten Stunden oder ohne gemessene Luftfeuchte',
    quiet: 'eine Woche ohne Ausfall, wie angegeben',
    pin: 'ein Ausfall; Antippen öffnet seinen Eintrag',
  },
  coolKey: 'Im Kühlraum heißt „zu heiß“: über seinem Grenzwert.',
  stripTitle: (name: string, from: string, to: string) => `${name}, ${from} bis ${to}`,
  pin: (day: string, what: readonly string[]) => `Ausfälle ${day}: ${what.join('; ')}`,
  inWords: 'Diese Streifen in Worten und Zahlen',
  columns: {
    day: 'Tag',
    wet: 'Nass h',
    hot: 'Zu heiß h',
    cold: 'Zu kalt h',
    unknown: 'Nicht bekannt h',
    lost: 'Ausfall',
  },
  noneYet: 'Für diese Wochen ist noch kein Ausfall eingetragen.',
  list: 'Alle aus diesen Wochen',
  entryTitle: 'Eintrag',
  close: 'Schließen',
  share: (share: number) => `${withUnit(share * 100, '%', 0)} von dem, was dort stand`,
  weight: (kg: number) => withUnit(kg, 'kg'),
  money: (value: number, currency: string) => `etwa ${money(value, currency)}`,
  ofBatch: (batch: string) => `Satz ${batch}`,
  seenOn: (day: string) => `gesehen am ${day}`,
  by: (who: string) => `eingetragen von ${who}`,
  sameWords: 'Auch ein Posten berichtet davon: dort wird es gezählt, einmal.',
  withdrawnWords: 'Zurückgenommen: zählt nirgends.',
  lotWords: 'Aus einem Posten weggeworfen: zu ändern auf der Seite des Kühlraums.',
  toLot: 'Zum Kühlraum',
  correct: 'Berichtigen',
  corrected: 'Die Berichtigung ist gespeichert; der Verlauf behält beides.',
  why: 'Warum berichtigt wird',
  store: 'Speichern',
  history: 'Verlauf',
  historyLine: (time: string, who: string, what: string) => `${time}, ${who}: ${what}`,
  takenBack: 'zurückgenommen',
  takeBack: 'Zurücknehmen',
  numbers: 'Was sich darüber sagen lässt',
  noNumbers: 'Noch lässt sich nichts vergleichen.',
  table: {
    show: (label: string) => `Die Zählung: ${label}`,
    lost: 'Über ein Zehntel verloren',
    kept: 'Weniger verloren',
    with: 'Damit',
    without: 'Ohne',
  },
  figures: {
    fisher: 'Zufall, exakter Test nach Fisher',
    chance: 'Der größere Wert daraus und aus ganzen Wochen in beliebiger Reihenfolge',
    adjusted: (tried: number) => `Nach Holm, für ${several(tried, 'Vergleich', 'Vergleiche')}`,
    left: 'Ausgelassen',
  },
  behind: 'Was dahintersteht',
  caseColumns: { which: 'Was', exposure: 'Davor', share: 'Ausfall', basis: 'Woher bekannt' },
  bases: {
    entered: 'eingetragen',
    'said-none': 'kein Ausfall, laut Angabe',
    'no-entry': 'kein Eintrag, aber Ausfälle eingetragen',
    'not-kept': 'Ausfälle nicht eingetragen',
  },
  between: (least: number, most: number, unit: string): string => {
    const digits = unit === '' ? 2 : unit === '%' ? 0 : 1;
    return least === most
      ? withUnit(least, unit, digits)
      : `${number(least, digits)} bis ${withUnit(most, unit, digits)}`;
  },
  caseWeek: (name: string, week: string) => `${name}, Woche vom ${week}`,
  caseLot: (name: string, day: string) => `${name}, vom ${day}`,
  exposed: 'damit',
  notExposed: 'ohne',
  notSaid: 'nicht zu sagen',
  csv: 'Alle Ausfälle als Datei (CSV)',
  print: 'Drucken',
};

// When a batch is ready, and what crops need.

const heatUnits = (value: number | null) =>
  value === null ? notKnown : `${heat(value, 0)} Gradtage`;
/** After "von". */
const heatUnitsDative = (value: number | null) =>
  value === null ? notKnown : `${heat(value, 0)} Gradtagen`;
const readyMissing: Readonly<Record<ReadyStage['missing'][number], string>> = {
  'no past': 'noch war kein Satz davon erntereif, und die Betriebsdatei nennt keine Tage',
  'no heat': 'wo er steht, misst kein Fühler',
  'no weather': 'nichts sagt, wie warm die kommenden Tage sind',
  'too far': 'es sind mehr als 200 Tage bis dahin',
  ended: 'er ist beendet',
};
const readyFrom = ({ method, learnedFrom, counted, weather }: Omit<ReadyStage, 'words'>) => {
  const told =
    method === 'own batches'
      ? `Nach ${counted === 'cut' ? 'den Schnitten von ' : ''}${several(learnedFrom, 'eigenem Satz', 'eigenen Sätzen')}`
      : 'Nach den Tagen der Betriebsdatei';
  const days =
    weather === 'lately'
      ? ' und Tagen so warm wie in den letzten zwei Wochen'
      : weather === 'years'
        ? ' und dem Wetter vergangener Jahre'
        : '';
  return `${told}${days}${method !== 'own batches' || learnedFrom < 3 ? ', darum noch weit gefasst' : ''}.`;
};

/** When a batch is ready at one stage, in one or two sentences. */
export function readyWords(stage: Omit<ReadyStage, 'words'>): string {
  const { seenAt, expected, early, late, soFar, need, confidence, unknownHours, standing } = stage;
  const unknown = unknownHours >= 1 ? ` Nicht gemessen: ${number(unknownHours, 0)}${HARD}h.` : '';
  const so =
    soFar === null || need === null
      ? ''
      : soFar >= need.mean
        ? `Bisher sind es ${heatUnits(soFar)}, nötig sind etwa ${heat(need.mean, 0)}. `
        : `Bisher sind es ${heat(soFar, 0)} von etwa ${heatUnitsDative(need.mean)}. `;
  if (seenAt !== null) return 'Erntereif gesehen.';
  if (stage.missing.length > 0)
    return `Nicht zu sagen: ${stage.missing.map((one) => readyMissing[one]).join(', ')}.${unknown}`;
  if (standing) {
    const between =
      early === null
        ? ''
        : ` ${fullStop(`Vielleicht ${shortDayInText(early)}${late === null ? ' oder später' : ` bis ${shortDayInText(late)}`}`)}`;
    return `Aus Lichtmangel ruht das Wachstum, darum lässt sich kein Tag zusagen.${between} ${so}${readyFrom(stage)}${unknown}`;
  }
  const sure = `in ${number(10 * confidence, 0)} von 10 Fällen`;
  const likely = expected === null ? '' : `, am ehesten ${shortDayInText(expected)}`;
  const by = soFar !== null && need !== null && soFar >= need.mean;
  const span = by
    ? `Wohl schon erntereif${late === null ? '' : `, bis ${shortDayInText(late)} in ${number(5 + 5 * confidence, 0)} von 10 Fällen`}`
    : early === null
      ? 'Irgendwann erntereif'
      : late === null
        ? `Erntereif ${shortDayInText(early)} oder später`
        : early === late
          ? `Erntereif ${shortDayInText(early)}, ${sure}`
          : `Erntereif ${shortDayInText(early)} bis ${shortDayInText(late)}, ${sure}${likely}`;
  return `${fullStop(span)} ${so}${readyFrom(stage)}${unknown}`;
}

const growingScreens = {
  page: 'Was Kulturen brauchen',
  ready: 'Später Schnitt',
  readyYoung: 'Früher Schnitt',
  none: 'Jetzt wächst nichts.',
  title: 'Wann er erntereif ist',
  picture: (name: string, words: string) =>
    `Bisherige Wärmesumme und was es braucht, ${name}. ${words}`,
  need: 'so viel braucht es',
  so: 'bisher',
  perhaps: 'vielleicht erntereif',
  day: 'Tag',
  units: 'Gradtage',
  inFigures: 'Wärmesumme Tag für Tag in Zahlen',
  youngOrLater: 'Früher oder später Schnitt',
  stage: { young: 'Früh', later: 'Spät' } satisfies Record<CutStage, string>,
  cut: 'Schnitt',
  get grams() {
    return `${gramUnit()} je Schale`;
  },
  days: 'Tage',
  moneyPerTray: (currency: string) => `${currency} je Schale`,
  moneyPerTrayDay: (currency: string) => `${currency} je Schale und Tag`,
  from: (batches: number) =>
    batches === 0 ? 'Betriebsdatei' : several(batches, 'eigener Satz', 'eigene Sätze'),
  fromLabel: 'Quelle',
  figure: (value: number | null, low: number | null, high: number | null, digits: number) =>
    value === null
      ? notKnown
      : low === null || high === null || low === high
        ? number(value, digits)
        : `${number(value, digits)} (${number(low, digits)} bis ${number(high, digits)})`,
  intervals:
    'In Klammern: 8 von 10 für das Mittel, ab drei Sätzen; Tage der Betriebsdatei wie angegeben.',
  base: {
    own: (lower: string, low: string, high: string, n: number) =>
      `Wärme zählt ab ${lower}, gelernt aus ${several(n, 'eigenen Aussaat', 'eigenen Aussaaten')}; auf anderen Wegen gelernt ${low} bis ${high}.`,
    told: (lower: string) => `Wärme zählt ab ${lower}, nach der Betriebsdatei.`,
    table: (lower: string) =>
      `Wärme zählt ab ${lower}, nach der Tabelle der Basistemperaturen für den Anfang.`,
    usual: (lower: string) =>
      `Wärme zählt ab ${lower}, weil nichts die eigene Basistemperatur sagt.`,
  },
  verdict: {
    learned: '',
    'too-few': 'Eigene Aussaaten ersetzen das, sobald sechs erntereif waren.',
    'too-alike':
      'Die eigenen Aussaaten hatten es alle etwa gleich warm, darum ergibt sich aus ihnen keine Basistemperatur.',
    undetermined: 'Die eigenen Aussaaten legen keine Basistemperatur fest.',
    'too-cold':
      'Einige eigene Aussaaten lagen der Basistemperatur zu nahe, die am besten zu ihnen passt.',
    'too-far':
      'Die Basistemperatur, die am besten zu den eigenen Aussaaten passt, liegt zu weit davon weg, um glaubhaft zu sein.',
  },
  needs: (mean: number, low: number, high: number, n: number) =>
    `Der nächste Satz braucht etwa ${heatUnits(mean)}, in 8 von 10 Fällen zwischen ${heat(low, 0)} und ${heat(high, 0)}; aus ${countedDative(n, 'Satz')}.`,
  noNeed: 'Noch war kein Satz erntereif.',
  dots: (name: string) =>
    `Gradtage, die jeder frühere Satz ${name} brauchte; die Tabelle darunter nennt sie.`,
  pastTable: (name: string) => `Frühere Sätze ${name}`,
  columns: {
    batch: 'Satz',
    place: 'Platz',
    ready: 'Erntereif',
    days: 'Tage',
    units: 'Gradtage',
    seen: 'Bekannt durch',
  },
  seen: { noted: 'als erntereif notiert', cut: 'Schnitt' },
  withUnit,
};

// What a season came to: the page that is looked at once, at a desk or on paper.

const reviewKinds: Readonly<Record<TaskKind, string>> = {
  'open-up': 'Lüften',
  'close-up': 'Schließen',
  shade: 'Schattieren',
  'move-trays': 'Schalen umstellen',
  cover: 'Abdecken',
  uncover: 'Aufdecken',
  'pick-now': 'Jetzt pflücken',
  'cut-back': 'Zurückschneiden oder ausputzen',
  water: 'Gießen',
  'shut-door': 'Tür schließen',
  'see-to-unit': 'Kühlaggregat prüfen',
  'run-generator': 'Stromerzeuger laufen lassen',
  'move-produce': 'Ware umlagern',
  'sell-first': 'Zuerst verkaufen',
  'throw-out': 'Behalten oder wegwerfen',
  sow: 'Säen',
  harvest: 'Ernten',
  'see-to-probe': 'Nach einem Fühler sehen',
};
export const reviewKindName = (kind: TaskKind): string => reviewKinds[kind];
export const reviewLooked = (look: LossLook | null): string =>
  look === null ? 'aus einem Posten weggeworfen' : lossLookName(look);

/** `Frühjahr 2026`, `Winter 2025–2026`, `Die letzten zwölf Monate`. */
export const reviewSpanName = (told: {
  readonly season: YearSeason | null;
  readonly year: number;
  readonly from: string;
}): string => {
  if (told.season === null) return 'Die letzten zwölf Monate';
  const began = Number(told.from.slice(0, 4));
  const years = began < told.year ? `${began}–${told.year}` : String(told.year);
  return `${yearSeasonNames[told.season]} ${years}`;
};

/** `etwa 40 EUR`, `zwischen 40 und 90 EUR`. */
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
  const when = `Vom ${dayAndYear(told.from)} bis ${dayAndYear(told.to)}`;
  const part = (n: number, said: string) => (n === 0 ? [] : [`${n} ${said}`]);
  const answered = listed([
    ...part(all.done + all.late, all.late === 0 ? 'erledigt' : `erledigt (${all.late} spät)`),
    ...part(all.no, 'mit „Lasse ich“ beantwortet'),
    ...part(all.lapsed, 'nicht mehr nötig'),
    ...part(all.open, 'noch offen'),
  ]);
  const tasks =
    all.asked === 0
      ? 'keine Aufgabe gestellt'
      : `${counted(all.asked, 'Aufgabe')} gestellt, davon ${answered}`;
  const spared =
    all.spared === null
      ? 'was gespart wurde, ist nicht bekannt'
      : `gespart, nach Schätzung der Zentrale, ${sparedSaid(all.spared, currency)}`;
  const unknown =
    lost.withoutMoney === 0 ? '' : ` (davon ${lost.withoutMoney} von unbekanntem Wert)`;
  const losses =
    lost.entries === 0
      ? 'kein Ausfall eingetragen'
      : `verloren durch ${counted(lost.entries, 'Ausfall')}${unknown}, ${
          lost.withoutMoney === lost.entries ? notKnown : moneySaid(lost.money, currency)
        }`;
  return `${when}: ${tasks}; ${spared}; ${losses}.`;
}

export const reviewNotes = (told: {
  readonly unvalued: number;
  readonly withoutMoney: number;
}): string[] => [
  'Was gespart wurde, ist eine Schätzung: niemand weiß, was ohne die Arbeit gekommen wäre. Der kleinere Betrag zählt eine Aufgabe je Platz und Tag, die größte; der größere zählt alle.',
  ...(told.unvalued === 0
    ? []
    : [
        `${several(told.unvalued, 'erledigte Aufgabe nannte', 'erledigte Aufgaben nannten')} keinen Betrag und ${told.unvalued === 1 ? 'zählt' : 'zählen'} hier nichts.`,
      ]),
  ...(told.withoutMoney === 0
    ? []
    : [
        `${several(told.withoutMoney, 'Ausfall hat', 'Ausfälle haben')} keinen bekannten Wert; die Summe gilt für die anderen.`,
      ]),
  'Minuten von Aufgaben sind Schätzungen der Zentrale; die von Sätzen und Pflückgängen sind eingetragen. Arbeit an Schalen kann in beiden stecken, darum werden sie nicht zusammengezählt.',
];

const reviewScreens = {
  title: 'Saisonrückblick',
  spans: 'Jahreszeiten',
  range: 'Eigene Tage',
  from: 'Von',
  to: 'Bis',
  show: 'Anzeigen',
  print: 'Drucken',
  file: 'Als Tabelle (CSV)',
  asked: 'Gestellt und beantwortet',
  none: 'In diesen Tagen wurde keine Aufgabe gestellt.',
  sum: 'Alle',
  putOff: (n: number) => (n === 0 ? '' : `${sentenceCase(repeated(n))} aufgeschoben.`),
  columns: {
    kind: 'Aufgabe',
    asked: 'Gestellt',
    done: 'Erledigt',
    late: 'Spät erledigt',
    no: 'Gelassen',
    lapsed: 'Nicht nötig',
    open: 'Offen',
    minutes: 'Minuten gestellt',
    spent: 'Minuten erledigt',
    spared: 'Gespart, Schätzung',
  },
  spared: (range: { low: number; high: number } | null, currency: string) =>
    range === null ? notKnown : sparedSaid(range, currency),
  lost: 'Ausfall',
  noLoss: 'Kein Ausfall ist eingetragen, und aus keinem Posten wurde etwas weggeworfen.',
  lostColumns: {
    place: 'Platz',
    crop: 'Kultur',
    looked: 'Aussehen',
    entries: 'Einträge',
    get kg() {
      return weightUnit();
    },
    money: 'Wert',
  },
  money: (value: number | null, currency: string) =>
    value === null ? notKnown : moneySaid(value, currency),
  forecasts: 'Vorhersagen der Nacht, und was kam',
  noForecast: 'Keine Vorhersage dieser Nächte ist ausgewertet.',
  forecastColumns: {
    spot: 'Messstelle',
    method: 'Vorhersage',
    nights: 'Nächte',
    get error() {
      return `Daneben um, ${degree()}`;
    },
    below: 'Frost oder Schaden kam',
    misses: 'Ohne Warnung',
    vain: 'Vergebens gewarnt',
  },
  spotOf: (place: string, spot: Spot) => `${place}, ${spots[spot]}`,
  minutes: 'Arbeitsminuten',
  minuteLines: (told: {
    readonly asked: number;
    readonly done: number;
    readonly batches: { readonly minutes: number; readonly without: number };
    readonly pickings: { readonly minutes: number; readonly without: number };
  }): string[] => {
    const without = (n: number) => (n === 0 ? '' : ` ${n} ohne Minuten.`);
    return [
      `Gestellte Aufgaben: ${span(told.asked * MINUTE)}; erledigte: ${span(told.done * MINUTE)}.`,
      `Eingetragen für Sätze: ${span(told.batches.minutes * MINUTE)}.${without(told.batches.without)}`,
      `Eingetragen für Pflückgänge: ${span(told.pickings.minutes * MINUTE)}.${without(told.pickings.without)}`,
    ];
  },
  alarms: 'Alarme, und wie bald sie gesehen wurden',
  noAlarm: 'Kein Alarm wurde ausgelöst.',
  alarmColumns: {
    kind: 'Alarm',
    raised: 'Ausgelöst',
    seen: 'Gesehen',
    half: 'Hälfte gesehen binnen',
    slowest: 'Am langsamsten',
    never: 'Ungesehen vorbei',
    false: 'Als falsch angegeben',
  },
  wait: (minutes: number | null) => (minutes === null ? '–' : span(minutes * MINUTE)),
  unread: 'Zeit ohne Messwerte',
  unreadColumns: { place: 'Platz', days: 'Tage', hours: 'Stunden ohne', share: 'Anteil' },
  share: (share: number | null) =>
    share === null ? notKnown : `${number(100 * share, share > 0 && share < 0.01 ? 1 : 0)}${HARD}%`,
  notes: 'Wie es zu lesen ist',
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
  'wet-at': ['Blätter gelten als nass ab', '%'],
  'wet-below': ['Blätter gelten als trocken unter', '%'],
  'wet-hours': ['Nassstunden, ab denen zu lüften ist', 'h'],
  'cover-minutes': ['Minuten, um abzudecken', 'min'],
  'cover-value': ['was Frost dort nähme', 'money'],
  'cover-damage': ['Frost schadet unter', '°C'],
  'set-point': ['Sollwert', '°C'],
  'room-limit': ['zu warm über', '°C'],
  'heat-limit': ['Hitzegrenze', '°C'],
  'band-top': ['obere Grenze des Wohlfühlbereichs', '°C'],
  chill: ['Kälte schadet unter', '°C'],
  wage: ['was eine Stunde Arbeit kostet', 'money'],
};

const lossCount = (n: number) => counted(n, 'Ausfall');
const trialUnit = (what: TrialLimit, currency: string) => {
  const unit = trialLimits[what][1];
  return unit === 'money' ? currency : unit;
};
const wholeWhere = (value: number, unit: string) =>
  Number.isInteger(Number(shownIn(value, unit).toFixed(6))) ? 0 : 1;
const trialFigure = (value: number, unit: string) => withUnit(value, unit, wholeWhere(value, unit));

/** `Langhaus: Nassstunden, ab denen zu lüften ist, 8 h statt 4 h`. */
export function trialChangeWords(change: {
  readonly what: TrialLimit;
  readonly name: string | null;
  readonly from: number;
  readonly to: number;
  readonly currency: string;
}): string {
  const unit = trialUnit(change.what, change.currency);
  const whose = change.name === null ? '' : `${change.name}: `;
  return `${whose}${trialLimits[change.what][0]}, ${trialFigure(change.to, unit)} statt ${trialFigure(change.from, unit)}`;
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
  source: `jetzt ${trialFigure(limit.value, trialUnit(limit.what, limit.currency))}, ${limit.told ? 'wie in der Betriebsdatei angegeben' : 'was gilt, weil die Betriebsdatei nichts angibt'}`,
});
export const wholeFarm = 'Der ganze Betrieb';

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

/** `an 14 Tagen mehr „Lüften“ (etwa 2 h 20 Arbeit mehr) …`; null where both ask on the same days. */
export function trialRowWords({ name, kindName, before, after, losses }: TrialRowSaid) {
  const more = after.days.filter((day) => !before.days.includes(day)).length;
  const fewer = before.days.filter((day) => !after.days.includes(day)).length;
  if (more + fewer === 0) return null;
  const days = listed([
    ...(more === 0 ? [] : [`${counted(more, 'Tag')} mehr`]),
    ...(fewer === 0 ? [] : [`${counted(fewer, 'Tag')} weniger`]),
  ]);
  const work = after.minutes - before.minutes;
  const minutes =
    work === 0
      ? ''
      : ` (etwa ${span(Math.abs(work) * MINUTE)} Arbeit ${work > 0 ? 'mehr' : 'weniger'})`;
  const lost = losses
    .map(
      (one) =>
        ` ${one.after} von ${countedDative(one.entries, 'Ausfall')} dort (${one.look}) mit solcher Aufgabe in der Woche davor, statt ${one.before}.`,
    )
    .join('');
  return `${name}: ${days} mit „${kindName}“${minutes}.${lost}`;
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
    ? 'Keine Aufgabe wäre an einem anderen Tag gekommen.'
    : 'Von diesen Plätzen gibt es aus diesen Tagen keine Messwerte, darum ist nichts zu sagen.';
  return [
    `Erprobt: ${told.changes.join('; ')}.`,
    ...(rows.length === 0 ? [none] : rows),
    ...(told.losses === 0
      ? [
          'Für diese Plätze ist aus diesen Tagen kein Ausfall eingetragen: was erspart worden wäre, lässt sich nicht sagen.',
        ]
      : []),
  ];
}

export const trialNotes = (room: boolean): string[] => [
  'Die Regeln der Zentrale selbst, einmal je Stunde, mit den Mittelwerten der Stunden: eine Aufgabe, die weniger als eine Stunde gestanden hätte, kann fehlen.',
  'Als hätte niemand geantwortet oder gelüftet: die Messwerte sind die des Hauses, wie darin gearbeitet wurde.',
  'Nächte werden nach den damaligen Vorhersagen der Zentrale beurteilt; wo es keine gab, ist zu Abdecken und Schließen nichts gesagt.',
  '„Lüften“ zählt auch Abende, an denen gebeten worden wäre, über Nacht offen zu lassen.',
  'Schalen sind die der Betriebsdatei; Sätze, und was zur Lüftung gesagt wurde, bleiben außer Acht.',
  ...(room
    ? [
        'Ein Kühlraum wird nur nach Sollwert und Grenzwert beurteilt, wie in seinen ersten Tagen: was die Zentrale über seinen Takt gelernt hat, bleibt außer Acht.',
        'Dort wird nur „Ware umlagern“ betrachtet.',
      ]
    : []),
  'Ein Ausfall mit einer Aufgabe in der Woche davor wäre vielleicht erspart geblieben, vielleicht nicht: zu sehen ist, was zusammenfiel.',
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
    `Erprobt an ${told.from} bis ${told.to}. ${told.words.join(' ')}`,
  ].join(' – ');
/** Of the days there are readings for. */
export const trialCaution = (days: number): string =>
  `Messwerte reichen ${counted(days, 'Tag')} zurück: eine ganze Saison sagt mehr.`;

const trialScreens = {
  title: 'Grenzwert erproben',
  why: 'Einen Grenzwert ändern und an den behaltenen Messwerten sehen, wann Aufgaben gekommen wären und was wirklich ausfiel. Am Betrieb ändert sich nichts, bis es übernommen wird.',
  noReadings:
    'Noch gibt es keine Messwerte, an denen ein Grenzwert zu erproben wäre. Sie kommen von den Fühlern oder durch eine Einfuhr.',
  whose: 'Wessen Grenzwert',
  limit: 'Grenzwert',
  from: 'Von',
  to: 'Bis',
  value: (unit: string) =>
    unit === '' ? 'Neuer Wert' : `Neuer Wert, ${unit === '°C' ? degree() : unit}`,
  less: (step: string) => `${step} weniger`,
  more: (step: string) => `${step} mehr`,
  /** A difference: degrees have no zero there. */
  step: (step: number, unit: string) =>
    unit === '°C' ? difference(step, wholeWhere(step, 'K')) : trialFigure(step, unit),
  start: 'Erproben',
  same: 'Einen anderen Wert wählen als den, der gilt.',
  progress: (percent: number, place: string | null) =>
    place === null ? `${percent}${HARD}% fertig` : `${percent}${HARD}% fertig, bei ${place}`,
  running: 'Die Erprobung läuft',
  cancel: 'Erprobung abbrechen',
  canceled: 'Die Erprobung ist abgebrochen. Nichts wurde geändert.',
  failed: (why: string) => `Die Erprobung kam nicht zu Ende: ${why}`,
  result: 'Wie es gewesen wäre',
  strip: 'Tage mit einer Aufgabe',
  stripTitle: (name: string, kind: string) => `${name}, ${kind}`,
  stripWords: (was: number, is: number, lost: number) =>
    `Obere Reihe: ${counted(was, 'Tag')} mit der Aufgabe beim geltenden Grenzwert. Untere Reihe: ${counted(is, 'Tag')} beim erprobten. Dazwischen ${lossCount(lost)}.`,
  upper: 'jetzt',
  lower: 'erprobt',
  lossesHere: 'Wirklich eingetragene Ausfälle',
  columns: {
    place: 'Platz und Aufgabe',
    before: 'Tage jetzt',
    after: 'Tage erprobt',
    more: 'Mehr',
    fewer: 'Weniger',
    tasks: 'Aufgaben jetzt → erprobt',
    minutes: 'Arbeit jetzt → erprobt',
  },
  work: (minutes: number) => span(minutes * MINUTE),
  days: 'Die Tage',
  onlyBefore: (days: string) => fullStop(`Nur jetzt: ${days}`),
  onlyAfter: (days: string) => fullStop(`Nur erprobt: ${days}`),
  none: 'Keine anderen Tage.',
  notes: 'Wie es zu lesen ist',
  keepTitle: 'Übernehmen',
  keepWhat: 'Das ändert am Betrieb:',
  keepWhy: 'Warum (wenn gewünscht)',
  keep: 'Grenzwert übernehmen',
  leave: 'Alles lassen, wie es war',
  left: 'Alles bleibt, wie es war. Nichts wurde geändert.',
  kept: 'Gespeichert. Rückgängig zu machen unter „Änderungen des Betriebs“.',
  changes: 'Änderungen des Betriebs',
};

// What waits for the hub, and what is read without it.
const queueWords = {
  said: (what: string, told: readonly string[]) =>
    told.length === 0 ? what : `${what}. ${sentenceOf(told)}`,
  kinds: {
    answer: 'Aufgabe',
    undoMove: 'Umstellen zurückgenommen',
    putAway: 'Eingelagert',
    lot: 'Posten',
    sow: 'Gesät',
    repeat: 'Gesät wie letzte Woche',
    batch: 'Satz',
    loss: 'Ausfall',
    lossChange: 'Ausfall',
    quietWeek: 'Woche ohne Ausfälle',
    pick: 'Gepflückt',
    pickChange: 'Pflückgang',
    action: 'Abhilfe',
    check: 'Fühler geprüft',
    fruit: 'Früchte gezählt',
    seen: 'Alarm gesehen',
    vents: 'Lüftung',
    ventsBack: 'Lüftung, zurückgenommen',
    want: 'Gewünscht',
  },
  /** Of a lot, a batch, a loss or a picking. */
  changes: {
    take: 'Entnommen aus',
    release: 'Freigegeben',
    correct: 'Berichtigt',
    undo: 'Zurückgenommen',
    move: 'Umgestellt',
    cut: 'Geschnitten',
    throwOut: 'Weggeworfen',
    note: 'Notiz zu',
    work: 'Arbeit an',
    clear: 'Geräumt',
    photo: 'Foto von',
  },
  fields: {
    crop: 'Kultur',
    kg: 'Gewicht',
    place: 'Platz',
    from: 'von',
    to: 'nach',
    trays: 'Schalen',
    amount: 'wie viel',
    look: 'Aussehen',
    how: 'wie',
    day: 'Tag',
    week: 'Woche vom',
    at: 'um',
    storedAt: 'eingelagert um',
    harvestedAt: 'geerntet um',
    sownAt: 'gesät um',
    until: 'bis',
    meantFor: 'bestimmt für',
    minutes: 'Minuten',
    walkMinutes: 'Minuten Weg',
    pickers: 'Pflückende',
    lostKg: 'aussortiert',
    price: 'Preis',
    seedCost: 'Kosten des Saatguts',
    otherCost: 'andere Kosten',
    variety: 'Sorte',
    work: 'Arbeit',
    note: 'Notiz',
    saw: 'gesehen:',
    did: 'getan:',
    by: 'durch',
    core: 'Kern',
    reading: 'Messwert',
    of: 'von',
    counted: 'gezählt an',
    why: 'warum',
  },
  units: { kg: 'kg', lostKg: 'kg', minutes: 'min', walkMinutes: 'min' },
  title: (n: number) =>
    n === 1 ? '1 Eintrag wartet auf das Senden' : `${n} Einträge warten auf das Senden`,
  why: 'Noch nicht in der Zentrale gespeichert. Auf diesem Gerät behalten und in dieser Reihenfolge von selbst gesendet, wenn die Zentrale antwortet.',
  refusedTitle: (n: number) =>
    n === 1 ? 'Die Zentrale hat 1 Eintrag abgelehnt' : `Die Zentrale hat ${n} Einträge abgelehnt`,
  refusedWhy: 'Nicht gespeichert. Ändern und noch einmal senden, oder verwerfen.',
  refused: (sentence: string) => `Die Zentrale sagt: ${sentence}`,
  saidAt: (time: string) => `angegeben ${time}`,
  waits: 'wartet',
  show: 'Was wartet',
  answerWaits: (answer: string) => `${answer}: wartet auf das Senden, noch nicht gespeichert.`,
  seenWaits: '„Gesehen“ wartet auf das Senden. Die Zentrale weckt weiter, bis sie es erfährt.',
  others: (n: number, name: string) =>
    `${several(n, 'Eintrag', 'Einträge')} von ${name} ${n === 1 ? 'wartet' : 'warten'} auf diesem Gerät und ${n === 1 ? 'wird' : 'werden'} gesendet, wenn ${name} sich hier anmeldet.`,
  waitsHere:
    'die Zentrale antwortet nicht. Es ist auf diesem Gerät behalten und wartet auf das Senden',
  signIn: 'zuerst anmelden. Es ist auf diesem Gerät behalten und wartet auf das Senden',
  cannotWait:
    'die Zentrale antwortet nicht, und dies kann nicht warten: nur sie kann zeigen, was es bewirkt',
  fromBefore: (ms: number) =>
    `Die Zentrale hat nicht für die ganze Seite geantwortet. Das Gezeigte ist bis zu ${ageLength(ms)} alt.`,
  neverOpened:
    'keine Antwort von der Zentrale, und dies war auf diesem Gerät noch nie offen, darum ist nichts davon behalten',
  secretNotKept:
    'keine Antwort von der Zentrale, und ein Geheimnis wird auf diesem Gerät nicht behalten',
  noRoomForPhoto:
    'die Zentrale antwortet nicht, und auf diesem Gerät ist kein Platz für ein weiteres Foto: 10 MB warten schon',
  photoGone:
    'Erwartet: das Foto auf diesem Gerät, erhalten: keines; den Eintrag verwerfen oder neu eintragen',
  keptHere:
    'Dieser Browser behält, was er zuletzt gezeigt hat, höchstens 8 Millionen Zeichen, und was auf das Senden wartet, mit 10 MB Fotos. Abmelden entfernt das Gezeigte.',
  change: 'Ändern',
  again: 'Noch einmal senden',
  anyway: 'Trotzdem eintragen',
  yourName: 'Wer das angibt',
  drop: 'Verwerfen',
  dropSure: 'Endgültig verwerfen',
  keep: 'Behalten',
  send: 'Geändert senden',
  back: 'Zurück',
  when: 'Wann es angegeben wurde',
  noFields: 'Hier lässt sich nichts daran ändern. Verwerfen und neu eintragen.',
  actionOn: (action: string, what: string) => `${action}: ${what}`,
};
const sentenceOf = (parts: readonly string[]) => sentenceCase(parts.join(', '));

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
    label: 'Seiten',
    today: 'Heute',
    places: 'Plätze',
    batches: 'Sätze',
    coolRoom: 'Kühlraum',
    frost: 'Frost',
    losses: 'Ausfälle',
    probes: 'Fühler',
    alarms: 'Alarme',
    setUp: 'Einrichtung',
    sowing: 'Aussaatplan',
    week: 'Wochenblatt',
    worth: 'Was es bringt',
    picks: 'Pflückgänge',
    more: 'Mehr',
    groups: { growing: 'Anbau', records: 'Aufzeichnungen', hub: 'Zentrale und Betrieb' },
    hereToo: '(diese Seite gehört dazu)',
  },
  frame: {
    skip: 'Zum Inhalt der Seite',
    invented: 'Vorführbetrieb. Hier ist alles erfunden.',
    faster: (speed: number) => `Seine Uhr läuft ${number(speed, 0)}-mal so schnell wie die echte.`,
    clock: (time: string) => `Zeit im Betrieb: ${time}`,
    signOut: 'Abmelden',
    signedInAs: (name: string) => `Angemeldet als ${name}`,
    alarm: 'Alarm',
    seeTasks: 'Aufgabe ansehen',
    scheme: {
      label: 'Diese Seite, auf diesem Gerät',
      device: 'Wie das Gerät',
      light: 'Hell',
      dark: 'Dunkel',
    },
    noPage: 'Diese Seite gibt es nicht',
    noPageWhy: 'Die Adresse führt hier nirgendwohin.',
    toToday: 'Zu Heute',
  },
  link: {
    lost: (since: string, old: number | null) =>
      `Keine Verbindung zur Zentrale seit ${since}. ${
        old === null
          ? 'Nichts ist gespeichert, das zu zeigen wäre.'
          : `Das Gezeigte ist ${ageLength(old)} alt.`
      }`,
    connecting: 'Verbindung zur Zentrale wird aufgebaut…',
    again: 'Sie wird von selbst neu versucht.',
    now: 'Jetzt versuchen',
  },
  state: {
    asking: 'Die Zentrale wird gefragt…',
    failed: (sentence: string) => `Die Zentrale hat das nicht geliefert: ${sentence}`,
    tryAgain: 'Noch einmal',
    noAnswer: 'keine Antwort von der Zentrale',
    badAnswer: (status: number) => `die Zentrale hat mit Status ${status} geantwortet`,
    oldReading: (ms: number) => `Alter Messwert, ${ageLength(ms)} alt`,
    neverRead: 'Nie gemessen',
    read: (ms: number) => `gemessen ${age(ms)}`,
  },
  today: {
    title: 'Heute',
    asOf: (time: string, ms: number) => `Stand ${time}, ${age(ms)}`,
    tasks: 'Zu tun',
    noTasks: 'Jetzt keine Aufgaben.',
    putOff: 'Aufgeschoben',
    ended: 'Heute erledigt und weggefallen',
    endedNone: 'Heute ist noch nichts beendet.',
    strips: 'Von der Abend- zur Morgendämmerung',
    tonight: 'Tiefstwerte heute Nacht',
    noTonight: 'Noch keine Vorhersage für heute Nacht.',
    coolRooms: 'Kühlraum',
  },
  task: {
    by: (time: string) => `bis ${time}`,
    from: (time: string) => `ab ${time}`,
    noDeadline: 'ohne Frist',
    minutes: (n: number) => `${number(n, 0)}\u00a0min Arbeit`,
    saves: (amounts: string) => `spart etwa ${amounts}`,
    why: 'Warum',
    evidence: { what: 'Gemessen', value: 'Wert', limit: 'Verglichen mit', source: 'Quelle' },
    unknown:
      'Ob das noch nötig ist, lässt sich nicht mehr sagen. Es bleibt stehen, bis das bekannt ist.',
    care: 'Vorsicht',
    alarm: 'Alarm',
    enterBatches: 'Gesätes als Satz eintragen',
    enterSown: 'Als Satz eintragen',
    done: 'Erledigt',
    later: 'Später',
    no: 'Lasse ich',
    hour: 'In 1 Stunde',
    evening: 'Heute Abend',
    tomorrow: 'Morgen früh',
    morning: 'Heute früh',
    back: 'Zurück',
    answerTo: (answer: string, title: string) => `${answer}: ${title}`,
    stored: (answer: string, title: string) => `Gespeichert: ${title}: ${answer}.`,
    sending: 'Wird gesendet…',
    notSent: (sentence: string) => `Nicht gesendet: ${sentence}`,
    until: (time: string) => `Aufgeschoben bis ${time}`,
    endings: {
      done: 'Erledigt',
      no: 'Lasse ich',
      later: 'Aufgeschoben',
      lapsed: 'Nicht mehr nötig',
    },
  },
  how: howScreens,
  frost: frostScreens,
  strips: {
    humidity: 'Luftfeuchte zeigen',
    key: 'Legende',
    measured: 'gemessene Temperatur',
    humidityLine: 'Luftfeuchte, 0 bis 100 %',
    wet: 'Blätter nass',
    night: 'Nacht',
    fan: 'Vorhersage, 8 von 10',
    gap: 'Eine Lücke in der Linie ist eine Zeit ohne Messwerte.',
    now: 'jetzt',
    none: 'Noch keine Streifen zu zeichnen.',
    title: (name: string, from: string, to: string) => `${name}, ${from} bis ${to}`,
    inWords: 'Die Streifen in Worten und Zahlen',
    lastRead: (value: string, time: string) => `${value} um ${time}, seither nichts`,
    columns: {
      time: 'Zeit',
      get temperature() {
        return `${degree()}`;
      },
      humidity: '% rF',
      wet: 'Blätter',
      chances: '8 von 10',
    },
    wetCell: 'nass',
    forecast: 'Vorhersage',
    ownScale: 'eigene Skala',
    pin: (time: string, titles: readonly string[]) => `Aufgabe bis ${time}: ${titles.join('; ')}`,
    noReadings: 'keine Messwerte',
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
