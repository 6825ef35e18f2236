import { signal } from '@preact/signals';

// Light, dark, or as the device is set: chosen on this device and kept on it. early.ts reads the same
// name before anything is drawn, so that no page ever flashes in the other.

const KEY = 'dewpost scheme';

export const schemes = ['device', 'light', 'dark'] as const;
export type Scheme = (typeof schemes)[number];

const isScheme = (found: string | null): found is Scheme =>
  schemes.some((scheme) => scheme === found);

function read(): Scheme {
  try {
    const found = localStorage.getItem(KEY);
    return isScheme(found) ? found : 'device';
  } catch {
    return 'device'; // storage that is forbidden: the choice lasts as long as the page
  }
}

export const scheme = signal<Scheme>(read());

export function chooseScheme(chosen: Scheme): void {
  scheme.value = chosen;
  try {
    localStorage.setItem(KEY, chosen);
  } catch {
    // It still holds here, until the page is opened again.
  }
  dispatchEvent(new CustomEvent(KEY, { detail: chosen }));
}
