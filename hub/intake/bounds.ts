import type { RawReading } from './message.ts';

/** What a reading of a quantity may look like. Values in the unit it is kept in. */
export type Bounds = {
  /** Outside this no probe means it: the reading is kept and doubted. */
  readonly from: number;
  readonly to: number;
  /** A change of more than this within five minutes waits to be confirmed by the next reading. */
  readonly jump: number | null;
  /** Per minute; faster than this the next two must confirm it. */
  readonly rate: number | null;
  /** Hours of one identical value after which it is stuck, if elsewhere things moved. */
  readonly stuckHours: number | null;
};

const open = { jump: null, rate: null, stuckHours: null };

// Temperature: -40..60 °C covers any garden; a probe's own error codes (85.000 after power-on,
// -127, 127.94) lie outside it. Jump 5 K or 20 %RH in 5 min, stuck 6 h, rate 8 K/min in air: common
// practice, no source. Humidity: probes overshoot when damp, up to 105 is read as 100 (ours).
export const bounds: Readonly<Record<RawReading['quantity'], Bounds>> = {
  temperature: { from: -40, to: 60, jump: 5, rate: 8, stuckHours: 6 },
  'soil-temperature': { from: -30, to: 60, jump: 3, rate: 3, stuckHours: null },
  humidity: { from: 1, to: 105, jump: 20, rate: null, stuckHours: 6 },
  'soil-moisture': { from: 0, to: 100, ...open },
  'leaf-wetness': { from: 0, to: 100, ...open },
  light: { from: 0, to: 200_000, ...open },
  rain: { from: 0, to: 500, ...open },
  wind: { from: 0, to: 75, ...open },
  power: { from: 0, to: 20_000, ...open },
  energy: { from: 0, to: 1e9, ...open },
  door: { from: 0, to: 1, ...open },
  battery: { from: 0, to: 100, ...open },
  'battery-voltage': { from: 0, to: 60, ...open },
};

/** Above this a humidity probe at rest is not stuck: the air is full. */
export const SATURATED = 99; // %RH, ours
