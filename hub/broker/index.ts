export { type EmbeddedOptions, startEmbedded } from './embedded.ts';
export { connectExisting, type ExistingOptions } from './existing.ts';
export { type Acknowledge, type Arrived, type Broker, HEARTBEAT, type Receive } from './types.ts';
