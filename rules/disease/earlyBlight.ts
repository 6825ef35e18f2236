import { orUnknown } from '../orUnknown.ts';
import { type Celsius, HOUR, type Hours } from '../units.ts';
import { type Bounds, cutTo, type WetPiece } from '../wetness/index.ts';
import { dayOfSpells } from './dayOfSpells.ts';
import { expectSpell } from './expectSpell.ts';
import { type Circumstances, type Disease, fact } from './judgement.ts';

// Wet hours from which a day counts 1, 2, 3 and 4, by mean temperature while wet.
// Source: Madden, Pennypacker & MacNab 1978, Phytopathology 68:1354 (cut points from memory).
const COLDEST = 13; // °C, whole degrees
const TABLE = [
  { below: 18, from: [7, 16, 21] },
  { below: 21, from: [4, 9, 16, 23] },
  { below: 26, from: [3, 6, 13, 21] },
  { below: 30, from: [4, 9, 16, 23] },
] as const;

const SOURCE = 'Alternaria on tomato; Madden, Pennypacker & MacNab 1978, Phytopathology 68:1354';

/**
 * Daily severity value of early blight, 0 to 4, from the mean temperature while leaves were wet and
 * the wet hours of the day. Temperature is rounded to a whole degree and hours down, as the
 * table is; 0 below 13 and above 29 °C. Null for a null.
 * @throws RangeError outside -40..60 °C or for hours no day has
 */
export const earlyBlightSeverity = orUnknown(function earlyBlightSeverity(
  temperature: Celsius,
  wetHours: Hours,
): number {
  expectSpell(temperature, wetHours);
  return severityAt(Math.round(temperature), wetHours);
});

function severityAt(whole: number, wetHours: number): number {
  if (whole < COLDEST) return 0;
  const row = TABLE.find(({ below }) => whole < below);
  return row === undefined ? 0 : row.from.filter((from) => Math.floor(wetHours) >= from).length;
}

/** Least and most severity of a disease day; between them where wetness or warmth is not known. */
export function earlyBlightBounds(known: Circumstances): Bounds {
  const [least, most] = dayOfSpells(known).wetHours;
  const wet = cutTo(known.wetness, known.day).filter(({ state }) => state !== 'dry');
  if (most === 0) return [0, 0];
  const range = meanRange(wet);
  if (range === null) return [0, 4];
  const [coldest, warmest] = range;
  const tried: number[] = [];
  for (let t = Math.round(coldest); t <= Math.round(warmest); t += 1) tried.push(t);
  const at = (wetHours: number) => tried.map((whole) => severityAt(whole, wetHours));
  return [Math.min(...at(least)), Math.max(...at(most))];
}

/** Where the mean over wet time may lie: one value when all of it was read. */
function meanRange(wet: readonly WetPiece[]): Bounds | null {
  const time = wet.reduce((sum, { from, to }) => sum + to - from, 0) / HOUR;
  if (time === 0) return null;
  if (wet.every(({ state, coldest, warmest }) => state === 'wet' && coldest === warmest)) {
    const mean =
      wet.reduce((sum, { from, to, coldest }) => sum + coldest * ((to - from) / HOUR), 0) / time;
    return [mean, mean];
  }
  return [
    Math.min(...wet.map(({ coldest }) => coldest)),
    Math.max(...wet.map(({ warmest }) => warmest)),
  ];
}

/** Early blight's daily severity, for display: seasons sum it, one day decides nothing. */
export const earlyBlight: Disease = Object.freeze<Disease>({
  id: 'early-blight',
  of: 'early-blight',
  name: 'Early blight, daily severity',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: null,
  judge: (known) => {
    const [least, most] = earlyBlightBounds(known);
    return {
      verdict: 'unknown',
      risk: null,
      because: [
        fact('daily-severity-least', least, '', 4, SOURCE),
        fact('daily-severity-most', most, '', 4, SOURCE),
      ],
      missing: ['published-threshold'],
    };
  },
});
