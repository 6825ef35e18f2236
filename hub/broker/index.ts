export { type EmbeddedOptions, startEmbedded, type Verdict } from './embedded.ts';
export { connectExisting, type ExistingOptions } from './existing.ts';
export type { Rights } from './ruleBy.ts';
export {
  type Acknowledge,
  type Arrived,
  type Broker,
  HEARTBEAT,
  type Receive,
  type Refuse,
} from './types.ts';
