import { open } from 'node:fs/promises';
import {
  daysCsvLines,
  daysOfHours,
  morningReadersDays,
  parseDlyLine,
  parseIsdLiteLine,
  STATION_HEADER,
  type StationDay,
  type StationHour,
  type StationValue,
  stationDays,
} from '../../../rules/stations/index.ts';
import { formOfHead } from '../../batchFile/index.ts';
import { unreadable } from '../verbs/readText.ts';

export type StationForm = 'ghcn-daily' | 'isd-lite' | 'station-csv';
/** What is in a file: a station's record, the grower's counts of fruit or batches, or readings of probes. */
export type FileForm = StationForm | 'fruit-csv' | 'batches-csv' | 'picks-csv' | 'readings';

const HEAD = 4096; // bytes that tell the kind of file

/** By the first line, not by the name: files are renamed. @throws Error that names the file. */
export async function formOf(file: string): Promise<FileForm> {
  const handle = await open(file).catch((error) => {
    throw unreadable(file, error);
  });
  const { buffer, bytesRead } = await handle
    .read(Buffer.alloc(HEAD), 0, HEAD, 0)
    .catch((error) => {
      throw unreadable(file, error);
    })
    .finally(() => handle.close());
  const [first = ''] = buffer
    .toString('utf8', 0, bytesRead)
    .replace(/^\uFEFF/, '')
    .split('\n')
    .filter((line) => line.trim() !== '');
  if (/^[A-Z0-9_-]{11}\d{6}[A-Z]{2}[A-Z0-9]{2}/i.test(first)) return 'ghcn-daily';
  if (/^\d{4} [ \d]\d [ \d]\d [ \d]\d[ \d-]{6}/.test(first)) return 'isd-lite';
  const names = first.split(',').map((name) => name.trim().replace(/^"(.*)"$/, '$1'));
  const plainName = (name: string) =>
    name
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .toLowerCase();
  if (names.includes('date') && (names.includes('tmin') || names.includes('tmax')))
    return 'station-csv';
  if (names.includes('picked') && names.includes('kg')) return 'picks-csv';
  if (names.includes('counted') && names.includes('stage')) return 'fruit-csv';
  // People's own tables of batches come with semicolons or tabs too.
  if (formOfHead(first.split(/[,;\t]/).map(plainName)) !== null) return 'batches-csv';
  return 'readings';
}

export type StationReader = {
  /** @throws RangeError that names the line and the field. */
  line(text: string, number: number): void;
  days(): readonly (StationDay & { readonly calm?: boolean | null })[];
  /** What the file itself calls the station; null where it does not. */
  station(): string | null;
};

const EARLY = 12; // hour before which a reader sees that morning's minimum

/** Reads a station's file line by line. `observedAt`: hour at which a daily reader looks. */
export function stationReader(
  form: StationForm,
  at: { lat: number; lon: number; observedAt: number | null },
): StationReader {
  const early = at.observedAt !== null && at.observedAt > 0 && at.observedAt < EARLY;
  if (form === 'ghcn-daily') {
    const values: StationValue[] = [];
    return {
      line: (text, number) => {
        const found = parseDlyLine(text, number);
        const [station] = [values[0]?.station];
        if (station !== undefined && found[0] !== undefined && found[0].station !== station)
          throw new RangeError(
            `Expected the station ${station} in station of line ${number}, got "${found[0].station}"`,
          );
        values.push(...found);
      },
      days: () => stationDays(values, { readInTheMorning: early, forDates: true }),
      station: () => values[0]?.station ?? null,
    };
  }
  if (form === 'isd-lite') {
    const hours: StationHour[] = [];
    return {
      line: (text, number) => hours.push(parseIsdLiteLine(text, number)),
      days: () =>
        daysOfHours(
          [...hours].sort((a, b) => a.t - b.t),
          at.lat,
          at.lon,
        ),
      station: () => null,
    };
  }
  const days: StationDay[] = [];
  let read: ReturnType<typeof daysCsvLines> | undefined;
  return {
    line: (text, number) => {
      if (read === undefined) {
        read = daysCsvLines(text, STATION_HEADER);
        return;
      }
      const day = read(text, number);
      if (day !== null) days.push(day);
    },
    days: () => (early ? morningReadersDays(days) : days),
    station: () => null,
  };
}
