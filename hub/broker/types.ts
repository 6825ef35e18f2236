/** One message as it came over the wire. */
export type Arrived = {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly again: boolean;
  /** Under which name its sender signed in; null where nobody has to, or another broker asked. */
  readonly from: string | null;
};
/** Called once; an error means "not kept": the sender is not acknowledged and sends again. */
export type Acknowledge = (error?: Error | null) => void;
export type Receive = (message: Arrived, acknowledge: Acknowledge) => void;
/** Told of what is not let through: by whom (a name, else an address), why, and in one sentence. */
export type Refuse = (source: string, reason: RefuseReason, sentence: string) => void;
export type RefuseReason = 'too-long' | 'not-allowed' | 'bad-packet' | 'sign-in';

export type Broker = {
  /** Where probes reach it, for people to read. */
  readonly address: string;
  publish(topic: string, payload: string, options?: { retain?: boolean }): Promise<void>;
  /** From now on these topics are read, too; the broker inside reads all. */
  listen(filters: readonly string[]): void;
  /** Whether messages can come in now. */
  connected(): boolean;
  close(): Promise<void>;
};

/** The hub's own topics: nobody else publishes there. */
export const OWN_TOPICS = 'dewpost/';
export const HEARTBEAT = 'dewpost/heartbeat';
