import type { Settings } from '../../settings.ts';
import { importBatches } from './importBatches.ts';
import { importFruit } from './importFruit.ts';
import { importPicks } from './importPicks.ts';
import { importStation } from './importStation.ts';
import type { Progress } from './progressLine.ts';
import type { FileForm } from './stationForms.ts';

/** `dewpost import FILE` of anything but readings, with what is to be said about it. */
export async function importRecord(
  file: string,
  form: Exclude<FileForm, 'readings'>,
  settings: Settings<'import'>,
  progress: (so: Progress) => void,
): Promise<{ readonly taken: string; readonly faults: readonly string[] }> {
  if (form === 'fruit-csv') {
    const { counts, known, refused, sentences } = await importFruit(file, settings, progress);
    if (counts + known === 0) throw new Error(none(sentences, 'count of fruit'));
    return {
      taken: `${counts} counts of fruit taken in, ${known} were there already, ${refused} lines refused.`,
      faults: sentences,
    };
  }
  if (form === 'batches-csv') {
    const { batches, entries, known, refused, sentences } = importBatches(file, settings);
    if (entries + known === 0) throw new Error(none(sentences, 'batch'));
    return {
      taken: `${entries} entries of ${batches} batches taken in, ${known} rows were there already, ${refused} rows refused.`,
      faults: sentences,
    };
  }
  if (form === 'picks-csv') {
    const { picks, known, refused, sentences } = importPicks(file, settings);
    if (picks + known === 0) throw new Error(none(sentences, 'picking'));
    return {
      taken: `${picks} pickings taken in, ${known} were there already, ${refused} lines refused.`,
      faults: sentences,
    };
  }
  const { id, name, days, first, last, refused, sentences } = await importStation(
    ...([file, form, settings, progress] as const),
  );
  if (days === 0) throw new Error(none(sentences, 'day of a station'));
  return {
    taken: `${days} days of ${name} taken in as ${id}, from ${first} to ${last}; ${refused} lines refused.`,
    faults: sentences,
  };
}

const none = (sentences: readonly string[], what: string) =>
  [...sentences, `Expected at least one ${what}, got none`].join('\n');
