import { expect, test } from 'vitest';
import {
  chillingWarning,
  coolingTime,
  fitProduceTimeConstant,
  fitTimeConstant,
  halfCoolingTime,
  heatCapacity,
  iceStore,
  moveProduceBy,
  offTimeAllowed,
  produceTemperature,
  produceTime,
  sevenEighthsCoolingTime,
  timeAbove,
  timeConstantNeeded,
  warmedTo,
  warmingTime,
  warmingUnder,
} from '../../../rules/cooler/index.ts';
import { HOUR, instant, minutes } from '../../../rules/units.ts';
import { type Domain, holdsDomain } from './holdsDomain.ts';

// Bounds as the docstrings give them, ours, from no source. -60..80 °C holds every outside air and
// every room: past it the unit is wrong or the probe broken. Time constants from 0.01 to 10,000 h
// hold every real one: a crate of berries takes an hour or two, a full insulated room some days.
const temperature = (name: string, what: string, call: Domain[5]): Domain =>
  [name, what, -60, 80, '°C', call] as const;
const timeConstant = (name: string, call: Domain[5]): Domain =>
  [name, 'time constant', 0.01, 10_000, 'h', call] as const;

const warming = { inside: 3, outside: 20, target: 5, tauHours: 6 };
const warmed = { inside: 3, outside: 20, tauHours: 6, after: 2 };
const crate = { produce: 20, room: 3, target: 5, produceTauHours: 2 };
const stopped = { outside: 20, air: 3, produce: 3, tauHours: 6, produceTauHours: 2 };
const limited = { ...stopped, limit: 5 };
const off = { start: 3, limit: 5, outside: 20, tauHours: 6 };
const night = { start: 3, limit: 5, outside: 20, hours: 8 };
const ice = { coefficient: 20, outside: 20, inside: 3, hours: 8 };
const series = [
  { t: instant(0), value: 20 },
  { t: instant(HOUR), value: 20 },
];
const under = { inside: 3, target: 5, tauHours: 6 };
const hourly = (values: readonly number[]) =>
  values.map((value, hour) => ({ t: instant(hour * HOUR), value }));

const domains: readonly Domain[] = [
  temperature('warmingTime', 'inside temperature', (inside) => warmingTime({ ...warming, inside })),
  temperature('warmingTime', 'outside temperature', (outside) =>
    warmingTime({ ...warming, outside }),
  ),
  temperature('warmingTime', 'target temperature', (target) => warmingTime({ ...warming, target })),
  timeConstant('warmingTime', (tauHours) => warmingTime({ ...warming, tauHours })),
  temperature('warmedTo', 'inside temperature', (inside) => warmedTo({ ...warmed, inside })),
  temperature('warmedTo', 'outside temperature', (outside) => warmedTo({ ...warmed, outside })),
  timeConstant('warmedTo', (tauHours) => warmedTo({ ...warmed, tauHours })),
  // 100,000 h are eleven years.
  ['warmedTo', 'hours after the stop', 0, 100_000, 'h', (after) => warmedTo({ ...warmed, after })],
  temperature('warmingUnder', 'inside temperature', (inside) =>
    warmingUnder(series, { ...under, inside }),
  ),
  temperature('warmingUnder', 'target temperature', (target) =>
    warmingUnder(series, { ...under, target }),
  ),
  timeConstant('warmingUnder', (tauHours) => warmingUnder(series, { ...under, tauHours })),
  temperature('coolingTime', 'produce temperature', (produce) =>
    coolingTime({ ...crate, produce }),
  ),
  temperature('coolingTime', 'room temperature', (room) => coolingTime({ ...crate, room })),
  temperature('coolingTime', 'target temperature', (target) => coolingTime({ ...crate, target })),
  timeConstant('coolingTime', (produceTauHours) => coolingTime({ ...crate, produceTauHours })),
  timeConstant('halfCoolingTime', (tau) => halfCoolingTime(tau)),
  timeConstant('sevenEighthsCoolingTime', (tau) => sevenEighthsCoolingTime(tau)),
  timeConstant('heatCapacity', (tau) => heatCapacity(20, tau)),
  temperature('produceTemperature', 'outside temperature', (outside) =>
    produceTemperature({ ...stopped, outside }, 2),
  ),
  temperature('produceTemperature', 'air temperature', (air) =>
    produceTemperature({ ...stopped, air }, 2),
  ),
  temperature('produceTemperature', 'produce temperature', (produce) =>
    produceTemperature({ ...stopped, produce }, 2),
  ),
  timeConstant('produceTemperature', (tauHours) => produceTemperature({ ...stopped, tauHours }, 2)),
  timeConstant('produceTemperature of a crate', (produceTauHours) =>
    produceTemperature({ ...stopped, produceTauHours }, 2),
  ),
  [
    'produceTemperature',
    'hours after the stop',
    0,
    100_000,
    'h',
    (after) => produceTemperature(stopped, after),
  ],
  temperature('produceTime', 'limit', (limit) => produceTime({ ...limited, limit })),
  temperature('produceTime', 'outside temperature', (outside) =>
    produceTime({ ...limited, outside }),
  ),
  temperature('produceTime', 'air temperature', (air) => produceTime({ ...limited, air })),
  temperature('produceTime', 'produce temperature', (produce) =>
    produceTime({ ...limited, produce }),
  ),
  // A day to carry everything out.
  [
    'moveProduceBy',
    'handling time',
    0,
    1440,
    'min',
    (handling) => moveProduceBy(instant(0), limited, [], minutes(handling)),
  ],
  temperature('offTimeAllowed', 'inside temperature', (start) => offTimeAllowed({ ...off, start })),
  temperature('timeConstantNeeded', 'start temperature', (start) =>
    timeConstantNeeded({ ...night, start }),
  ),
  temperature('timeConstantNeeded', 'limit', (limit) => timeConstantNeeded({ ...night, limit })),
  temperature('timeConstantNeeded', 'outside temperature', (outside) =>
    timeConstantNeeded({ ...night, outside }),
  ),
  // 10,000 h without cooling is over a year.
  [
    'timeConstantNeeded',
    'hours',
    0,
    10_000,
    'h',
    (hours) => timeConstantNeeded({ ...night, hours }),
  ],
  // 100 kW/K is far more than any walk-in room loses.
  [
    'iceStore',
    'heat loss coefficient',
    0,
    100_000,
    'W/K',
    (coefficient) => iceStore({ ...ice, coefficient }),
  ],
  temperature('iceStore', 'outside temperature', (outside) => iceStore({ ...ice, outside })),
  temperature('iceStore', 'inside temperature', (inside) => iceStore({ ...ice, inside })),
  ['iceStore', 'hours', 0, 10_000, 'h', (hours) => iceStore({ ...ice, hours })],
  temperature('chillingWarning', 'chilling limit', (limit) => chillingWarning(limit, 10)),
  temperature('chillingWarning', 'room temperature', (room) => chillingWarning(12, room)),
  temperature('timeAbove', 'limit', (limit) => timeAbove(series, limit)),
  [
    'timeAbove',
    'longest time between readings',
    0,
    Number.MAX_VALUE,
    'min',
    (gapMaxMinutes) => timeAbove(series, 5, { gapMaxMinutes }),
  ],
];

test.for(domains)('%s takes its %s from %s to %s %s and nothing past it', holdsDomain);

// The other end of these can't be met: readings have to lie between it and the far end.
test('a fit of a time constant takes -60 to 80 °C around it and between', () => {
  const cold = hourly([-59.9, -59.8, -59.75]);
  const hot = hourly([79.9, 79.8, 79.75]);
  expect(() => fitTimeConstant(cold, 80)).not.toThrow();
  expect(() => fitProduceTimeConstant(hot, -60)).not.toThrow();
  const outside = (value: number) => `Expected outside temperature from -60 to 80 °C, got ${value}`;
  const room = (value: number) => `Expected room temperature from -60 to 80 °C, got ${value}`;
  for (const past of [-60.6, 80.8]) {
    expect(() => fitTimeConstant(cold, past)).toThrow(outside(past));
    expect(() => fitProduceTimeConstant(hot, past)).toThrow(room(past));
  }
  expect(() => fitTimeConstant(hourly([-60.6, -59.8, -59.7]), 20)).toThrow(
    'Expected inside temperature from -60 to below 20 °C, got -60.6',
  );
  expect(() => fitProduceTimeConstant(hourly([80.8, 79.8, 79.7]), 3)).toThrow(
    'Expected produce temperature from above 3 to 80 °C, got 80.8',
  );
});
