/** Columns of a file of batches, one row for each thing that was done. */
export const COLUMNS = [
  'batch',
  'crop',
  'variety',
  'event',
  'at',
  'place',
  'trays',
  'kg',
  'minutes',
  'price',
  'look',
  'note',
  'stage',
  'clears',
  'lost_kg',
  'work',
  'photo',
  'seed_cost',
  'other_cost',
  'meant_for',
  'part_of',
  'into',
  'who',
] as const;
export type Column = (typeof COLUMNS)[number];

/** Columns of the simple form, one row a batch; those after `place` may be left out. */
export const SIMPLE = [
  'crop',
  'trays',
  'sown',
  'place',
  'variety',
  'cut',
  'kg',
  'minutes',
  'stage',
  'price',
  'lost_kg',
  'seed_cost',
  'other_cost',
  'meant_for',
] as const;

/** Which form a head has; null for neither. */
export function formOfHead(names: readonly string[]): 'events' | 'simple' | null {
  const has = (...wanted: string[]) => wanted.every((name) => names.includes(name));
  if (has('batch', 'event', 'at')) return 'events';
  return has('crop', 'trays', 'sown', 'place') ? 'simple' : null;
}

/** A spreadsheet takes text that begins so for a formula; an apostrophe before it keeps it text. */
const GUARDED = /^'+[=+\-@\t\r]/;
/** Text of somebody's that looks guarded already gets one more, so that one can be taken off again. */
export const guard = (text: string) => (GUARDED.test(text) ? `'${text}` : text);
export const unguard = (text: string) => (GUARDED.test(text) ? text.slice(1) : text);
