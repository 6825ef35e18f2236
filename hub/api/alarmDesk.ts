import type {
  AlarmEvent,
  Channel,
  Delivery,
  KeptSettings,
  SeenAlarm,
  Sent,
  Silence,
} from '../alarms/index.ts';
import type { AlarmTestRow } from '../store/index.ts';

export type AlarmState = {
  readonly events: readonly AlarmEvent[];
  readonly silences: readonly Silence[];
  readonly settings: KeptSettings;
  readonly messages: readonly Delivery[];
  readonly tests: readonly AlarmTestRow[];
};
export type AlarmSecrets = {
  readonly mailPassword?: string | null | undefined;
  readonly webhookSecret?: string | null | undefined;
};
/** A way that does not work. Times in ms since 1970. */
export type Trouble = {
  readonly person: string;
  readonly channel: Channel | 'alive';
  readonly since: number;
  readonly words: string;
};

/** What pages may ask about alarms and have done. */
export type AlarmDesk = {
  readonly now: () => AlarmState;
  /** Alarms raised in that time, folded, newest first. */
  readonly between: (
    from: number,
    to: number,
  ) => { readonly alarms: readonly SeenAlarm[] } & AlarmState;
  readonly settings: () => KeptSettings;
  readonly hasSecret: (name: keyof AlarmSecrets) => boolean;
  readonly change: (settings: KeptSettings, secrets: AlarmSecrets, who: string) => void;
  /** @returns false when there is no such alarm. */
  readonly see: (id: string, was: 'right' | 'false' | null, who: string) => boolean;
  readonly silence: (silence: Omit<Silence, 'id' | 'from'>) => Silence;
  /** @returns false when there is no such silence now. */
  readonly endSilence: (id: string, who: string) => boolean;
  /** Sends one test now. @returns what became of it; undefined when there is no such way. */
  readonly test: (person: string, channel: Channel, who: string) => Promise<Sent | undefined>;
  /** A test alarm to everybody, to be answered by somebody. */
  readonly rehearse: (who: string) => void;
  readonly troubles: () => readonly Trouble[];
};
