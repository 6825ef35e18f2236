/** How much of the hub one client of the broker inside may take. */
export type Limits = {
  /** Bytes of one message; a longer one is refused and counted, its bytes are never kept. */
  readonly payload: number;
  /** Packets a second, over time, and at once. More wait in the sender's own socket. */
  readonly perSecond: number;
  readonly atOnce: number;
  /** Connections of signed-in clients, in all and under one name. */
  readonly clients: number;
  readonly perUser: number;
  /** Connections that have not signed in yet. */
  readonly waiting: number;
  /** Topic filters of one client. */
  readonly filters: number;
  /** ms for the whole CONNECT, and for any other packet from its first byte to its last. */
  readonly connectWithin: number;
  readonly packetWithin: number;
};

// All ours, from no source. Sixty probes are a large garden; one that was cut off for two weeks sends
// its 4,000 readings of a quantity in under half a minute. 128 kB hold 2,000 SenML records, a day and
// more of one probe; every client at its longest message at once is then 64 MB.
export const LIMITS: Limits = {
  payload: 128 * 1024,
  perSecond: 200,
  atOnce: 400,
  clients: 512,
  perUser: 8,
  waiting: 64,
  filters: 32,
  connectWithin: 10_000, // a slow radio takes a few seconds
  packetWithin: 30_000,
};
