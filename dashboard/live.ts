import { batch } from '@preact/signals';
import type {
  EventData,
  EventName,
  Probe,
  RefusedMessages,
  Strips,
  Task,
  Today,
} from '../hub/contract/index.ts';
import { ask, Refusal } from './ask.ts';
import { askFirst } from './askFirst.ts';
import { exactNow, setClock } from './clock.ts';
import { takeEarly } from './earlyAnswer.ts';
import { heardFacts } from './heardFacts.ts';
import { keep, kept } from './keep.ts';
import { withEndedTask, withOpenTask } from './merge.ts';
import { takePulse } from './pulse.ts';
import { sendNow } from './queue/index.ts';
import { heedReading } from './reading.ts';
import { endSession, onlyFor, wantsOut } from './session.ts';
import * as state from './state.ts';

// The one connection to the hub: events and answers in, signals out.

const SILENCE = 25_000; // ms; the hub pulses every 10 s, so two and a half missed
const FIRST_WAIT = 1_000; // ms before trying again, doubled each time …
const LONGEST_WAIT = 30_000; // … up to this
const SAID_FOR = 8_000; // ms the hub's word for an answer stands on the screen
const LEAST_BETWEEN = 3_000; // ms between two requests for today: a demonstration looks many times a second

let source: EventSource | null = null;
let silence: ReturnType<typeof setTimeout> | undefined;
let retry: ReturnType<typeof setTimeout> | undefined;
let fading: ReturnType<typeof setTimeout> | undefined;
let wait = FIRST_WAIT;
/** Counts changes of tasks that were told, so that an older answer is known to be older. */
let taskEvents = 0;

export async function startLive(): Promise<void> {
  const before = kept();
  if (before) {
    batch(() => {
      setClock(before.hub, before.farm.speed, before.wall);
      state.who.value = before.who;
      state.farm.value = before.farm;
      state.today.value = before.today;
      state.strips.value = before.strips;
    });
  }
  await connect();
}

/** Asks who we are and, when we may, for everything; then listens. */
export async function connect(): Promise<void> {
  clearTimeout(retry);
  try {
    if (wantsOut()) {
      await takeEarly(); // asked for as who is to be signed out
      await endSession();
    }
    const { who, farm, today } = await askFirst();
    state.who.value = who;
    await onlyFor(who);
    if (farm === null) {
      state.signInNeeded.value = true;
      return;
    }
    batch(() => {
      state.signInNeeded.value = false;
      state.farm.value = heedReading(farm);
      if (today !== null) state.today.value = today;
      setClock(Date.parse(farm.now), farm.speed);
    });
    // Listening first: what changes while the first answers are on their way comes as an event.
    listen();
    sendNow();
    await Promise.all([refresh(), refreshEnded()]);
  } catch (error) {
    lost(error);
  }
}

function listen(): void {
  source?.close();
  const opened = new EventSource('/api/events');
  source = opened;
  heard();
  opened.addEventListener('open', heard);
  opened.addEventListener('error', () => lost(null));
  for (const name of Object.keys(hearing) as EventName[]) {
    opened.addEventListener(name, (event: MessageEvent<string>) => {
      heard();
      (hearing[name] as (data: unknown) => void)(JSON.parse(event.data));
    });
  }
}

const hearing: { [Name in EventName]: (data: EventData[Name]) => void } = {
  pulse: takePulse,
  looked: () => {
    state.looks.value += 1;
    refreshSoon();
  },
  task: takeTask,
  ...heardFacts,
};

function heard(): void {
  wait = FIRST_WAIT;
  if (state.link.value.state === 'lost') state.returns.value += 1;
  if (state.link.value.state !== 'up') state.link.value = { state: 'up' };
  clearTimeout(silence);
  silence = setTimeout(() => lost(null), SILENCE);
}

export function lost(error: unknown): void {
  source?.close();
  source = null;
  clearTimeout(silence);
  clearTimeout(retry);
  if (error instanceof Refusal && error.status === 401) {
    state.signInNeeded.value = true;
    return;
  }
  if (state.link.value.state !== 'lost')
    state.link.value = { state: 'lost', since: state.farm.value ? exactNow() : null };
  retry = setTimeout(connect, wait * (0.75 + Math.random() / 2)); // spread, so that phones do not all come at once
  wait = Math.min(wait * 2, LONGEST_WAIT);
}

/** A task as the hub has stored it, from an event or as the answer to a command. */
export function takeTask(task: Task): void {
  taskEvents++;
  batch(() => {
    const before = state.today.value;
    if (before) state.today.value = { ...before, tasks: withOpenTask(before.tasks, task) };
    state.ended.value = withEndedTask(state.ended.value, task);
  });
}

/** The hub's word for an answer given on this screen. */
export function takeAnswer(task: Task): void {
  batch(() => {
    takeTask(task);
    state.answered.value = task;
  });
  clearTimeout(fading);
  fading = setTimeout(() => {
    state.answered.value = null;
  }, SAID_FOR);
}

async function take<Shape>(
  name: state.Facts,
  path: string,
  write: (facts: Shape) => void,
): Promise<void> {
  try {
    const facts = await ask<Shape>(path);
    batch(() => {
      write(facts);
      if (state.faults.value[name] !== undefined) {
        const { [name]: _, ...rest } = state.faults.value;
        state.faults.value = rest;
      }
    });
  } catch (error) {
    if (error instanceof Refusal && error.status === 401) state.signInNeeded.value = true;
    const sentence = error instanceof Error ? error.message : String(error);
    state.faults.value = { ...state.faults.value, [name]: sentence };
  }
}

export async function refresh(): Promise<void> {
  const before = taskEvents;
  await Promise.all([
    take<Today>('today', '/api/today', (today) => {
      state.today.value = today;
    }),
    take<Strips>('strips', '/api/strips', (strips) => {
      state.strips.value = strips;
    }),
  ]);
  // The answer may be older than an event that came meanwhile.
  if (before !== taskEvents) refreshSoon();
  const { farm, today, strips, who } = state;
  if (farm.value && today.value && who.value) {
    keep({
      who: who.value,
      farm: farm.value,
      today: today.value,
      strips: strips.value,
      hub: exactNow(),
      wall: Date.now(),
    });
  }
}

async function refreshEnded(): Promise<void> {
  const before = taskEvents;
  await take<Task[]>('ended', '/api/tasks?state=ended', (tasks) => {
    state.ended.value = tasks;
  });
  if (before !== taskEvents) await refreshEnded();
}

let refreshing = false;
let asked = false;
function refreshSoon(): void {
  if (refreshing) {
    asked = true;
    return;
  }
  refreshing = true;
  refresh().finally(() => {
    setTimeout(() => {
      refreshing = false;
      if (asked) {
        asked = false;
        refreshSoon();
      }
    }, LEAST_BETWEEN);
  });
}

export const refreshProbes = () =>
  Promise.all([
    take<Probe[]>('probes', '/api/probes', (probes) => {
      state.probes.value = probes;
    }),
    take<RefusedMessages[]>('probes', '/api/refused', (strangers) => {
      state.strangers.value = strangers;
    }),
  ]);

/** Listens no more. */
export function disconnect(): void {
  source?.close();
  clearTimeout(retry);
  clearTimeout(silence);
}
