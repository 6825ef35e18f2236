import { computed, signal } from '@preact/signals';

// The hub's clock, carried on between its pulses. In a demonstration it differs from the browser's
// and runs faster, so no age on the screen is worked out from Date.now() itself.

export type Anchor = {
  /** The hub's clock, ms since 1970 … */
  readonly hub: number;
  /** … when this browser's clock said: */
  readonly wall: number;
  readonly speed: number;
};

export const hubTime = ({ hub, wall, speed }: Anchor, wallNow: number) =>
  hub + Math.max(0, wallNow - wall) * speed;

const anchor = signal<Anchor | null>(null);
const wallNow = signal(Date.now());

/** The hub's time now; null until the hub, or what was kept of it, has told. */
export const now = computed(() => (anchor.value ? hubTime(anchor.value, wallNow.value) : null));

/** The hub's time read this instant, for a tap that needs it exactly. */
export const exactNow = () => (anchor.value ? hubTime(anchor.value, Date.now()) : Date.now());

export function setClock(hub: number, speed: number, wall = Date.now()): void {
  anchor.value = { hub, wall, speed };
  wallNow.value = Date.now();
}

/** Moves `now` on. Each second is often enough for a fast clock, every five for a true one. */
export function startClock(): void {
  let beats = 0;
  setInterval(() => {
    beats += 1;
    const fast = (anchor.peek()?.speed ?? 1) > 1;
    if (!document.hidden && (fast || beats % 5 === 0)) wallNow.value = Date.now();
  }, 1000);
  document.addEventListener('visibilitychange', () => {
    wallNow.value = Date.now();
  });
}
