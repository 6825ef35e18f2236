import type { BatchEvent, BatchFacts } from '../../../hub/batches/index.ts';
import type { StoredReading } from '../../../hub/store/index.ts';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

export const DAY = 24 * HOUR;
export const NOW = Date.UTC(2026, 5, 20, 8);

/** Made up: three tunnels, one without a probe of humidity, and a mast. Midnight there is UTC's. */
export const trayText = ({ trays = '', crop = '', capacity = 40 } = {}) => `
farm: { name: Test Garden (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, capacity: 40${trays} }
  - { id: sun-house, name: Sun House, kind: tunnel, capacity: ${capacity} }
  - { id: far-house, name: Far House, kind: tunnel }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5 }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 30m }
  - { id: p2, place: sun-house, spot: canopy, every: 30m }
  - { id: mast, place: outside, spot: air, every: 30m }
crops:
  - { id: basil, name: Basil, base: 10, band: [18, 28], heatLimit: 32, chill: 11, days: 30, disease: [basil-downy-mildew], price: 30, perTray: 0.35${crop} }
  - { id: cress, name: Cress }
`;

type Curve = (hour: number, day: number) => number;
export type House = { readonly temperature: Curve; readonly humidity: Curve };
const swing =
  (middle: number, by: number): Curve =>
  (hour, day) =>
    middle - by * Math.cos(((hour - 3) / 12) * Math.PI) + 0.4 * Math.sin(2.1 * day);
export const hot: House = { temperature: swing(27, 9), humidity: () => 55 };
export const mild: House = { temperature: swing(23, 4), humidity: () => 60 };
/** Leaves wet from midnight to eight. */
export const damp: House = { ...mild, humidity: (hour) => (hour < 8 ? 95 : 60) };

/** A served hub of that farm, with readings put into the store as they come from the intake. */
export async function trayHub(options: Parameters<typeof trayText>[0] & { text?: string } = {}) {
  const hub = await servedHub({ now: NOW, farm: options.text ?? trayText(options) });
  const measure = (probe: string, house: House, from: number, to = NOW) => {
    const readings: StoredReading[] = [];
    for (let t = from; t <= to; t += 30 * MINUTE)
      for (const quantity of ['temperature', 'humidity'] as const) {
        const value = house[quantity]((t % DAY) / HOUR, Math.floor(t / DAY));
        readings.push({ probe, quantity, t, value, raw: null, flag: null });
      }
    hub.store.transaction(() => hub.store.readings.add(readings));
    hub.core.snapshots.fold(true);
  };
  const tell = (id: string, event: BatchEvent, t = NOW) =>
    hub.core.batches.add(id, null, event, 'Ann', t);
  const sow = (id: string, facts: Partial<BatchFacts> = {}) =>
    tell(id, {
      event: 'sown',
      facts: {
        ...{ crop: 'basil', variety: null, trays: 20, sownAt: NOW - 12 * DAY },
        ...{ place: 'long-house', seedCost: null, otherCost: null, meantFor: null },
        ...facts,
      },
      partOf: null,
    });
  const get = async (url: string) => {
    const reply = await hub.app.inject({ url });
    return { status: reply.statusCode, body: reply.json() };
  };
  const post = async (url: string, payload: object) => {
    const reply = await hub.app.inject({ method: 'POST', url, payload });
    return { status: reply.statusCode, body: reply.json() };
  };
  return { ...hub, measure, tell, sow, get, post };
}
