import { carbonDioxide, type Fuel, fuelUse, type Trace } from '../cooler/index.ts';
import { HOUR, type Hours, hours, type Instant, MINUTE } from '../units.ts';
import { within } from './column.ts';
import { coverage, ENOUGH, holeOf, type Room } from './room.ts';

/** What the set that feeds a room burnt in the last 24 hours, by the hours it fed the meter. */
export type FuelNow = {
  readonly hours: Hours;
  readonly litres: number;
  readonly fuel: Fuel;
  readonly litresPerHour: number;
  /** kg from burning it. */
  readonly carbonDioxide: number;
  /** Money; null where no price is told. */
  readonly money: number | null;
  /** Litres for each kWh the meter counted; null where it counted none. */
  readonly perKilowattHour: number | null;
  /** Outside what sets do: one of the entries should be looked at again. */
  readonly unlikely: boolean;
};

const DAY = 24 * HOUR;
const FED = 1; // W: under it nothing is fed, since a controller alone draws some. Ours

/**
 * Fuel of the last 24 hours: a set burns while it runs, whatever the room draws of it. null where
 * nobody told what it burns, or under 80 % of the day is known.
 *
 * Source: litres an hour and price as told in the farm file; CO2 as carbonDioxide.
 */
export function roomFuel(
  { power, now, burns }: Room,
  kilowattHours: number | null,
): FuelNow | null {
  if (burns === null || power === null || coverage(power, now, DAY / MINUTE) < ENOUGH) return null;
  const { from, to } = within(power.column, now - DAY, now);
  const day = { t: power.column.t.slice(from, to), value: power.column.value.slice(from, to) };
  const ran = fedHours(day, holeOf(power) * MINUTE, now);
  const litres = ran * burns.litresPerHour;
  const use =
    kilowattHours === null || litres === 0 ? null : fuelUse(litres, kilowattHours, burns.fuel);
  return {
    hours: hours(ran),
    litres,
    fuel: burns.fuel,
    litresPerHour: burns.litresPerHour,
    carbonDioxide: carbonDioxide(litres, burns.fuel),
    money: burns.price === null ? null : litres * burns.price,
    perKilowattHour: use?.litresPerKwh ?? null,
    unlikely: use?.query ?? false,
  };
}

/** Hours in which something was fed, scaled for the time that no reading speaks for. */
function fedHours({ t, value }: Trace, hole: number, now: Instant): number {
  let fed = 0;
  let known = 0;
  for (let i = 0; i < t.length; i++) {
    const length = (t[i + 1] ?? now) - (t[i] as number);
    if (length > hole) continue;
    known += length;
    if ((value[i] as number) >= FED) fed += length;
  }
  return known === 0 ? 0 : ((fed / known) * DAY) / HOUR;
}
