/** A clock that stood at `start` when the wall clock stood at `real` (ms), and runs `speed` times as fast. */
export type SimulatedClock = {
  readonly start: number;
  readonly real: number;
  readonly speed: number;
  now(): number;
  /** Wall-clock ms from now until the simulated instant `t`; 0 when it has passed. */
  waitFor(t: number): number;
};

export function createSimulatedClock(start: number, real: number, speed: number): SimulatedClock {
  const now = () => start + (Date.now() - real) * speed;
  return { start, real, speed, now, waitFor: (t) => Math.max(0, (t - now()) / speed) };
}

/** `START_ISO/REAL_MS/SPEED`, the form that the hub's `--clock` takes too. */
export function parseClock(text: string): SimulatedClock {
  const [iso = '', real = '', speed = ''] = text.split('/');
  const start = Date.parse(iso);
  if (Number.isNaN(start) || !/^\d+$/.test(real) || !(Number(speed) > 0)) {
    throw new Error(`Expected --clock as START_ISO/REAL_MS/SPEED, got ${text}`);
  }
  return createSimulatedClock(start, Number(real), Number(speed));
}

export const clockText = ({
  start,
  real,
  speed,
}: Pick<SimulatedClock, 'start' | 'real' | 'speed'>) =>
  `${new Date(start).toISOString()}/${real}/${speed}`;
