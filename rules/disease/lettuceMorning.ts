import { HOUR, type Instant, instant } from '../units.ts';
import { cutTo, type WetPiece } from '../wetness/index.ts';
import { type Disease, fact, notKnown, type Verdict, verdictOf } from './judgement.ts';
import { riskRange } from './riskClass.ts';

// Scherm & van Bruggen 1994, Phytopathology 84:860: leaves wet for 4 h from 06:00, on infection days
// 4.2 h on average; written for coastal California, elsewhere counted from sunrise (ours).
const WET_FOR = 4 * HOUR;
// Wu et al. 2002, Phytopathology 92:631: too warm when the mean is above 20 °C in the 3 h after
// sunrise, or above 22 °C in the 4 h that follow.
const FIRST = { length: 3 * HOUR, above: 20 } as const;
const THEN = { length: 4 * HOUR, above: 22 } as const;
const KNOWN_SHARE = 0.75; // ours: of the time a mean is taken over, as 45 min of an hour

const SOURCE =
  'Bremia lactucae; Scherm & van Bruggen 1994, Phytopathology 84:860; Wu et al. 2002, 92:631';

/** Mean temperature over a window as far as it was read; null when too little of it was. */
function meanOver(pieces: readonly WetPiece[], from: number, length: number): number | null {
  const read = cutTo(pieces, { from: instant(from), to: instant(from + length) }).filter(
    ({ coldest, warmest }) => coldest === warmest,
  );
  const time = read.reduce((sum, piece) => sum + piece.to - piece.from, 0);
  if (time < KNOWN_SHARE * length) return null;
  return read.reduce((sum, { from: a, to: b, coldest }) => sum + coldest * (b - a), 0) / time;
}

/**
 * Whether a morning let downy mildew into lettuce: leaves wet without a break for 4 h from sunrise,
 * unless it was too warm. Wetness that only began later in the morning does not count.
 */
export function infectiousMorning(wetness: readonly WetPiece[], sunrise: Instant): Verdict {
  const morning = { from: sunrise, to: instant(sunrise + WET_FOR) };
  const inside = cutTo(wetness, morning);
  const covered = inside.reduce((sum, { from, to }) => sum + to - from, 0);
  const surelyWet = covered === WET_FOR && inside.every(({ state }) => state === 'wet');
  const perhapsWet = inside.every(({ state }) => state !== 'dry');
  if (!perhapsWet) return 'no';
  const first = meanOver(wetness, sunrise, FIRST.length);
  const then = meanOver(wetness, sunrise + FIRST.length, THEN.length);
  if ((first !== null && first > FIRST.above) || (then !== null && then > THEN.above)) return 'no';
  return verdictOf(surelyWet && first !== null && then !== null, true);
}

/** Lettuce downy mildew by morning wetness, the rule that came from the field. */
export const lettuceMorning: Disease = Object.freeze<Disease>({
  id: 'lettuce-downy-mildew-morning',
  of: 'lettuce-downy-mildew',
  name: 'Lettuce downy mildew, wet morning',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: [5, 14], // Scherm & van Bruggen 1994, Phytopathology 84:853
  judge: ({ wetness, sunrise }) => {
    if (sunrise === null) return notKnown('sun-times');
    const verdict = infectiousMorning(wetness, sunrise);
    return {
      verdict,
      risk: riskRange(verdict === 'yes' ? 'event' : 'quiet', verdict === 'no' ? 'quiet' : 'event'),
      because: [fact('wet-from-sunrise', verdict, '', WET_FOR / HOUR, SOURCE)],
      missing: verdict === 'unknown' ? ['leaf-wetness-after-sunrise'] : [],
    };
  },
});
