import type { Input } from '../answer.ts';
import { dayAt } from '../heat/index.ts';
import type { Instant } from '../units.ts';

// How the value of a fact came about, for the page that shows it: which function, and what was put
// into it. A number without this can't be checked by hand.

export type How = {
  /** Exported function of rules/; null for what a probe measured or somebody told. */
  readonly method: string | null;
  readonly inputs: readonly Input[];
};

const SECOND = 1000; // ms
const DAY_SECONDS = 86_400;

/** The facts of a look are nearly all of one day, and writing a day costs more than the rest. */
let written = { day: Number.NaN, as: '' };

/** `2025-06-01T04:05:30Z`, to the second before; rules have no clock and so no calendar of the machine. */
export function iso(t: Instant): string {
  const second = Math.floor(t / SECOND);
  const day = Math.floor(second / DAY_SECONDS);
  const rest = second - day * DAY_SECONDS;
  const two = (n: number) => String(n).padStart(2, '0');
  const clock = [Math.floor(rest / 3600), Math.floor(rest / 60) % 60, rest % 60].map(two);
  if (written.day !== day) written = { day, as: dayAt(day) };
  return `${written.as}T${clock.join(':')}Z`;
}

/** One number put in. Three decimals: enough to work the value out again, fewer than doubles carry. */
export const put = (what: string, value: number | string | null, unit = ''): Input => ({
  what,
  value: typeof value === 'number' ? Math.round(value * 1000) / 1000 : value,
  unit,
});
export const when = (what: string, t: Instant | null): Input => ({
  what,
  value: t === null ? null : iso(t),
  unit: '',
});

/** Worked out by `method` from these. */
export const by = (method: string, ...inputs: readonly Input[]): How => ({ method, inputs });

/** As a probe said it at that time. */
export const readBy = (probe: string, t: Instant): How => ({
  method: null,
  inputs: [put('probe', probe), when('read-at', t)],
});

/** As somebody said it; nothing was worked out. */
export const told: How = { method: null, inputs: [] };
