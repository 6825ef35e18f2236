import type { Trial, TrialRow } from '../contract/index.ts';
import { changedFarm, compareDays, limitNow, type TrialState } from '../trial/index.ts';
import {
  reviewKindName,
  reviewLooked,
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
  const currency = job.before.farm.money;
  const changes = trial.changes.map((change) => {
    const from = limitNow(job.before, change) ?? change.to;
    return {
      ...change,
      from,
      words: trialChangeWords({ ...change, from, name: whose(parts, change.of), currency }),
    };
  });
  const shown = {
    ...{ id: trial.id, state: trial.state, progress: trial.progress, why: trial.why },
    place: trial.place === null ? null : nameOf(parts, trial.place),
    ...{ startedAt: iso(trial.startedAt), ...span, changes },
  };
  if (places === null) return { ...shown, result: null, keeping: null };

  const touched = new Set(places.map(({ place }) => place));
  const losses = shownLosses(parts, span)
    .filter(({ state, place }) => state === 'holds' && touched.has(place))
    .map((loss) => ({ ...loss, look: reviewLooked(loss.look) }));
  const rows = compareDays(places, losses, { dayOf: calendar.dayOf, to: job.to }).map(
    (row): TrialRow => {
      const named = { name: nameOf(parts, row.place), kindName: reviewKindName(row.kind) };
      const side = ({ days, tasks, minutes }: (typeof row)['before']) => ({
        ...{ days: [...days], tasks, minutes },
      });
      const told = {
        ...{ ...row, ...named, before: side(row.before), after: side(row.after) },
        losses: row.losses.map((one) => ({ ...one })),
      };
      return { ...told, words: trialRowWords(told) };
    },
  );
  const room = places.some(({ place }) => parts.farm().place(place)?.kind === 'cool-room');
  return {
    ...shown,
    result: {
      rows,
      losses: losses.map(({ place, placeName: name, day, words }) => ({ place, name, day, words })),
      words: trialWords({
        ...{ changes: changes.map(({ words }) => words), rows, losses: losses.length },
        readings: places.some(({ read }) => read),
      }),
      notes: trialNotes(room),
    },
    keeping: keeping(parts, trial),
  };
}

export const whose = (parts: ApiParts, of: string | null): string | null =>
  of === null ? null : (parts.farm().crop(of)?.name ?? nameOf(parts, of));

/** What keeping it would change of the farm as it stands now. */
function keeping(parts: ApiParts, { changes }: TrialState): NonNullable<Trial['keeping']> {
  const { changes: words, faults } = parts.farmDesk.preview(
    changedFarm(parts.farm().file, changes),
  );
  return { changes: [...words], fault: faults[0]?.sentence ?? null };
}
