import type { Evidence, TaskKind } from '../contract/index.ts';
import { reasons, sentences } from './enTaskReasons.ts';
import { missingLabel } from './enTaskTerms.ts';

export { evidenceLabel, missingLabel } from './enTaskTerms.ts';

// What is said about tasks, in English.

/** `place` is the place's name, not its id. */
export type TaskFacts = {
  readonly kind: TaskKind;
  readonly place: string;
  readonly subject: string | null;
  readonly because: readonly Evidence[];
};

// A room named for what it is takes an article; a name of its own does not.
const inText = (place: string) => (place.toLowerCase() === 'cool room' ? 'the cool room' : place);

/** A short imperative. */
export function title({ kind, place: name, subject, because }: TaskFacts): string {
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

const listed = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

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
    'Outdoors only, at least 6 m from any door, window or vent, exhaust pointing away: the fumes kill and the worst of them has no smell. Stop it and let it cool before refuelling, no flame near. Changeover switch, earthing and fixed wiring are for a licensed electrician, by local code; never feed back through a socket.',
  'move-produce': `${FOOD} Crates that leave the cold sweat: keep them covered.`,
  'sell-first': FOOD,
  'throw-out': `${FOOD} Mould is not trimmed for sale; in doubt, throw out.`,
};

/** Care to take where the work can hurt; null where it needs no words. */
export const caution = (kind: TaskKind): string | null => cautions[kind] ?? null;
