import type { Calendar } from '../clock.ts';
import { time } from '../contract/index.ts';
import type { Farm } from '../farm/index.ts';
import { shown } from '../words/index.ts';
import type { Row } from './readTable.ts';

const MINUTE = 60_000; // ms
const NOON = 12 * 60; // minutes: a thing of which only the day is known

/** What cells are read against. */
export type ReadAbout = {
  readonly farm: Farm;
  readonly calendar: Calendar;
  readonly now: number;
};
/** An instant, and whether only its day was told. */
export type Told = { readonly at: number; readonly dayOnly: boolean };

/** A number with a point or a comma; null for an empty cell. @throws Error naming the column */
export function numberCell({ cell }: Row, column: string): number | null {
  const text = cell(column);
  if (text === '') return null;
  const value = Number(text.replace(',', '.'));
  if (Number.isFinite(value)) return value;
  throw new Error(`Expected a number in ${column}, got ${shown(text)}`);
}

/** @throws Error naming the column */
export function needed<Value>(value: Value | null, column: string, what: string): Value {
  if (value !== null) return value;
  throw new Error(`Expected ${what} in ${column}, got nothing`);
}

/** A day (`2026-04-02`), a time on the farm's wall (`2026-04-02 14:30`) or ISO 8601 with its zone. */
export function timeCell(row: Row, column: string, about: ReadAbout): Told | null {
  const text = row.cell(column);
  if (text === '') return null;
  const fault = () =>
    new Error(
      `Expected a day such as 2026-04-02 or a time such as 2026-04-02 14:30 in ${column}, got ${shown(text)}`,
    );
  if (time.safeParse(text).success) return { at: Date.parse(text), dayOnly: false };
  const found = /^(\d{4}-\d\d-\d\d)(?:[ T]([01]\d|2[0-3]):([0-5]\d)(?::[0-5]\d)?)?$/.exec(text);
  const [, day = '', hour, minute = '0'] = found ?? [];
  if (day === '' || new Date(`${day}T00:00:00Z`).toJSON()?.slice(0, 10) !== day) throw fault();
  const { begins } = about.calendar.bounds(day);
  const dayOnly = hour === undefined;
  const wanted = dayOnly ? NOON : 60 * Number(hour) + Number(minute);
  const guess = begins + wanted * MINUTE;
  // A change of clocks since midnight moves the hands.
  const { offsetMinutes } = about.calendar;
  const at = guess - (offsetMinutes(guess) - offsetMinutes(begins)) * MINUTE;
  const early = dayOnly && at > about.now && about.calendar.dayOf(about.now) === day;
  return { at: early ? about.now : at, dayOnly };
}

const named = <One extends { readonly id: string; readonly name?: string | undefined }>(
  list: readonly One[],
  text: string,
) =>
  list.find(({ id }) => id === text)?.id ??
  list.find(({ name }) => name?.toLowerCase() === text.toLowerCase())?.id;

/** A place by its id or its name; what the farm does not know stays as it is written. */
export const placeCell = ({ cell }: Row, { farm }: ReadAbout): string =>
  named(farm.places, cell('place')) ?? cell('place');

export const cropCell = ({ cell }: Row, { farm }: ReadAbout): string =>
  named(farm.file.crops, cell('crop')) ?? cell('crop');

/** `yes` or `no`; null for an empty cell. @throws Error naming the column */
export function yesCell({ cell }: Row, column: string): boolean | null {
  const text = cell(column).toLowerCase();
  if (text === '') return null;
  if (['yes', 'true', '1'].includes(text)) return true;
  if (['no', 'false', '0'].includes(text)) return false;
  throw new Error(`Expected yes or no in ${column}, got ${shown(text)}`);
}

/** What a batch is called in a file, as the hub names them: `Bed 7` -> `bed-7`; null for nothing. */
export function nameCell({ cell }: Row, column: string): string | null {
  const text = cell(column)
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 64)
    .replace(/-+$/, '');
  return text === '' ? null : text;
}

/** Whether two times are the same, as far as the file tells. */
export const sameTime = (told: Told, at: number, { calendar }: ReadAbout) =>
  told.dayOnly ? calendar.dayOf(told.at) === calendar.dayOf(at) : told.at === at;
