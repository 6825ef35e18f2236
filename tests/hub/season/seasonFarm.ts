import type { DayRow } from '../../../hub/store/index.ts';
import { createChance } from '../../../simulators/seed.ts';
import { farmText, servedHub } from '../smallFarm.ts';

const DAY = 86_400_000; // ms

/** The small farm with strawberries in its patch, south or north of the equator. */
export const seasonFarm = ({ lat = 51.9, price = true } = {}) =>
  farmText()
    .replace('lat: 51.9', `lat: ${lat}`)
    .replace(
      'kind: patch, cover: { minutes: 35, value: 900, damage: -2.2 }',
      'kind: patch, crop: strawberry',
    )
    .replace('crops:\n', `crops:\n  - { id: strawberry${price ? ', price: 9' : ''} }\n`)
    .replace(
      'probes:\n',
      'probes:\n  - { id: bloom, place: south-patch, spot: canopy, every: 1h }\n',
    );

/**
 * Thirty invented years at a station: a cosine of the year whose nights cross 0 °C around
 * `firstFrost` in autumn, a few days sooner or later each year. Rain on every third day.
 */
export function stationYears({
  from = 1995,
  to = Date.UTC(2025, 9, 10),
  south = false,
  spread = 8,
} = {}): DayRow[] {
  const chance = createChance(5, 'station');
  const days: DayRow[] = [];
  for (let t = Date.UTC(from, 0, 1); t < to; t += DAY) {
    const date = new Date(t);
    const shift = spread * chance.normal(date.getUTCFullYear());
    const ofYear = (t - Date.UTC(date.getUTCFullYear(), 0, 1)) / DAY + (south ? 182.5 : 0);
    // Mean 9, swing 8.5: the low is mean less 4.
    const mean = 9 - 8.5 * Math.cos((2 * Math.PI * (ofYear - 20 - shift)) / 365.25);
    days.push({
      ...{ day: date.toISOString().slice(0, 10), min: mean - 4, max: mean + 5, mean },
      ...{ rain: days.length % 3 === 0 ? 4 : 0, trace: false, calm: true },
    });
  }
  return days;
}

/** A hub on that farm, with that station taken in, at `now`. */
export async function seasonHub({
  now = Date.UTC(2025, 9, 10, 12),
  lat = 51.9,
  days = stationYears(),
  price = true,
}: {
  now?: number;
  lat?: number;
  days?: readonly DayRow[];
  price?: boolean;
} = {}) {
  const hub = await servedHub({ now, farm: seasonFarm({ lat, price }) });
  if (days.length > 0)
    hub.store.transaction(() => {
      hub.store.stations.put({
        ...{ id: 'far-head', name: 'Far Head', lat: lat + 0.1, lon: -8.3, altitude: 10 },
        ...{ form: 'station-csv', observedAt: null, importedAt: 1 },
      });
      hub.store.stations.putDays('far-head', days);
    });
  hub.core.look();
  const get = async <Shape>(url: string) => {
    const reply = await hub.app.inject({ url });
    if (reply.statusCode !== 200) throw new Error(`${url}: ${reply.statusCode} ${reply.body}`);
    return reply.json() as Shape;
  };
  const send = (method: 'POST' | 'DELETE', url: string, payload?: object) =>
    hub.app.inject({ method, url, ...(payload === undefined ? {} : { payload }) });
  return { ...hub, get, send };
}
