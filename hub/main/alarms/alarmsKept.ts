import {
  type Delivery,
  eventsOf,
  type KeptSettings,
  type SeenAlarm,
  type Silence,
  usualSettings,
} from '../../alarms/index.ts';
import type { AlarmState } from '../../api/index.ts';
import type { Store } from '../../store/index.ts';

const DAY = 86_400_000; // ms
/** Alarms that cleared this long ago may still chatter, fold others, or be told as over. Ours. */
const RECENT = 2 * DAY;
const TESTS_SHOWN = 400 * DAY;

const NOTHING_SET: KeptSettings = { ...usualSettings, address: null, mail: null, alive: null };

/** What the store keeps of alarms, in the terms of hub/alarms. */
export function keepAlarms(store: Store) {
  const kept = () => store.alarmsOut; // another one after mending
  const settings = (): KeptSettings => {
    const body = kept().settings();
    return body === undefined ? NOTHING_SET : { ...NOTHING_SET, ...JSON.parse(body) };
  };
  const silences = (now: number): Silence[] =>
    kept()
      .silencesAt(now)
      .map((body) => JSON.parse(body) as Silence);
  const messagesSince = (t: number) => kept().messages(t) as Delivery[];
  const since = (alarms: readonly SeenAlarm[], now: number) =>
    alarms.reduce((earliest, alarm) => Math.min(earliest, alarm.since), now - RECENT);
  return {
    settings,
    putSettings: (next: KeptSettings) => kept().putSettings(JSON.stringify(next)),
    silences,
    putSilence: (silence: Silence) =>
      kept().putSilence(silence.id, JSON.stringify(silence), silence.from, silence.until),
    /** All that matters now: for the plan, the page and the siren alike. */
    state(now: number): AlarmState & { readonly alarms: readonly SeenAlarm[] } {
      const alarms: SeenAlarm[] = kept().current(now - RECENT);
      return {
        alarms,
        events: eventsOf(alarms, now),
        silences: silences(now),
        settings: settings(),
        messages: messagesSince(since(alarms, now)),
        tests: kept().tests(now - RECENT),
      };
    },
    between(from: number, to: number, now: number) {
      const alarms: SeenAlarm[] = kept().between(from, to);
      return {
        alarms,
        events: eventsOf(alarms, now),
        silences: silences(now),
        settings: settings(),
        messages: messagesSince(Math.min(from, now - RECENT)),
        tests: kept()
          .tests(from)
          .filter(({ at }) => at < to),
      };
    },
    lastTestAt: (now: number) =>
      kept()
        .tests(now - TESTS_SHOWN)
        .find(({ madeBy }) => madeBy === 'hub')?.at ?? null,
  };
}
export type AlarmsKept = ReturnType<typeof keepAlarms>;
