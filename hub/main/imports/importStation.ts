import { once } from 'node:events';
import { createReadStream, statSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type Settings, WrongUse } from '../../settings.ts';
import { type DayRow, openStore, type Store } from '../../store/index.ts';
import { shown } from '../../words/index.ts';
import { importFarm } from '../farm/farmKept.ts';
import { clockFrom } from '../time/clockFrom.ts';
import { readText, unreadable } from '../verbs/readText.ts';
import type { Progress } from './progressLine.ts';
import { type StationForm, stationReader } from './stationForms.ts';

/** Faults shown in full; the rest are counted. */
const SHOWN = 10;
/** Told how far it is after so many lines. Ours: some hundredths of a second on a small board. */
const STEP = 1000;

export type StationImported = {
  readonly id: string;
  readonly name: string;
  readonly days: number;
  readonly first: string | null;
  readonly last: string | null;
  readonly refused: number;
  readonly sentences: readonly string[];
};

/** `Saltwind Point (7 m)` -> `saltwind-point-7-m`: what the station is called in addresses. */
export const stationId = (name: string) =>
  name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 64)
    .replace(/-+$/, '');

/**
 * `dewpost import FILE` of a weather station: its days into the store, once each. A faulty line is
 * counted and told, the others go on; the same file again changes nothing.
 * @param progress told now and then how far it is
 */
export async function importStation(
  file: string,
  form: StationForm,
  settings: Settings<'import'>,
  progress: (so: Progress) => void,
): Promise<StationImported> {
  const clock = clockFrom(settings.clock);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    if (settings.farm !== undefined && store.farm() === undefined)
      importFarm(store, readText(settings.farm), clock.now());
    const about = await describe(store, file, form, settings);
    const reader = stationReader(form, about);
    let refused = 0;
    const sentences: string[] = [];
    const so = (share: number, rows: number) => progress({ share, rows, refused });
    await eachLine(file, so, (text, line) => {
      try {
        reader.line(text, line);
      } catch (error) {
        // Without its first line nothing of a CSV file can be understood.
        if (form === 'station-csv' && line === 1) throw error;
        refused++;
        if (sentences.length < SHOWN) sentences.push((error as Error).message);
      }
    });
    const days: DayRow[] = reader
      .days()
      .map(({ mean = null, calm = null, ...day }) => ({ ...day, mean, calm }));
    if (days.length === 0)
      return { ...about, days: 0, first: null, last: null, refused, sentences };
    store.transaction(() => {
      const before = store.stations.get(about.id);
      // Read at another hour, its days are other days: what was there is made anew.
      if (before && before.observedAt !== about.observedAt) store.stations.dropDays(about.id);
      store.stations.put({ ...about, form, importedAt: clock.now() });
      store.stations.putDays(about.id, days);
      store.journal.add({
        ...{ t: clock.now(), who: 'hub', what: 'station', place: null, subject: about.id },
        body: { file, form, days: days.length, refused },
      });
    });
    const taken = { first: days[0]?.day ?? null, last: days.at(-1)?.day ?? null };
    return { id: about.id, name: about.name, days: days.length, ...taken, refused, sentences };
  } finally {
    store.close();
  }
}

/** Who the station is: as told now, as told before, as the file says. @throws WrongUse for what is missing. */
async function describe(
  store: Store,
  file: string,
  form: StationForm,
  settings: Settings<'import'>,
) {
  const name = settings.station ?? (form === 'ghcn-daily' ? await firstEleven(file) : undefined);
  if (name === undefined || stationId(name) === '')
    throw new WrongUse(
      `Expected --station NAME, because the file does not name its station, got ${shown(name)}`,
    );
  const known = store.stations.get(stationId(name));
  const lat = settings.lat ?? known?.lat;
  const lon = settings.lon ?? known?.lon;
  for (const [option, value] of [
    ['lat', lat],
    ['lon', lon],
  ] as const)
    if (value === undefined)
      throw new WrongUse(
        `Expected --${option} in degrees, because the file does not tell where the station stands, got nothing`,
      );
  return {
    id: stationId(name),
    name: settings.station ?? known?.name ?? name,
    lat: lat ?? 0,
    lon: lon ?? 0,
    altitude: settings.altitude ?? known?.altitude ?? null,
    observedAt: settings['observed-at'] ?? known?.observedAt ?? null,
  };
}

const firstEleven = async (file: string) => {
  let found: string | undefined;
  for await (const text of lines(file)) {
    if (text.trim() === '') continue;
    found = text.slice(0, 11);
    break;
  }
  return found;
};

async function* lines(file: string) {
  const input = createReadStream(file);
  await once(input, 'open').catch((error) => {
    throw unreadable(file, error);
  });
  yield* createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY });
}

/** Every line that is not empty, with its number; how far it is is told now and then. */
export async function eachLine(
  file: string,
  progress: (share: number, line: number) => void,
  take: (text: string, line: number) => void,
) {
  const size = Math.max(1, statSync(file, { throwIfNoEntry: false })?.size ?? 1);
  let line = 0;
  let bytes = 0;
  for await (const text of lines(file)) {
    line++;
    bytes += Buffer.byteLength(text) + 1;
    if (text.trim() !== '') take(text, line);
    if (line % STEP === 0) progress(Math.min(1, bytes / size), line);
  }
}
