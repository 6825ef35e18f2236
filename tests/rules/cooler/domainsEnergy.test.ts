import { expect, test } from 'vitest';
import {
  batterySize,
  carbonDioxide,
  counterDifference,
  dailyEnergy,
  dutyFromPower,
  energyIndex,
  energyLine,
  fuelUse,
  heatCapacity,
  heatLossCoefficient,
  litresPerHour,
  solarPower,
} from '../../../rules/cooler/index.ts';
import { type Domain, holdsDomain } from './holdsDomain.ts';

// Bounds as the docstrings give them, ours but where a line says otherwise: wide enough for any
// garden's machines, so that a number past them is a wrong unit or a slip of the finger.
const day = { kilowattHours: 5, outside: 20, inside: 3 };
const step = { from: 1, to: 2, hours: 1, modulus: 100, most: 10 };
const panels = { kilowattHours: 5, sunHours: 3, systemFactor: 0.75 };
const battery = { kilowattHours: 5, days: 2, depth: 0.5, efficiency: 0.9 };

const domains: readonly Domain[] = [
  [
    'dutyFromPower',
    'power when running',
    Number.MIN_VALUE,
    1_000_000,
    '',
    (running) => dutyFromPower([], { running, gapMaxMinutes: 6 }),
  ],
  ['dailyEnergy', 'power when running', 0, 1_000_000, 'W', (watts) => dailyEnergy(watts, 0.5)],
  ['dailyEnergy', 'running share', 0, 1, '', (share) => dailyEnergy(500, share)],
  [
    'energyIndex',
    'energy',
    0,
    1_000_000,
    'kWh',
    (kilowattHours) => energyIndex({ ...day, kilowattHours }),
  ],
  [
    'energyIndex',
    'outside temperature',
    -60,
    80,
    '°C',
    (outside) => energyIndex({ ...day, outside }),
  ],
  ['energyIndex', 'inside temperature', -60, 80, '°C', (inside) => energyIndex({ ...day, inside })],
  [
    'energyLine',
    'outside less inside',
    -60,
    80,
    'K',
    (gap) => energyLine([{ gap, kilowattHours: 5 }]),
  ],
  [
    'energyLine',
    'energy',
    0,
    1_000_000,
    'kWh',
    (kilowattHours) => energyLine([{ gap: 8, kilowattHours }]),
  ],
  // Thermoelectric boxes come near 0.3, no room's compressor to 10. From memory.
  [
    'heatLossCoefficient',
    'coefficient of performance',
    0.3,
    10,
    '',
    (cop) => heatLossCoefficient({ ...day, cop }),
  ],
  [
    'heatCapacity',
    'heat loss coefficient',
    0,
    100_000,
    'W/K',
    (coefficient) => heatCapacity(coefficient, 6),
  ],
  [
    'counterDifference',
    'hours between readings',
    -1e9,
    1e9,
    'h',
    (hours) => counterDifference({ ...step, hours }),
  ],
  ['counterDifference', 'counter', 0, 100, '', (from) => counterDifference({ ...step, from })],
  ['counterDifference, second', 'counter', 0, 100, '', (to) => counterDifference({ ...step, to })],
  ['litresPerHour', 'fuel', 0, 100_000, 'L', (litres) => litresPerHour(litres, 5)],
  ['litresPerHour', 'hours', 0, 100_000, 'h', (hours) => litresPerHour(5, hours)],
  ['fuelUse', 'fuel', 0, 100_000, 'L', (litres) => fuelUse(litres, 5)],
  ['fuelUse', 'energy', 0, 1_000_000, 'kWh', (kilowattHours) => fuelUse(5, kilowattHours)],
  ['carbonDioxide', 'fuel', 0, 1_000_000, 'L', (litres) => carbonDioxide(litres, 'petrol')],
  [
    'solarPower',
    'energy',
    0,
    100_000,
    'kWh',
    (kilowattHours) => solarPower({ ...panels, kilowattHours }),
  ],
  // Peak-sun hours: no day on the ground brings 12 kWh to a square metre. From memory.
  ['solarPower', 'peak-sun hours', 0.1, 12, 'h', (sunHours) => solarPower({ ...panels, sunHours })],
  // Shares: under a tenth left over, the number is a slip.
  [
    'solarPower',
    'system factor',
    0.1,
    1,
    '',
    (systemFactor) => solarPower({ ...panels, systemFactor }),
  ],
  [
    'batterySize',
    'energy',
    0,
    100_000,
    'kWh',
    (kilowattHours) => batterySize({ ...battery, kilowattHours }),
  ],
  ['batterySize', 'days', 0, 60, 'd', (days) => batterySize({ ...battery, days })],
  ['batterySize', 'depth of discharge', 0.1, 1, '', (depth) => batterySize({ ...battery, depth })],
  [
    'batterySize',
    'efficiency',
    0.1,
    1,
    '',
    (efficiency) => batterySize({ ...battery, efficiency }),
  ],
];

test.for(domains)('%s takes its %s from %s to %s %s and nothing past it', holdsDomain);

test('a modulus of a counter and the most it can count are above 0', () => {
  for (const name of ['modulus', 'most'] as const) {
    const zero = { ...step, from: 0, to: 0, [name]: 0 };
    const what = name === 'most' ? 'most per hour' : name;
    expect(() => counterDifference(zero)).toThrow(`Expected ${what} from `);
  }
});
