// How good the hub's "ready when" is on invented farms: shares of batches ready within the interval
// that was told as 8 in 10, and how far off the day was, against counting days alone. Not a time.

import { type Moment, runSeasons } from '../hub/growing/seasons/runSeasons.ts';
import { scoreOf } from '../hub/growing/seasons/scoreSeasons.ts';
import { figure } from './report.ts';

const SEEDS = Number(process.env.DEWPOST_SEEDS ?? 3);
const FIRST = 11; // 1 to 4 were used while doubts were set
const YEARS = 3;
const moments: readonly (readonly [string, Moment | null])[] = [
  ['sown', 'sown'],
  ['half-way', 'half way'],
  ['three-days-before', 'three days before'],
  ['all', null],
];

export async function readyWhen() {
  const seeds = Array.from({ length: SEEDS }, (_, i) => FIRST + i);
  const kinds = {
    station: seeds.flatMap((seed) =>
      runSeasons({ seed, stationYears: 12, light: false, looks: 1 }, YEARS),
    ),
    alone: seeds.flatMap((seed) =>
      runSeasons({ seed: seed + 1000, stationYears: 0, light: true, looks: 2 }, YEARS),
    ),
  };
  const all = { ...kinds, together: [...kinds.station, ...kinds.alone] };
  for (const [kind, said] of Object.entries(all))
    for (const [name, moment] of moments) {
      const score = scoreOf(said, moment);
      const tell = (what: string, value: number, unit: string) =>
        figure(`ready-${kind}-${name}-${what}`, value, unit);
      tell('n', score.n, 'times');
      tell('coverage', 100 * score.coverage, '%');
      tell('coverage-of-days', 100 * score.coverageOfDays, '%');
      tell('off', score.off, 'd');
      tell('off-by-days-alone', score.offByDays, 'd');
    }
}
