import type { Quantity } from '../contract/index.ts';

/** One MQTT message, from whichever broker. */
export type Message = {
  readonly topic: string;
  readonly payload: Uint8Array;
  /** When the hub got it, ms since 1970. */
  readonly receivedAt: number;
  /** The sender marked it as sent before (DUP). */
  readonly again: boolean;
  /** The name its sender signed in with; absent or null where nobody has to. */
  readonly from?: string | null;
};

/** One value as a message form read it, in the contract's unit of its quantity. */
export type RawReading = {
  readonly probe: string;
  readonly quantity: Quantity | 'battery-voltage';
  /** ms since 1970; null when the message gives no time. */
  readonly t: number | null;
  readonly value: number;
};

export type Reason =
  | 'not-json'
  | 'not-a-number'
  | 'unknown-form'
  | 'unknown-quantity'
  | 'unknown-unit'
  | 'bad-name'
  | 'bad-time'
  | 'missing-field'
  | 'too-long'
  | 'not-used'
  | 'not-its-own'
  | 'not-allowed'
  | 'bad-packet'
  | 'sign-in'
  | 'too-many-probes'
  | 'out-of-range'
  | 'clock'
  | 'spike'
  | 'impossible-rate'
  | 'stuck';

export type Refused = {
  /** The probe, or the topic where no probe could be named. */
  readonly source: string;
  readonly reason: Reason;
  /** Field, value and what was expected. */
  readonly sentence: string;
};

/** One value ahead, as somebody foretells it. */
export type Foretold = {
  /** Whose forecast it is. */
  readonly source: string;
  readonly quantity: RawReading['quantity'];
  readonly t: number;
  readonly value: number;
};

export type Parsed = {
  readonly readings: readonly RawReading[];
  readonly refused: readonly Refused[];
  readonly ahead?: readonly Foretold[];
};

/** Thrown inside a message form; the sentence names the field, its value and what was expected. */
export class Refusal extends Error {
  readonly reason: Reason;
  constructor(reason: Reason, sentence: string) {
    super(sentence);
    this.reason = reason;
  }
}
