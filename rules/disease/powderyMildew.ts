import { type Bounds, hoursWhen, type Window } from '../wetness/index.ts';
import { type Circumstances, type Disease, fact } from './judgement.ts';

// Amsalem et al. 2006, Eur. J. Plant Pathol. 114:283: germination best at 15-25 °C with humidity
// over 75 but under 98 %.
const COLDEST = 15; // °C
const HOTTEST = 25; // °C
const DRIEST = 75; // %, itself not counted
const DAMPEST = 98; // %, itself not counted: free water harms it

const SOURCE = 'Podosphaera aphanis; Amsalem et al. 2006, Eur. J. Plant Pathol. 114:283';

/** Least and most hours of a window in which air suited powdery mildew. */
export function mildewHours(
  { air, maxGapMinutes }: Pick<Circumstances, 'air' | 'maxGapMinutes'>,
  window: Window,
): Bounds {
  const suits = ({ temperature: t, humidity: rh }: Circumstances['air'][number]) =>
    t === null || rh === null ? null : t >= COLDEST && t <= HOTTEST && rh > DRIEST && rh < DAMPEST;
  return hoursWhen(air, suits, window, maxGapMinutes === undefined ? {} : { maxGapMinutes });
}

/**
 * Hours that suited powdery mildew, as information: there is no published number of hours at
 * which to act, so it has neither a class nor a yes. Drying a house against grey mould may favour it.
 */
export const powderyMildew: Disease = Object.freeze<Disease>({
  id: 'powdery-mildew',
  of: 'powdery-mildew',
  name: 'Powdery mildew',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: [4, null], // first symptoms from day 4, same paper
  judge: (known) => {
    const [least, most] = mildewHours(known, known.day);
    return {
      verdict: 'unknown',
      risk: null,
      because: [
        fact('mildew-hours-least', least, 'h', null, SOURCE),
        fact('mildew-hours-most', most, 'h', null, SOURCE),
      ],
      missing: ['published-threshold'],
    };
  },
});
