import { farm, today } from '../state.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { type Leaf, leavesOf } from './leaves.ts';
import type { SaidKind } from './mayWait.ts';

const MOST = 8; // values told; the rest is in the entry. Ours
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

/** What a command is, in words: "Put away: crop basil, weight 3 kg, place Cool room". */
export function describe(kind: SaidKind, path: string, body: unknown): string {
  const about = decodeURIComponent(path.split('/')[3] ?? '');
  const told = leavesOf(body)
    .map((leaf) => leafWords(leaf, kind))
    .filter((text) => text !== '')
    .slice(0, MOST);
  return words.queue.said(headOf(kind, about, body), told);
}

function headOf(kind: SaidKind, about: string, body: unknown): string {
  const { kinds, changes } = words.queue;
  const task = today.peek()?.tasks.find(({ id }) => id === about)?.title;
  // An alarm goes by the name of the task that asked for it.
  if (kind === 'answer' || kind === 'undoMove' || kind === 'seen')
    return `${kinds[kind]}: ${task ?? about}`;
  const place = placeName(about);
  if (kind === 'action' || kind === 'fruit' || kind === 'vents' || kind === 'ventsBack')
    return `${kinds[kind]}: ${place}`;
  if (kind === 'check') return `${kinds.check}: ${about}`;
  // A change of something says which change, and of what.
  const change = Object.keys((body as object | null) ?? {}).find((name) => name in changes);
  const named = change === undefined ? kinds[kind] : changes[change as keyof typeof changes];
  return about === '' || about === 'repeat' || about === 'quiet-weeks'
    ? named
    : `${named}: ${about}`;
}

const placeName = (id: string) => today.peek()?.places.find((one) => one.id === id)?.name ?? id;

function leafWords({ field, value, where }: Leaf, kind: SaidKind): string {
  const { fields } = words.queue;
  if (kind === 'vents' && field === 'state')
    return value === 'open' ? words.places.vents.openedNow : words.places.vents.closedNow;
  if (field === 'answer') return words.task[value as 'done' | 'later' | 'no'];
  if (value === '' || typeof value === 'boolean' || where[0] === 'override') return '';
  const label = fields[field as keyof typeof fields];
  return label === undefined ? '' : `${label} ${valueWords(field, value, kind)}`;
}

function valueWords(field: string, value: string | number, kind: SaidKind): string {
  if (typeof value === 'number') return numberWords(field, value);
  if (field === 'place' || field === 'from' || field === 'to') return placeName(value);
  const zone = farm.peek()?.zone;
  if (INSTANT.test(value) && zone !== undefined)
    return when(Date.parse(value), zone, Date.parse(farm.peek()?.now ?? value));
  const named: Readonly<Record<string, string>> = {
    ...(kind === 'loss' || kind === 'lossChange' ? words.losses.looks : words.batches.looks),
    ...words.batches.works,
    ...words.lots.uses,
  };
  return named[value] ?? (field === 'crop' ? value.replaceAll('-', ' ') : value);
}

function numberWords(field: string, value: number): string {
  const { units } = words.queue;
  if (field === 'core' || field === 'reading') return words.temperature(value);
  const unit = units[field as keyof typeof units];
  const digits = Math.min(2, String(value).split('.')[1]?.length ?? 0);
  return unit === undefined ? words.number(value, digits) : words.withUnit(value, unit, digits);
}
