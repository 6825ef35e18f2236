import type { Trial, TrialRow } from '../contract/index.ts';
import { compareDays, limitNow, type TrialState } from '../trial/index.ts';
import {
  reviewKindName,
  trialChangeWords,
  trialNotes,
  trialRowWords,
  trialWords,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf } from './present.ts';
import { shownLosses } from './shownLoss.ts';

/** A trial as pages show it; what it found beside the losses that were really entered. */
export function shownTrial(parts: ApiParts, trial: TrialState): Trial {
  const calendar = parts.calendar();
  const { job, places } = trial;
  const span = { from: calendar.dayOf(job.from), to: calendar.dayOf(job.to - 1) };
  const changes = trial.changes.map((change) => {
    const from = limitNow(job.before, change) ?? change.to;
    const crop = parts.farm().crop(change.of)?.name;
    const name = change.of === null ? null : (crop ?? nameOf(parts, change.of));
    return { ...change, from, words: trialChangeWords({ ...change, from, name }) };
  });
  const shown = {
    ...{ id: trial.id, state: trial.state, progress: trial.progress, why: trial.why },
    place: trial.place === null ? null : nameOf(parts, trial.place),
    ...{ startedAt: iso(trial.startedAt), ...span, changes },
  };
  if (places === null) return { ...shown, result: null };

  const touched = new Set(places.map(({ place }) => place));
  const losses = shownLosses(parts, span).filter(
    ({ state, place }) => state === 'holds' && touched.has(place),
  );
  const rows = compareDays(places, losses, { dayOf: calendar.dayOf, to: job.to }).map(
    (row): TrialRow => {
      const named = { name: nameOf(parts, row.place), kindName: reviewKindName(row.kind) };
      const side = ({ days, tasks, minutes }: (typeof row)['before']) => ({
        ...{ days: [...days], tasks, minutes },
      });
      const told = { ...row, ...named, before: side(row.before), after: side(row.after) };
      return { ...told, words: trialRowWords(told) };
    },
  );
  return {
    ...shown,
    result: {
      rows,
      losses: losses.map(({ place, day, words }) => ({ place, day, words })),
      words: trialWords({ changes: changes.map(({ words }) => words), rows }),
      notes: trialNotes(),
    },
  };
}
