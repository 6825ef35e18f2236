import { signal } from '@preact/signals';

// The alarm's sound, made by the browser itself. A browser lets a page sound only after a tap.

/** `off`: nobody asked for it. `waiting`: asked for, the browser wants a tap first. */
export type Sound = 'off' | 'waiting' | 'on' | 'none';
export const sound = signal<Sound>('off');
let sounded = 0;

const KEY = 'dewpost sound';
const EVERY = 3_000; // ms from one call to the next
/** Two tones, a fourth apart, each of this length: unlike a telephone, and carried through a door. Ours. */
const TONES = [880, 1174.66]; // Hz
const LENGTH = 0.35; // s
const LOUDNESS = 0.6;

let context: AudioContext | null = null;
let calling: ReturnType<typeof setInterval> | undefined;

const wished = () => {
  try {
    return localStorage.getItem(KEY) === 'on';
  } catch {
    return false; // a browser that keeps nothing is asked each time
  }
};
function wish(on: boolean): void {
  try {
    localStorage.setItem(KEY, on ? 'on' : 'off');
  } catch {
    // Not kept: asked again next time.
  }
}

function tell(): void {
  if (typeof AudioContext === 'undefined') sound.value = 'none';
  else if (!wished()) sound.value = 'off';
  else sound.value = context?.state === 'running' ? 'on' : 'waiting';
}

async function open(): Promise<void> {
  if (typeof AudioContext === 'undefined') return tell();
  if (context === null) {
    context = new AudioContext();
    context.addEventListener('statechange', tell);
  }
  // Without a tap before it this stays open until there is one: nobody may wait for it.
  await Promise.race([context.resume(), new Promise((resolve) => setTimeout(resolve, 300))]);
  tell();
}

/** From a tap: the page may sound from now on. */
export async function allowSound(): Promise<void> {
  wish(true);
  await open();
}

export async function stopSound(): Promise<void> {
  wish(false);
  await context?.suspend();
  tell();
}

/** Where sound was asked for before, the first tap anywhere lets it through. */
export function startSound(): void {
  tell();
  const first = () => {
    if (wished() && context?.state !== 'running') open();
  };
  for (const tap of ['pointerdown', 'keydown']) addEventListener(tap, first, { passive: true });
  if (wished()) open();
}

/** Sounds again and again until it is told to stop. */
export function callOut(on: boolean): void {
  if (!on) {
    clearInterval(calling);
    calling = undefined;
    return;
  }
  if (calling !== undefined) return;
  call();
  calling = setInterval(call, EVERY);
}

/** From a tap: sounds once, so that somebody hears how loud it is. @returns whether it could. */
export async function soundOnce(): Promise<boolean> {
  await allowSound();
  if (context?.state !== 'running') return false;
  call();
  return true;
}

function call(): void {
  if (context?.state !== 'running' || !wished()) return;
  for (const [i, tone] of TONES.entries()) {
    const from = context.currentTime + i * LENGTH;
    const voice = context.createOscillator();
    const gain = context.createGain();
    voice.type = 'square'; // rich in overtones: heard where a pure tone is lost in a fan's hum
    voice.frequency.value = tone;
    gain.gain.setValueAtTime(0, from);
    gain.gain.linearRampToValueAtTime(LOUDNESS, from + 0.02);
    gain.gain.setValueAtTime(LOUDNESS, from + LENGTH - 0.05);
    gain.gain.linearRampToValueAtTime(0, from + LENGTH);
    voice.connect(gain).connect(context.destination);
    voice.start(from);
    voice.stop(from + LENGTH);
  }
  // How often it has sounded, for whoever wants to be sure that it does.
  sounded += 1;
  document.body.dataset.sounded = String(sounded);
}
