import type { FarmFacts } from '../hub/contract/index.ts';
import {
  chooseUnits,
  isLanguage,
  type LanguageCode,
  nearestLanguage,
  type UnitsTold,
} from '../hub/words/page.ts';
import { peekEarly } from './earlyAnswer.ts';

// How this farm reads: its language and units, kept in the browser, so that a page opens in them at
// once, also while the hub is away.

export type Reading = { readonly language: LanguageCode; readonly units: UnitsTold };

const KEY = 'dewpost reading';
const PATIENCE = 3_000; // ms for the first question of a new browser; ours

const readingOf = (told: Pick<FarmFacts, 'language' | 'units'>): Reading => ({
  language: isLanguage(told.language) ? told.language : 'en',
  units: told.units,
});

function kept(): Reading | null {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Partial<Reading> | null;
    return found && isLanguage(found.language)
      ? { language: found.language, units: found.units ?? {} }
      : null;
  } catch {
    return null;
  }
}

function keep(reading: Reading): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(reading));
    return true;
  } catch {
    return false; // A browser that keeps nothing asks the hub each time.
  }
}

/** What the hub says to somebody who is signed in; null before that, and while it is away. */
async function asked(): Promise<Reading | null> {
  const patience = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE, null));
  const first = await Promise.race([peekEarly(), patience]);
  return first?.farm ? readingOf(first.farm) : null;
}

let now: Reading = { language: 'en', units: {} };

/** Before anything is drawn: as this browser knows it, as the hub says, or as the browser is set. */
export async function firstReading(): Promise<Reading> {
  if (typeof document === 'undefined') return now;
  const known = kept();
  const told = known ?? (await asked());
  if (known === null && told !== null) keep(told);
  now = told ?? { language: nearestLanguage(navigator.languages), units: {} };
  chooseUnits(now.units);
  document.documentElement.lang = now.language;
  return now;
}

/** The farm reads otherwise than this page was drawn: drawn anew, from the top. */
export function heedReading(farm: FarmFacts): FarmFacts {
  const next = readingOf(farm);
  const same = JSON.stringify(next) === JSON.stringify(now);
  // Where nothing can be kept the page would be drawn anew for ever.
  if (!same && keep(next)) location.reload();
  return farm;
}
