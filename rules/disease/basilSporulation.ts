import { type Bounds, hoursWhen, type Window } from '../wetness/index.ts';
import {
  type Circumstances,
  type Disease,
  fact,
  notKnown,
  type Verdict,
  verdictOf,
} from './judgement.ts';
import { riskRange } from './riskClass.ts';

// Cohen & Ben-Naim 2016, PLoS ONE 11:e0155330: 7.5 h in the dark at 95 % and more.
const NEEDED = 7.5; // h
const DAMP = 95; // %
const PROBE_ERROR = 2; // %; ours: 95 % lies within it, so the levels beside it must agree
// The more cautious criterion of the Univ. of Massachusetts fact sheet.
const CAUTIOUS = { hours: 7, above: 85, coldest: 10, hottest: 25.6 } as const;

const SOURCE = 'Peronospora belbahrii; Cohen & Ben-Naim 2016, PLoS ONE 11:e0155330';
const SHEET = 'Univ. of Massachusetts fact sheet, over 85 % at 10 to 25.6 °C for 7 h of the dark';

type Air = Pick<Circumstances, 'air' | 'maxGapMinutes'>;
const settings = ({ maxGapMinutes }: Air) => (maxGapMinutes === undefined ? {} : { maxGapMinutes });

/** Least and most hours of the dark at a humidity or more. */
export const darkDampHours = (known: Air, dark: Window, humidity: number): Bounds =>
  hoursWhen(
    known.air,
    (each) => (each.humidity === null ? null : each.humidity >= humidity),
    dark,
    settings(known),
  );

/**
 * Whether a night let downy mildew sporulate on basil that is already infected: 7.5 h of the dark at
 * 95 % or more. Because 95 % lies inside the error of a probe, the answer has to be the same at 93,
 * 95 and 97 %; else it is unknown.
 */
export function sporulationNight(known: Air, dark: Window): Verdict {
  return agreed(known, dark, darkDampHours(known, dark, DAMP));
}

function agreed(known: Air, dark: Window, dampHours: Bounds): Verdict {
  const enough = ([least, most]: Bounds) => verdictOf(least >= NEEDED, most >= NEEDED);
  const verdict = enough(dampHours);
  const beside = [DAMP - PROBE_ERROR, DAMP + PROBE_ERROR];
  const same = beside.every((level) => enough(darkDampHours(known, dark, level)) === verdict);
  return same ? verdict : 'unknown';
}

/** The same by the more cautious criterion. */
export function cautiousSporulationNight(known: Air, dark: Window): Verdict {
  const suits = ({ temperature: t, humidity: rh }: Circumstances['air'][number]) =>
    t === null || rh === null
      ? null
      : rh > CAUTIOUS.above && t >= CAUTIOUS.coldest && t <= CAUTIOUS.hottest;
  const [least, most] = hoursWhen(known.air, suits, dark, settings(known));
  return verdictOf(least >= CAUTIOUS.hours, most >= CAUTIOUS.hours);
}

/** A night on which infected basil could make spores; nothing where no leaf is infected. */
export const basilSporulation: Disease = Object.freeze<Disease>({
  id: 'basil-downy-mildew-sporulation',
  of: 'basil-downy-mildew',
  name: 'Basil downy mildew, sporulation night',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: [5, 10], // of what the spores go on to infect
  judge: (known) => {
    if (known.dark === null) return notKnown('sun-times');
    const dampHours = darkDampHours(known, known.dark, DAMP);
    const [least, most] = dampHours;
    const verdict = agreed(known, known.dark, dampHours);
    const cautious = cautiousSporulationNight(known, known.dark);
    return {
      verdict,
      // Ours: never an event, because it takes infected leaves; quiet only by the cautious sheet too.
      risk: riskRange(
        verdict === 'yes' ? 'watch' : 'quiet',
        verdict === 'no' && cautious === 'no' ? 'quiet' : 'watch',
      ),
      because: [
        fact('dark-damp-hours-least', least, 'h', NEEDED, SOURCE),
        fact('dark-damp-hours-most', most, 'h', NEEDED, SOURCE),
        fact('cautious-sporulation', cautious, '', 'yes', SHEET),
        fact('only-where-infected', null, '', null, SOURCE),
      ],
      missing: verdict === 'unknown' ? ['night-humidity'] : [],
    };
  },
});
