import { effect, signal } from '@preact/signals';
import type {
  AlarmLog,
  AlarmsNow,
  ChangeAlarmSettings,
  MakeSilence,
  ShownAlarmSettings,
  Tested,
} from '../hub/contract/index.ts';
import { ask, Refusal } from './ask.ts';
import * as state from './state.ts';

// Alarms as the hub last said them, and what a tap asks it to do about them.

export const alarmsNow = signal<AlarmsNow | null>(null);
export const alarmSettings = signal<ShownAlarmSettings | null>(null);
export const alarmLog = signal<AlarmLog | null>(null);
export const alarmFault = signal<string | undefined>(undefined);

const SOON = 300; // ms; ours: an upset raises several at once
const BETWEEN_LOOKS = 10_000; // ms; a demonstration looks many times a second
let waiting: ReturnType<typeof setTimeout> | undefined;
let askedAt = 0;
/** By address: what one did not give is not made good by another. */
const faults = new Map<string, string>();

async function take<Shape>(path: string, write: (facts: Shape) => void): Promise<void> {
  try {
    write(await ask<Shape>(path));
    faults.delete(path);
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) state.signInNeeded.value = true;
    faults.set(path, error instanceof Error ? error.message : String(error));
  }
  alarmFault.value = [...faults.values()][0];
}

export const refreshAlarms = () => {
  askedAt = Date.now();
  return take<AlarmsNow>('/api/alarms', (facts) => {
    alarmsNow.value = facts;
  });
};
export const refreshAlarmSettings = () =>
  take<ShownAlarmSettings>('/api/alarms/settings', (facts) => {
    alarmSettings.value = facts;
  });
export const refreshAlarmLog = () =>
  take<AlarmLog>('/api/alarms/log', (facts) => {
    alarmLog.value = facts;
  });

function refreshIn(wait: number): void {
  if (waiting !== undefined) return;
  waiting = setTimeout(() => {
    waiting = undefined;
    refreshAlarms();
  }, wait);
}

/** Keeps the alarms true on every page: asked for when the hub is there, and when it says they changed. */
export function startAlarms(): void {
  effect(() => {
    const changes = state.alarmChanges.value;
    const up = state.link.value.state === 'up';
    if (state.farm.value === null) {
      alarmsNow.value = null;
      alarmSettings.value = null;
      alarmLog.value = null;
    } else if (up || changes > 0) refreshIn(SOON);
  });
  effect(() => {
    const looked = state.looks.value > 0;
    if (looked && Date.now() - askedAt > BETWEEN_LOOKS) refreshIn(SOON);
  });
}

/** @throws Refusal with a sentence for the screen */
export async function seeAlarm(id: string, was?: 'right' | 'false'): Promise<void> {
  const command = was === undefined ? {} : { was };
  alarmsNow.value = await ask<AlarmsNow>(`/api/alarms/${encodeURIComponent(id)}/seen`, command);
}

/** @throws Refusal with a sentence for the screen */
export async function makeSilence(silence: MakeSilence): Promise<void> {
  await ask('/api/alarms/silences', silence);
  await refreshAlarms();
}

/** @throws Refusal with a sentence for the screen */
export async function endSilence(id: string): Promise<void> {
  alarmsNow.value = await ask<AlarmsNow>(`/api/alarms/silences/${encodeURIComponent(id)}/end`, {});
}

/** @throws Refusal with a sentence for the screen */
export async function changeAlarmSettings(change: ChangeAlarmSettings): Promise<void> {
  alarmSettings.value = await ask<ShownAlarmSettings>('/api/alarms/settings', change);
  await refreshAlarms();
}

/** @throws Refusal with a sentence for the screen */
export const testChannel = (person: string, channel: 'email' | 'webhook') =>
  ask<Tested>('/api/alarms/test', { person, channel });

/** @throws Refusal with a sentence for the screen */
export const rehearse = () => ask('/api/alarms/rehearsal', {});
