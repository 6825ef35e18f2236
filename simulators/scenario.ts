import type { WeatherPiece } from './airMass.ts';
import type { CoolRoomEvent } from './coolRoomDay.ts';
import { demoFaults, demoProbes } from './demoProbes.ts';
import type { Fault } from './faults.ts';
import type { ProbePlan } from './probe.ts';
import type { TunnelKind } from './tunnel.ts';
import type { FarmPlan } from './world.ts';

// The demonstration's story: a wet spell ends at noon, the evening is clear and cold, strawberries
// are in flower, basil stands in open tunnels and the generator has stopped. Invented throughout.

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const at = (iso: string) => Date.parse(iso);

export type Scenario = {
  /** The moment the demonstration begins. */
  readonly start: number;
  /** Where its history begins. */
  readonly historyFrom: number;
  readonly seed: number;
  readonly plan: FarmPlan;
  readonly probes: readonly ProbePlan[];
  readonly faults: readonly Fault[];
};

const start = at('2026-04-23T15:40:00+01:00');

/** High pressure: nights to learn from. */
const clear = { cloud: 0.05, depression: 6.5, rain: 0 };

const weather: readonly WeatherPiece[] = [
  {
    ...{ from: at('2026-02-13T12:00:00Z'), to: at('2026-02-16T09:00:00Z') },
    ...{ ...clear, temperature: 3.2, wind: 1.4 },
  },
  {
    ...{ from: at('2026-03-11T12:00:00Z'), to: at('2026-03-14T09:00:00Z') },
    ...{ ...clear, temperature: 3.6, wind: 1.2 },
  },
  {
    ...{ from: at('2026-04-04T12:00:00Z'), to: at('2026-04-07T09:00:00Z') },
    ...{ ...clear, temperature: 4.4, wind: 1.3 },
  },
  // Drizzle, an afternoon's break, and drizzle again through the night.
  {
    ...{ from: at('2026-04-20T18:00:00Z'), to: at('2026-04-22T08:00:00Z') },
    ...{ temperature: 9.4, depression: 0.8, cloud: 0.97, wind: 2.6, rain: 0.12, fade: 2 },
  },
  {
    ...{ from: at('2026-04-22T10:00:00Z'), to: at('2026-04-22T17:00:00Z') },
    ...{ temperature: 8.6, depression: 5, cloud: 0.45, wind: 4, rain: 0, fade: 1.5 },
  },
  {
    ...{ from: at('2026-04-22T19:30:00Z'), to: at('2026-04-23T08:30:00Z') },
    ...{ temperature: 7.6, depression: 0.7, cloud: 0.97, wind: 2.4, rain: 0.12, fade: 1.5 },
  },
  { from: at('2026-04-23T03:00:00Z'), to: at('2026-04-23T07:00:00Z'), rain: 1.2, fade: 1 },
  // Then cold, dry air from the north clears the sky; its wind drops before evening.
  {
    ...{ from: at('2026-04-23T09:30:00Z'), to: at('2026-04-23T15:00:00Z') },
    ...{ temperature: 2.4, depression: 9.5, cloud: 0.12, wind: 6.5, rain: 0, fade: 1 },
  },
  {
    ...{ from: at('2026-04-23T16:30:00Z'), to: at('2026-04-24T09:00:00Z') },
    ...{ temperature: 5.9, depression: 9.5, cloud: 0.03, wind: 1, rain: 0, fade: 1.5 },
  },
  {
    ...{ from: at('2026-04-24T12:00:00Z'), to: at('2026-04-25T16:00:00Z') },
    ...{ temperature: 7.2, depression: 4.5, cloud: 0.35, wind: 2.2, rain: 0, fade: 4 },
  },
];

/** Local time on a day before the story; the farm's clock is an hour ahead of UTC since 29 March. */
const before = (days: number, hour: number) =>
  at('2026-04-23T00:00:00+01:00') - days * 24 * HOUR + hour * HOUR;

/** Each night the generator stands for some hours, never to the minute alike. */
const nights: readonly CoolRoomEvent[] = Array.from({ length: 24 }, (_, i) => {
  const days = 20 - i; // the last three nights lie ahead of the story's beginning
  const early = ((i * 7) % 5) * 4 * MINUTE;
  const late = ((i * 11) % 7) * 3 * MINUTE;
  return { kind: 'outage', from: before(days, 0.25) + early, to: before(days, 4.5) + late };
});

/** Mild days on which it was serviced with the door shut: what the room's hold-over is learned from. */
const services: readonly CoolRoomEvent[] = [26, 24, 10, 2].flatMap((days): CoolRoomEvent[] => [
  { kind: 'outage', from: before(days, 12.75), to: before(days, 17.25) },
  { kind: 'door-shut', from: before(days, 12.5), to: before(days, 17.25) },
]);

const coolRoom: readonly CoolRoomEvent[] = [
  ...nights,
  ...services,
  // Nothing else goes wrong with the supply while somebody watches.
  { kind: 'supply', from: start - 12 * HOUR, to: start + 72 * HOUR },
  { kind: 'outage', from: start - 70 * MINUTE, to: start + 45 * MINUTE },
  { kind: 'door-shut', from: start - 70 * MINUTE, to: start + 60 * MINUTE },
  // Half past eleven: earlier, after a night of frost, an open door would let no warmth in.
  {
    ...{ kind: 'door-ajar', share: 0.8 },
    ...{ from: at('2026-04-24T11:30:00+01:00'), to: at('2026-04-24T12:10:00+01:00') },
  },
];

// Common to all three: single film, trays on benches over bare ground.
const house: TunnelKind = {
  ...{ height: 2.4, film: 1.5, filmU: 6.5, transmission: 0.62, inside: 9000, ground: 320_000 },
  ...{ leak: 0.7, vents: 6, ventsPerWind: 3, damp: 0.0012, dampSun: 0.004 },
};

const plan: FarmPlan = {
  ...{ lat: 51.8, lon: -7, zone: 'Europe/Dublin', epoch: at('2025-11-20T00:00:00Z') },
  weather,
  tunnels: {
    // Airy: vents on both sides, water barrels along the wall.
    'long-house': {
      kind: { ...house, vents: 10, ventsPerWind: 5, ground: 520_000, leak: 1 },
      habit: { opens: 8.5, shuts: 18.5, worthIt: 11, always: 0.06, forgets: 0.06, leftOpen: 0.05 },
      vents: [{ from: at('2026-04-23T10:30:00Z'), to: at('2026-04-23T17:45:00Z'), open: 0.4 }],
    },
    // Hot: in full sun, sheltered, with one small vent.
    'sun-house': {
      kind: { ...house, transmission: 0.74, vents: 3, ventsPerWind: 1.2, damp: 0.001 },
      habit: { opens: 9.2, shuts: 18, worthIt: 14, always: 0, forgets: 0.12, leftOpen: 0.03 },
      vents: [{ from: at('2026-04-23T11:30:00Z'), to: at('2026-04-23T17:30:00Z'), open: 1 }],
    },
    // Lacks air: in a hollow under trees, old film gone green, trays watered from above.
    'hollow-house': {
      kind: { ...house, transmission: 0.16, leak: 0.25, damp: 0.005, dampSun: 0.004, vents: 8 },
      habit: { opens: 10.2, shuts: 17, worthIt: 8, always: 0, forgets: 0.25, leftOpen: 0.02 },
      vents: [
        { from: at('2026-04-22T09:30:00Z'), to: at('2026-04-22T17:00:00Z'), open: 1 },
        { from: at('2026-04-22T17:00:00Z'), to: at('2026-04-23T15:30:00Z'), open: 0 },
        { from: at('2026-04-23T15:30:00Z'), to: at('2026-04-23T17:30:00Z'), open: 1 },
      ],
    },
  },
  patches: {
    'south-patch': {
      kind: { low: 0.55, hollow: 0.3 },
      covered: [
        // Forced under cloches until the first flowers, then only on nights that looked cold.
        { from: at('2026-01-28T12:00:00Z'), to: at('2026-04-02T09:00:00Z') },
        { from: at('2026-04-08T17:00:00Z'), to: at('2026-04-09T08:30:00Z') },
        { from: at('2026-04-13T17:00:00Z'), to: at('2026-04-14T08:30:00Z') },
        { from: at('2026-04-23T18:00:00Z'), to: at('2026-04-24T08:00:00Z') },
      ],
    },
    'far-patch': { kind: { low: 0.6, hollow: 1 }, covered: [] },
  },
  coolRoom,
};

export const scenario: Scenario = {
  start,
  historyFrom: at('2025-12-01T00:00:00Z'),
  seed: 7,
  plan,
  probes: demoProbes(start),
  faults: demoFaults(start),
};
