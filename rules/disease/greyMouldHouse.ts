import type { Bounds } from '../wetness/index.ts';
import { type DayOfWeek, type Disease, fact, type Verdict, verdictOf } from './judgement.ts';
import { riskRange } from './riskClass.ts';

// Yunis, Shtienberg, Elad & Mahrer 1994, Crop Protection 13:99: unheated cucumber houses. Carrying
// it over to other crops is ours.
export const OUTBREAK_WET_HOURS = 7; // h a day
const NIGHT_ABOVE = 9.5; // h of 9 to 21 °C between 18:00 and 08:00
const DAYS_NEEDED = 5; // known, of the last seven; ours
const KNOWN = 12; // h of a day that must be known for it to count; ours
const DAY = 24; // h

const SOURCE =
  'Botrytis cinerea in unheated houses; Yunis, Shtienberg, Elad & Mahrer 1994, Crop Protection 13:99';

const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Least and most mean of the week's known days; null with fewer than five. */
export function weekMeans(
  week: readonly DayOfWeek[],
): { readonly wetHours: Bounds; readonly nightHours: Bounds } | null {
  const days = week.filter(({ unknownHours }) => DAY - unknownHours >= KNOWN);
  if (days.length < DAYS_NEEDED) return null;
  const bounds = (of: (day: DayOfWeek) => readonly [number, number]): Bounds => [
    mean(days.map((day) => of(day)[0])),
    mean(days.map((day) => of(day)[1])),
  ];
  return { wetHours: bounds((d) => d.wetHours), nightHours: bounds((d) => d.nightHours) };
}

/** Whether a week was outbreak weather: over 7 wet hours a day and over 9.5 mild night hours. */
export function outbreakWeek(wetHours: Bounds, nightHours: Bounds): Verdict {
  const held = (end: 0 | 1) => wetHours[end] > OUTBREAK_WET_HOURS && nightHours[end] > NIGHT_ABOVE;
  return verdictOf(held(0), held(1));
}

/** Grey mould in an unheated house: a warning from the last week's weather in it. */
export const greyMouldHouse: Disease = Object.freeze<Disease>({
  id: 'grey-mould-house',
  of: 'grey-mould',
  name: 'Grey mould in an unheated house',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: ({ week }) => {
    const means = weekMeans(week);
    if (means === null) {
      return { verdict: 'unknown', risk: 'unknown', because: [], missing: ['five-known-days'] };
    }
    const { wetHours, nightHours } = means;
    const verdict = outbreakWeek(wetHours, nightHours);
    return {
      verdict,
      // Ours: a week's weather is a reason to look, not one infection.
      risk: riskRange(verdict === 'yes' ? 'watch' : 'quiet', verdict === 'no' ? 'quiet' : 'watch'),
      because: [
        fact('wet-hours-a-day-least', wetHours[0], 'h', OUTBREAK_WET_HOURS, SOURCE),
        fact('wet-hours-a-day-most', wetHours[1], 'h', OUTBREAK_WET_HOURS, SOURCE),
        fact('mild-night-hours-least', nightHours[0], 'h', NIGHT_ABOVE, SOURCE),
        fact('mild-night-hours-most', nightHours[1], 'h', NIGHT_ABOVE, SOURCE),
      ],
      missing: verdict === 'unknown' ? ['leaf-wetness-history'] : [],
    };
  },
});
