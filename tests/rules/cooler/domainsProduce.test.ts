import { expect, test } from 'vitest';
import {
  activationOf,
  exposureClock,
  handbookRate,
  humidityProbePasses,
  keepingLife,
  lifeUsed,
  lifeUsedCooling,
  meanKineticTemperature,
  q10From,
  q10Rate,
  remainingLife,
  remainingLifePiecewise,
  respirationHeat,
  saltHumidity,
  saltHumidityFit,
  sellFirst,
} from '../../../rules/cooler/index.ts';
import { instant } from '../../../rules/units.ts';
import { type Domain, holdsDomain } from './holdsDomain.ts';

// Bounds as the docstrings give them, ours but where a line says otherwise. Produce is looked at
// from 0 to 35 °C: a Q10 is not valid in frozen produce, nor where heat kills it; and a Q10 below 1
// would age faster in the cold.
const produce = (name: string, what: string, call: Domain[5]): Domain =>
  [name, what, 0, 35, '°C', call] as const;
const q10 = (name: string, call: Domain[5]): Domain => [name, 'q10', 1, 10, '', call] as const;
const positive = (name: string, what: string, call: Domain[5]): Domain =>
  [name, what, Number.MIN_VALUE, Number.MAX_VALUE, '', call] as const;

const crop = { reference: 0, q10: 3, life: 10 };
const cooling = { from: 20, room: 3, produceTauHours: 2, hours: 24, q10: 3, reference: 0 };
const lettuce = { ...crop, freezesAt: -0.2, chillMin: null };
const lot = { id: 'a', daysLeft: 4, kilograms: 5, pricePerKilogram: 6, storedAt: instant(0) };
const clock = { cutAt: instant(0), now: instant(60_000), limit: 5, clockMinutes: 120 } as const;

const domains: readonly Domain[] = [
  positive('q10From', 'rate', (rate) => q10From(rate, 0, 2, 10)),
  positive('q10From, second', 'rate', (rate) => q10From(2, 0, rate, 10)),
  ['q10From', 'temperature', -10, 60, '°C', (first) => q10From(1, first, 2, 10)],
  ['q10From, second', 'temperature', -10, 60, '°C', (second) => q10From(1, 0, 2, second)],
  produce('q10Rate', 'temperature', (temperature) => q10Rate(temperature, 3)),
  produce('q10Rate', 'reference temperature', (reference) => q10Rate(5, 3, reference)),
  q10('q10Rate', (value) => q10Rate(5, value)),
  // The handbook's own decades end there.
  ['handbookRate', 'temperature', 0, 40, '°C', (temperature) => handbookRate(temperature)],
  ['lifeUsed', 'hours', 0, 100_000, 'h', (hours) => lifeUsed([{ hours, temperature: 5 }], () => 1)],
  produce('lifeUsed', 'produce temperature', (temperature) =>
    lifeUsed([{ hours: 1, temperature }], () => 1),
  ),
  produce('remainingLife', 'reference temperature', (reference) =>
    remainingLife({ ...crop, reference }, []),
  ),
  q10('remainingLife', (value) => remainingLife({ ...crop, q10: value }, [])),
  // Ten years: longer than anything fresh keeps.
  ['remainingLife', 'life', 0, 3650, 'd', (life) => remainingLife({ ...crop, life }, [])],
  produce('remainingLife', 'temperature it will lie at', (at) => remainingLife(crop, [], at)),
  produce('remainingLifePiecewise', 'reference temperature', (reference) =>
    remainingLifePiecewise({ ...crop, reference }, []),
  ),
  [
    'remainingLifePiecewise',
    'life',
    0,
    3650,
    'd',
    (life) => remainingLifePiecewise({ ...crop, life }, []),
  ],
  // Hours of which nothing is known are held to the same bound as those of a known temperature.
  [
    'keepingLife',
    'hours',
    0,
    100_000,
    'h',
    (hours) => keepingLife(lettuce, [{ hours, temperature: null }], { at: 3 }),
  ],
  produce('lifeUsedCooling', 'produce temperature', (from) =>
    lifeUsedCooling({ ...cooling, from }),
  ),
  produce('lifeUsedCooling', 'room temperature', (room) => lifeUsedCooling({ ...cooling, room })),
  [
    'lifeUsedCooling',
    'time constant',
    0.01,
    10_000,
    'h',
    (produceTauHours) => lifeUsedCooling({ ...cooling, produceTauHours }),
  ],
  ['lifeUsedCooling', 'hours', 0, 10_000, 'h', (hours) => lifeUsedCooling({ ...cooling, hours })],
  q10('lifeUsedCooling', (value) => lifeUsedCooling({ ...cooling, q10: value })),
  // Far more than produce breathes: past it the unit is wrong.
  [
    'respirationHeat',
    'respiration rate',
    0,
    2000,
    'mg CO2/(kg h)',
    (rate) => respirationHeat(rate, 1),
  ],
  ['respirationHeat', 'mass', 0, 1_000_000, 'kg', (mass) => respirationHeat(1, mass)],
  [
    'meanKineticTemperature',
    'activation energy over the gas constant',
    100,
    100_000,
    'K',
    (activation) => meanKineticTemperature([3, 5], undefined, activation),
  ],
  [
    'meanKineticTemperature',
    'temperature',
    -60,
    80,
    '°C',
    (value) => meanKineticTemperature([value]),
  ],
  positive('meanKineticTemperature', 'weight', (weight) => meanKineticTemperature([3], [weight])),
  q10('activationOf', (value) => activationOf(value, 0)),
  // Ten kelvin less than the most elsewhere, since the rate is compared with 10 K warmer.
  ['activationOf', 'temperature', -60, 70, '°C', (from) => activationOf(3, from)],
  // A year between sales, ten years of life, a thousand tonnes.
  ['sellFirst', 'days to the next sale', 0, 365, 'd', (days) => sellFirst([lot], days)],
  ['sellFirst', 'life left', 0, 3650, 'd', (daysLeft) => sellFirst([{ ...lot, daysLeft }], 2)],
  ['sellFirst', 'weight', 0, 1_000_000, 'kg', (kilograms) => sellFirst([{ ...lot, kilograms }], 2)],
  [
    'sellFirst',
    'price',
    0,
    1_000_000,
    'per kg',
    (pricePerKilogram) => sellFirst([{ ...lot, pricePerKilogram }], 2),
  ],
  [
    'exposureClock',
    'clock',
    0,
    100_000,
    'min',
    (clockMinutes) => exposureClock([], { ...clock, clockMinutes, of: 'air' }),
  ],
  // The table ends at 5 and 25 °C; the fit may go 10 K further.
  ['saltHumidity', 'temperature', 5, 25, '°C', (temperature) => saltHumidity('NaCl', temperature)],
  [
    'saltHumidityFit',
    'temperature',
    5,
    35,
    '°C',
    (temperature) => saltHumidityFit('NaCl', temperature),
  ],
  [
    'humidityProbePasses',
    'temperature',
    5,
    25,
    '°C',
    (temperature) => humidityProbePasses('NaCl', 75, temperature),
  ],
  // A wet capacitive probe shows a little over 100 %.
  [
    'humidityProbePasses',
    'relative humidity',
    0,
    110,
    '%',
    (shown) => humidityProbePasses('NaCl', shown, 20),
  ],
];

test.for(domains)('%s takes its %s from %s to %s %s and nothing past it', holdsDomain);

test('a clock cannot run from a time to come', () => {
  expect(() => exposureClock([], { ...clock, cutAt: instant(60_001), of: 'air' })).toThrow(
    'Expected time since cutting from 0 to 9007199254740991 ms, got -1',
  );
});
