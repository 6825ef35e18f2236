import { HOUR } from '../units.ts';
import type { WetPiece } from '../wetness/index.ts';
import { dayOfSpells, riskOfBounds } from './dayOfSpells.ts';
import { infectionParameters } from './infectionParameters.ts';
import { type Circumstances, type Disease, fact, verdictOfRisk } from './judgement.ts';
import { judgeProgress } from './judgeProgress.ts';
import { worseRange } from './riskClass.ts';

// Infection at 5-28 °C on leaves wet for 4 h without a break: Univ. of Massachusetts fact sheet
// (5-28.3 °C); 4 h also Cohen & Ben-Naim 2016, PLoS ONE 11:e0155330.
const LEAST_HOURS = 4;
const COLDEST = 5; // °C
const HOTTEST = 28; // °C

const parameters = infectionParameters['basil-downy-mildew'];
const SOURCE =
  'Peronospora belbahrii; Univ. of Massachusetts fact sheet and Cohen & Ben-Naim 2016, PLoS ONE 11:e0155330';

/** Longest unbroken wetness that reaches into the day, at temperatures that infect, [least, most] h. */
export function unbrokenHours({ day, wetness }: Circumstances): readonly [number, number] {
  const longest = (counts: (piece: WetPiece) => boolean) => {
    let [run, best] = [0, 0];
    for (const piece of wetness) {
      if (piece.from >= day.to) break;
      run = counts(piece) ? run + Math.min(piece.to, day.to) - piece.from : 0;
      if (piece.to > day.from) best = Math.max(best, run);
    }
    return best / HOUR;
  };
  return [
    longest(({ state, coldest, warmest }) => {
      return state === 'wet' && coldest >= COLDEST && warmest <= HOTTEST;
    }),
    longest(({ state, coldest, warmest }) => {
      return state !== 'dry' && warmest >= COLDEST && coldest <= HOTTEST;
    }),
  ];
}

/** Basil downy mildew getting into leaves: possible from 4 h of unbroken wetness, likely from 1. */
export const basilInfection: Disease = Object.freeze<Disease>({
  id: 'basil-downy-mildew-infection',
  of: 'basil-downy-mildew',
  name: 'Basil downy mildew, infection',
  source: SOURCE,
  onlyIfConfirmed: false,
  latentDays: [5, 10], // symptoms, Massachusetts fact sheet
  judge: (known) => {
    const day = dayOfSpells(known);
    const unbroken = unbrokenHours(known);
    const possible = riskOfBounds(unbroken, (h) => (h >= LEAST_HOURS ? 'watch' : 'quiet'), day);
    const progress = judgeProgress(known, parameters, day);
    const risk = progress.risk === null ? possible : worseRange(possible, progress.risk);
    const verdict = verdictOfRisk(risk);
    return {
      verdict,
      risk,
      because: [
        fact('unbroken-wet-hours-least', unbroken[0], 'h', LEAST_HOURS, SOURCE),
        fact('unbroken-wet-hours-most', unbroken[1], 'h', LEAST_HOURS, SOURCE),
        ...progress.because,
      ],
      missing: verdict === 'unknown' ? ['leaf-wetness-history'] : [],
    };
  },
});
