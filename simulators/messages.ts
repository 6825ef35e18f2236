import type { Quantity, Reading } from './reading.ts';

// The shapes in which the made-up probes speak, so that a demonstration meets each of them.

export type MessageForm =
  /** SenML with a base name and base time, entries relative to it (RFC 8428, section 4.5). */
  | 'senml-base'
  /** SenML, each entry with its own absolute time. */
  | 'senml-absolute'
  /** SenML without any clock: times are seconds before now (RFC 8428, section 4.5.3). */
  | 'senml-ago'
  /** SenML of a probe that counts in degrees Fahrenheit. */
  | 'senml-fahrenheit'
  /** One topic per quantity, a bare number: no time at all. */
  | 'bare'
  /** One topic per quantity, `{"v":…,"t":…}`. */
  | 'stamped'
  /** JSON of the maker's own shape, on the maker's own topic. */
  | 'mast';

export type Message = { readonly topic: string; readonly payload: string };

// Units as SenML names them (RFC 8428 section 12.1, RFC 8798); `Fah` is no SenML unit.
const UNITS: Partial<Record<Quantity, string>> = {
  temperature: 'Cel',
  humidity: '%RH',
  'soil-moisture': '%',
  'soil-temperature': 'Cel',
  light: 'lx',
  rain: 'mm',
  wind: 'm/s',
  power: 'W',
  energy: 'kWh',
};

const unitOf = ({ quantity }: Reading, batteryUnit: string) =>
  quantity === 'battery' ? batteryUnit : UNITS[quantity];

function entry(reading: Reading, batteryUnit: string, fahrenheit: boolean) {
  const u = unitOf(reading, batteryUnit);
  const hot = fahrenheit && u === 'Cel';
  const v = hot ? Math.round((reading.value * 1.8 + 32) * 100) / 100 : reading.value;
  return { n: reading.quantity, ...(u === undefined ? {} : { u: hot ? 'Fah' : u }), v };
}

function mastReport(id: string, readings: readonly Reading[]): Message[] {
  const times = [...new Set(readings.map(({ t }) => t))];
  return times.map((t) => {
    const at = new Map(readings.filter((r) => r.t === t).map((r) => [r.quantity, r.value]));
    const report = {
      taken: t,
      air: { c: at.get('temperature'), rh: at.get('humidity') },
      wind: { ms: at.get('wind') },
      rain: { mm: at.get('rain') },
      cell: { v: at.get('battery') },
    };
    return { topic: `coast/${id}/report`, payload: JSON.stringify(report) };
  });
}

/**
 * One probe's readings, oldest first, as it would send them at `now` (ms).
 * Several times together are what a probe kept while it could not reach anybody.
 */
export function toMessages(
  form: MessageForm,
  readings: readonly Reading[],
  now: number,
  batteryUnit = 'V',
): Message[] {
  const [first] = readings;
  if (!first) return [];
  const topic = `garden/${first.probe}`;
  const pack = (entries: readonly object[]) => [{ topic, payload: JSON.stringify(entries) }];
  switch (form) {
    case 'senml-base': {
      const bt = first.t / 1000;
      const entries = readings.map((reading, index) => ({
        ...(index === 0 ? { bn: `${first.probe}:`, bt } : {}),
        ...entry(reading, batteryUnit, false),
        ...(reading.t === first.t ? {} : { t: (reading.t - first.t) / 1000 }),
      }));
      return pack(entries);
    }
    case 'senml-absolute':
    case 'senml-fahrenheit': {
      const fahrenheit = form === 'senml-fahrenheit';
      const stamp = (r: Reading) => ({ ...entry(r, batteryUnit, fahrenheit), t: r.t / 1000 });
      return pack(readings.map(stamp));
    }
    case 'senml-ago': {
      const ago = (r: Reading) => Math.min(0, Math.round((r.t - now) / 1000));
      return pack(readings.map((r) => ({ ...entry(r, batteryUnit, false), t: ago(r) })));
    }
    case 'bare':
      return readings.map((r) => ({ topic: `${topic}/${r.quantity}`, payload: String(r.value) }));
    case 'stamped':
      return readings.map((r) => ({
        topic: `${topic}/${r.quantity}`,
        payload: JSON.stringify({ v: r.value, t: new Date(r.t).toISOString() }),
      }));
    case 'mast':
      return mastReport(first.probe, readings);
  }
}
