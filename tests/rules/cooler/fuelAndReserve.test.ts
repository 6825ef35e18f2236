import { expect, test } from 'vitest';
import {
  batterySize,
  carbonDioxide,
  type Fuel,
  fuelUse,
  iceStore,
  litresPerHour,
  offTimeAllowed,
  STARTING_CURRENT,
  solarPower,
  timeConstantNeeded,
} from '../../../rules/cooler/index.ts';
import { truth } from '../../truth/index.ts';

test.for(truth('cooler/litresPerKwh.csv', ['litres', 'kwh', 'per_kwh', 'efficiency'], ['fuel']))(
  '$litres L of $fuel for $kwh kWh are $per_kwh L/kWh, $efficiency of the heat',
  ({ litres, kwh, per_kwh, efficiency, fuel }) => {
    const use = fuelUse(litres, kwh, fuel as Fuel);
    expect(use?.litresPerKwh).toBeCloseTo(per_kwh, 6);
    expect(use?.efficiency).toBeCloseTo(efficiency, 6);
    expect(use?.query).toBe(false);
  },
);

test('4 L in 12 h are a third of a litre an hour; nothing made has no figure', () => {
  expect(litresPerHour(4, 12)).toBeCloseTo(1 / 3, 12);
  expect(litresPerHour(4, 0)).toBeNull();
  expect(fuelUse(4, 0)).toBeNull();
  expect(fuelUse(null, 6)).toBeNull();
});

test.for([
  [0.253, false],
  [0.247, true],
  [1.19, false],
  [1.21, true],
] as const)('an entry of %s L/kWh is queried: %s', ([litres, query]) => {
  expect(fuelUse(litres, 1)?.query).toBe(query);
});

test.for(truth('cooler/carbonDioxide.csv', ['litres', 'kilograms'], ['fuel', 'by']))(
  '$litres L of $fuel burn to $kilograms kg by $by',
  ({ litres, kilograms, fuel, by }) => {
    expect(carbonDioxide(litres, fuel as Fuel, by as 'epa' | 'eia')).toBeCloseTo(kilograms, 5);
  },
);

const night = { start: 2, limit: 5, outside: 16 };

test.for(truth('cooler/offTime.csv', ['start', 'limit', 'outside', 'tau_h', 'off_h', 'needed_h']))(
  'from $start °C a room of $tau_h h may stand $off_h h; 14 h need $needed_h h',
  ({ tau_h, off_h, needed_h, ...row }) => {
    expect(offTimeAllowed({ ...row, tauHours: tau_h })).toBeCloseTo(off_h, 6);
    expect(timeConstantNeeded({ ...row, hours: 14 })).toBeCloseTo(needed_h, 6);
  },
);

test('a room over its limit needs no constant, one in the cold any', () => {
  expect(timeConstantNeeded({ ...night, start: 5, hours: 14 })).toBeNull();
  expect(timeConstantNeeded({ ...night, outside: 5, hours: 14 })).toBe(0);
  expect(offTimeAllowed({ ...night, tauHours: null })).toBeNull();
});

test('a night of 14 h at 38.46 W/K takes 7 kWh, or 75.4 kg of ice', () => {
  const { kilowattHours, kilograms } = iceStore({
    coefficient: 38.4615384615,
    outside: 16,
    inside: 3,
    hours: 14,
  });
  expect(kilowattHours).toBeCloseTo(7, 6);
  expect(kilograms).toBeCloseTo(75.449102, 4);
  const warm = { coefficient: 38, outside: 2, inside: 3, hours: 14 };
  expect(iceStore(warm)).toEqual({ kilowattHours: 0, kilograms: 0 });
});

const solar = [
  'kwh',
  'sun_h',
  'factor',
  'days',
  'depth',
  'efficiency',
  'panels',
  'battery',
] as const;
test.for(truth('cooler/solar.csv', solar))(
  '$kwh kWh a day take $panels kW of panels and $battery kWh of battery',
  ({ kwh, sun_h, factor, days, depth, efficiency, panels, battery }) => {
    const need = { kilowattHours: kwh, days, depth, efficiency };
    expect(solarPower({ kilowattHours: kwh, sunHours: sun_h, systemFactor: factor })).toBeCloseTo(
      panels,
      6,
    );
    expect(batterySize(need)).toBeCloseTo(battery, 6);
    expect(batterySize({ ...need, depth: null })).toBeNull();
  },
);

test('a compressor starts on three to six times its running current', () => {
  expect(STARTING_CURRENT).toEqual({ least: 3, most: 6 }); // common practice, no source
});
