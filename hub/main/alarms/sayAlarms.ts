import { type Publish, SIREN, sendAlarm } from '../../alarms/index.ts';
import type { Core } from '../core.ts';

/** How often messages about alarms are planned and tried again, ms of the hub's clock. Ours. */
const TELL_EVERY = 5000;
const FASTEST = 250; // ms of a wall clock

/** Alarms on MQTT, the siren's topic, and messages to people. */
export function sayAlarms({ alarms, feed, clock }: Core, publish: Publish) {
  let siren: boolean | null = null;
  const saySiren = () => {
    const on = alarms.sounds();
    if (on !== siren) void publish(SIREN, on ? 'on' : 'off', { retain: true });
    siren = on;
  };
  const work = () => {
    alarms.work();
    saySiren();
  };
  feed.on('alarm', (alarm) => void sendAlarm(publish, alarm));
  feed.on('alarm', () => setImmediate(work));
  feed.on('alarms', () => setImmediate(saySiren));
  let timer: NodeJS.Timeout | undefined;
  return {
    begin() {
      alarms.begin();
      timer = setInterval(work, Math.max(FASTEST, TELL_EVERY / clock.speed));
    },
    /** To a broker that may be a new one. */
    siren() {
      siren = null;
      saySiren();
    },
    end() {
      clearInterval(timer);
      return alarms.end();
    },
  };
}
