// The units in which people read and type. What is kept, sent and worked out with stays in °C and kg.

export type Units = {
  readonly temperature: 'C' | 'F';
  readonly weight: 'kg' | 'lb';
  readonly clock: 24 | 12;
  readonly weekStart: 'monday' | 'sunday' | 'saturday';
};

export const USUAL_UNITS: Units = {
  temperature: 'C',
  weight: 'kg',
  clock: 24,
  weekStart: 'monday',
};

// International yard and pound agreement, 1959: exact.
const KILOGRAMS_IN_A_POUND = 0.45359237;
const OUNCES_IN_A_POUND = 16;
// °F = °C × 9/5 + 32, exact.
const FAHRENHEIT = 9 / 5;
const FREEZING = 32;

let chosen: Units = USUAL_UNITS;
const turns = new Map<string, Turn>();

/** As a farm tells them: any may be left out. */
export type UnitsTold = { readonly [Key in keyof Units]?: Units[Key] | undefined };

/** One choice for the whole process: the last one counts. What is not told is as usual. */
export function chooseUnits(told: UnitsTold) {
  const given = Object.entries(told).filter(([, value]) => value !== undefined);
  chosen = { ...USUAL_UNITS, ...Object.fromEntries(given) };
  turns.clear();
}
export const units = (): Units => chosen;

/** A kept figure times `factor`, and `more` added, is the figure shown. */
type Turn = { readonly factor: number; readonly more: number; readonly unit: string };

/**
 * What one part of a unit is in the units chosen: `K` as `°F`, `kg` as `lb`, `gram` as `oz`. Grams of
 * water in `g/m³` stay what they are.
 */
function part(name: string): { factor: number; name: string } {
  if (chosen.temperature === 'F' && (name === '°C' || name === 'K'))
    return { factor: FAHRENHEIT, name: '°F' };
  if (chosen.weight === 'lb' && name === 'kg')
    return { factor: 1 / KILOGRAMS_IN_A_POUND, name: 'lb' };
  if (name === 'gram')
    return chosen.weight === 'lb'
      ? { factor: OUNCES_IN_A_POUND / (1000 * KILOGRAMS_IN_A_POUND), name: 'oz' }
      : { factor: 1, name: 'g' };
  return { factor: 1, name };
}

/**
 * How a unit is turned into the one that is shown. `°C` alone is a temperature and has its zero
 * elsewhere in °F; in `°C d`, `°C/h` and `K` degrees are steps, which are only smaller.
 */
function turnOf(unit: string): Turn {
  const known = turns.get(unit);
  if (known) return known;
  let factor = 1;
  const [top = '', ...below] = unit.split('/');
  const said = [top, ...below].map((side, i) =>
    side
      .split(' ')
      .map((name) => {
        const { factor: times, name: shown } = part(name);
        factor *= i === 0 ? times : 1 / times;
        return shown;
      })
      .join(' '),
  );
  const more = unit === '°C' && chosen.temperature === 'F' ? FREEZING : 0;
  const turn = { factor, more, unit: said.join('/') };
  turns.set(unit, turn);
  return turn;
}

/** A kept figure as the number that is shown: 3 of `°C` is 37.4 where °F are read. */
export function shownIn(value: number, unit: string): number {
  const { factor, more } = turnOf(unit);
  return value * factor + more;
}

/** A number that somebody typed in the unit shown, as it is kept. */
export function keptFrom(value: number, unit: string): number {
  const { factor, more } = turnOf(unit);
  return Number(((value - more) / factor).toPrecision(12)); // 12: a double's tail is nobody's figure
}

/** The name of the unit that is shown for a kept one: `°F` for `°C` and `K`. */
export const shownUnit = (unit: string): string => turnOf(unit).unit;
