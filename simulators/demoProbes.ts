import type { Fault } from './faults.ts';
import type { ProbePlan } from './probe.ts';
import type { WorldNow } from './world.ts';

// The probes of the demonstration farm (simulators/farm.yaml says where each one hangs), and what
// is wrong with some of them.

const HOUR = 3_600_000;
const at = (iso: string) => Date.parse(iso);

const inTunnel = (name: string) => (now: WorldNow) => {
  const { temperature, humidity } = now.tunnels[name] ?? { temperature: 0, humidity: 0 };
  return { temperature, humidity };
};
/** A second spot of the same air: under the ridge it is warmer in sun and a little drier. */
const underRidge = (name: string) => (now: WorldNow) => {
  const { temperature, humidity } = inTunnel(name)(now);
  const lift = 0.004 * now.weather.sun;
  return { temperature: temperature + lift, humidity: humidity * (1 - 0.02 * lift) };
};

const cells = (full: number, perDay: number) =>
  ({ unit: 'V', full, fullAt: at('2025-11-20T00:00:00Z'), perDay }) as const;
const charge = (full: number, perDay: number) =>
  ({ unit: '%', full, fullAt: at('2025-11-20T00:00:00Z'), perDay }) as const;

/** A one-wire thermometer's step: 12 bits, 0.0625 °C (data sheet of the DS18B20). */
const oneWire = { temperature: 0.0625 };

export function demoProbes(start: number): readonly ProbePlan[] {
  // Random holes stop a day before the story begins; what is missing then is missing on purpose.
  const holes = { share: 0.02, until: start - 24 * HOUR };
  const usual = { every: 5, drops: 0.004, holes };
  return [
    {
      ...{ ...usual, id: 'long-canopy', form: 'senml-base', battery: cells(3.1, 0.0009) },
      sense: inTunnel('long-house'),
    },
    {
      ...{ ...usual, id: 'sun-canopy', form: 'senml-fahrenheit', battery: cells(3.08, 0.001) },
      sense: inTunnel('sun-house'),
      clockError: 25,
    },
    {
      ...{ ...usual, id: 'sun-ridge', form: 'senml-base', battery: charge(88, 0.1) },
      sense: underRidge('sun-house'),
    },
    {
      ...{ ...usual, id: 'hollow-canopy', form: 'senml-absolute', battery: cells(3.05, 0.0008) },
      sense: inTunnel('hollow-house'),
    },
    {
      ...{ ...usual, id: 'south-flower', form: 'senml-ago', battery: cells(3.12, 0.0011) },
      sense: ({ patches: { 'south-patch': patch } }) =>
        patch ? { temperature: patch.flower, humidity: patch.humidity } : {},
    },
    {
      ...{ ...usual, id: 'south-cloche', form: 'senml-base', battery: charge(93, 0.56) },
      sense: ({ patches: { 'south-patch': patch } }) =>
        patch ? { temperature: patch.underCover, humidity: patch.underCoverHumidity } : {},
      drops: 0.02, // weak cells, weak radio
    },
    {
      ...{ ...usual, id: 'far-flower', form: 'bare', steps: oneWire },
      sense: ({ patches: { 'far-patch': patch } }) => (patch ? { temperature: patch.flower } : {}),
    },
    {
      ...{ ...usual, id: 'mast', form: 'mast', battery: cells(4.1, 0.0004) },
      sense: ({ weather, rainTotal: rain }) => {
        const { temperature, humidity, wind } = weather;
        return { temperature, humidity, wind, rain };
      },
    },
    {
      ...{ ...usual, id: 'grass', form: 'stamped', steps: oneWire },
      sense: ({ weather }) => ({ temperature: weather.grass }),
    },
    {
      // Fine enough for weeks that the room's cycle and its defrosts show.
      ...{ ...usual, id: 'cool-air', form: 'senml-base', every: 2, fine: { every: 2, days: 20 } },
      sense: ({ coolRoom }) => ({ temperature: coolRoom.air }),
    },
    {
      ...{ ...usual, id: 'cool-product', form: 'senml-absolute', battery: cells(3.05, 0.0009) },
      sense: ({ coolRoom }) => ({ temperature: coolRoom.produce }),
    },
    {
      // On its own battery, so it can say that the supply is gone.
      ...{ ...usual, id: 'cool-unit', form: 'senml-base', every: 1, battery: charge(97, 0.02) },
      fine: { every: 2, days: 20 },
      sense: ({ coolRoom: { power, energy, door } }) => ({ power, energy, door: door > 0 ? 1 : 0 }),
    },
    {
      // In nobody's farm file: a probe somebody hung beside the first one and forgot to place.
      ...{ ...usual, id: 'spare-7', form: 'senml-base', since: start - 12 * 24 * HOUR },
      sense: (now) => {
        const { temperature, humidity } = inTunnel('long-house')(now);
        return { temperature: temperature + 0.3, humidity: humidity - 1.5 };
      },
    },
  ];
}

/** Faults in the season behind, and the ones the story needs. */
export function demoFaults(start: number): readonly Fault[] {
  const always = { from: 0, to: start + 366 * 24 * HOUR };
  const canopy = 'long-canopy';
  return [
    // 85 °C is what this chip says after a hiccup of its supply (data sheet: power-on value).
    ...['far-flower', 'grass'].map((probe): Fault => {
      const after = {
        kind: 'nonsense',
        quantity: 'temperature',
        value: 85,
        share: 0.0003,
      } as const;
      return { probe, ...always, ...after };
    }),
    {
      probe: 'sun-ridge',
      ...always,
      kind: 'nonsense',
      quantity: 'humidity',
      value: 0,
      share: 2e-4,
    },
    {
      ...{ probe: 'hollow-canopy', kind: 'stuck', quantity: 'humidity', value: 99.9 },
      ...{ from: at('2026-01-17T03:00:00Z'), to: at('2026-01-19T15:00:00Z') },
    },
    {
      ...{ probe: canopy, kind: 'clock', seconds: 7 * 3600 },
      ...{ from: at('2026-02-11T09:00:00Z'), to: at('2026-02-11T16:00:00Z') },
    },
    {
      ...{ probe: 'mast', kind: 'silent' },
      ...{ from: at('2026-03-03T21:00:00Z'), to: at('2026-03-05T10:00:00Z') },
    },
    { probe: 'sun-ridge', kind: 'silent', from: start - 7.5 * HOUR, to: start + 20 * HOUR },
  ];
}
