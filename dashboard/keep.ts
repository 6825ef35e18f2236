import type { FarmFacts, Strips, Today, Who } from '../hub/contract/index.ts';

// The last thing the hub said about today, kept in the browser, so that opening the page while the
// hub is away shows it with its age instead of nothing.

const KEY = 'dewpost today';
const FORM = 2; // changes when the shape of what is kept does; older ones are then dropped

export type Kept = {
  readonly form: typeof FORM;
  /** Who was here. */
  readonly who: Who;
  readonly farm: FarmFacts;
  readonly today: Today;
  readonly strips: Strips | null;
  /** The hub's clock and this browser's when it was kept, ms. */
  readonly hub: number;
  readonly wall: number;
};

export function keep(kept: Omit<Kept, 'form'>): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ form: FORM, ...kept }));
  } catch {
    // A full or forbidden storage costs the offline copy and nothing else.
  }
}

export function kept(): Kept | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    if (typeof found !== 'object' || found === null) return null;
    return 'form' in found && found.form === FORM ? (found as Kept) : null;
  } catch {
    return null;
  }
}

export function forget(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept then.
  }
}
