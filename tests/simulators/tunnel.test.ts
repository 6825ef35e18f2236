import fc from 'fast-check';
import { expect, test } from 'vitest';
import { humidityOf, saturationPressure } from '../../simulators/moistAir.ts';
import { scenario } from '../../simulators/scenario.ts';
import { airNodeHeat, firstTunnel, nextTunnel, type Tunnel } from '../../simulators/tunnel.ts';
import type { Weather } from '../../simulators/weather.ts';

const kinds = Object.entries(scenario.plan.tunnels).map(([name, { kind }]) => ({ name, kind }));

function weatherOf(temperature: number, humidity: number, sun: number, wind = 2): Weather {
  const vapour = (saturationPressure(temperature) * humidity) / 100;
  const rest = { t: 0, cloud: 0.5, rain: 0, grass: temperature, soil: temperature, dewPoint: 0 };
  return { ...rest, temperature, vapour, humidity, sun, wind, skyLoss: sun > 0 ? 40 : 70 };
}

const anyWeather = fc
  .record({
    temperature: fc.double({ min: -5, max: 28, noNaN: true }),
    humidity: fc.double({ min: 25, max: 100, noNaN: true }),
    sun: fc.double({ min: 0, max: 900, noNaN: true }),
    wind: fc.double({ min: 0.2, max: 12, noNaN: true }),
  })
  .map(({ temperature, humidity, sun, wind }) => weatherOf(temperature, humidity, sun, wind));
const anyOpen = fc.double({ min: 0, max: 1, noNaN: true });
const anyDay = fc.array(fc.tuple(anyWeather, anyOpen), { minLength: 2, maxLength: 40 });

test.for(kinds)('in $name heat in, heat out and heat kept balance', ({ kind }) => {
  fc.assert(
    fc.property(anyDay, (day) => {
      let last: Tunnel = firstTunnel(day[0]?.[0] ?? weatherOf(10, 80, 0));
      for (const [weather, open] of day) {
        const next = nextTunnel(last, kind, weather, open);
        const kept =
          airNodeHeat(kind) * (next.temperature - last.temperature) +
          kind.ground * (next.ground - last.ground);
        const { sunHeat, filmHeat, ventHeat, skyHeat, latentHeat, deepHeat } = next.flows;
        const came = sunHeat + filmHeat + ventHeat + skyHeat + latentHeat + deepHeat;
        expect(Math.abs(kept - came)).toBeLessThan(1); // J/m², of hundreds of thousands
        last = next;
      }
    }),
  );
});

test.for(kinds)('in $name water given off, vented, condensed and kept balances', ({ kind }) => {
  fc.assert(
    fc.property(anyDay, (day) => {
      let last: Tunnel = firstTunnel(day[0]?.[0] ?? weatherOf(10, 80, 0));
      for (const [weather, open] of day) {
        const next = nextTunnel(last, kind, weather, open);
        const kept = kind.height * (next.vapour - last.vapour);
        const { transpired, vented, onFilm, onLeaves } = next.flows;
        expect(Math.abs(kept - (transpired + vented + onFilm + onLeaves))).toBeLessThan(1e-9);
        expect(onFilm).toBeLessThanOrEqual(0);
        expect(onLeaves).toBeLessThanOrEqual(0);
        expect(next.humidity).toBeLessThanOrEqual(100);
        last = next;
      }
    }),
  );
});

function settle(name: string, weather: Weather, open: number): Tunnel {
  const kind = scenario.plan.tunnels[name]?.kind;
  if (!kind) throw new Error(`Expected a tunnel of the scenario, got ${name}`);
  let tunnel = firstTunnel(weather);
  for (let step = 0; step < 36; step++) tunnel = nextTunnel(tunnel, kind, weather, open);
  return tunnel;
}

const sunny = weatherOf(12, 55, 650);

test('in sun a shut tunnel is warmer than an open one, and an open one warmer than outside', () => {
  const shut = settle('sun-house', sunny, 0).temperature;
  const open = settle('sun-house', sunny, 1).temperature;
  expect(shut).toBeGreaterThan(open + 3);
  expect(open).toBeGreaterThan(12);
});

test('the sunny tunnel is the hottest, the airy one cooler, the shaded one coolest', () => {
  const [sun, long, hollow] = ['sun-house', 'long-house', 'hollow-house'].map(
    (name) => settle(name, sunny, 0.5).temperature,
  );
  expect(sun).toBeGreaterThan((long ?? 0) + 1);
  expect(long).toBeGreaterThan((hollow ?? 0) + 1);
});

test('the tunnel that lacks air stays wet while it is shut and dries once it is opened', () => {
  const dull = weatherOf(10, 70, 150);
  expect(settle('hollow-house', dull, 0).humidity).toBeGreaterThan(90);
  expect(settle('hollow-house', dull, 1).humidity).toBeLessThan(85);
});

test('the humidity a tunnel reports is that of its vapour', () => {
  const { temperature, dewPoint, humidity } = settle('long-house', sunny, 0.3);
  expect(humidityOf(saturationPressure(dewPoint), temperature)).toBeCloseTo(humidity, 6);
});
