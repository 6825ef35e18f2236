import type { BatchFacts } from '../../../hub/batches/index.ts';
import type { StoredReading } from '../../../hub/store/index.ts';
import { DAY, noted } from '../growing/growingFarm.ts';
import { servedHub } from '../smallFarm.ts';

// Made up: a house at 20 °C all year, so that a crop counted from 10 °C lives through ten heat units
// a day and every date can be worked out by hand. Midnight there is UTC's.

/** A Monday morning. */
export const NOW = Date.UTC(2026, 4, 4, 7);
export const planText = ({
  deliveries = '[ { day: thursday, wants: [ { of: basil, kg: 7 } ] } ]',
  crops = '',
  mixes = '[]',
  capacity = 60,
} = {}) => `
farm: { name: Test Garden (invented), zone: Etc/UTC, lat: 51.9, lon: -8.3, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, capacity: ${capacity} }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 0, limit: 5 }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 30m }
crops:
  - { id: basil, name: Basil, base: 10, band: [18, 28], price: 30, perTray: 0.35, seed: 0.4, keeps: { days: 3 }, minutes: { sow: 4 } }
  - { id: cress, name: Cress, base: 5, price: 20, perTray: 0.2, days: [8, 10], keeps: { days: 4 } }
  - { id: rocket, name: Rocket, base: 5, price: 20, perTray: 0.2 }
${crops}
mixes: ${mixes}
deliveries: ${deliveries}
`;

/** A hub of that farm, with its warmth measured for so many days before now. */
export async function planningHub({ farm = planText(), days = 120, now = NOW, open = true } = {}) {
  const hub = await servedHub({ now, farm, open });
  const readings: StoredReading[] = [];
  for (let t = now - days * DAY; t <= now; t += DAY / 48)
    readings.push({ probe: 'p1', quantity: 'temperature', t, value: 20, raw: null, flag: null });
  hub.store.transaction(() => hub.store.readings.add(readings));
  hub.core.snapshots.fold(true);
  const tell = (id: string, facts: Partial<BatchFacts> = {}) =>
    hub.core.batches.add(
      id,
      null,
      {
        event: 'sown',
        facts: {
          ...{ crop: 'basil', variety: null, trays: 10, sownAt: now, place: 'long-house' },
          ...{ seedCost: null, otherCost: null, meantFor: null },
          ...facts,
        },
        partOf: null,
      },
      'Ann',
      now,
    );
  /** Past batches seen ready after so many days and cut: ten heat units for each day. */
  const past = (took: readonly number[], perTray: readonly number[] = took.map(() => 0.35)) => {
    for (const [i, each] of took.entries()) {
      const readyAt = now - (5 + i) * DAY;
      const id = `old-${i}`;
      tell(id, { sownAt: readyAt - each * DAY });
      hub.core.batches.add(id, null, noted(readyAt), 'Ann', now);
      hub.core.batches.add(
        id,
        null,
        {
          ...{ event: 'cut', at: readyAt + DAY, kg: 10 * (perTray[i] ?? 0.35), trays: 10 },
          ...{ stage: 'later', clears: true, minutes: null, price: null, lostKg: null, note: null },
        },
        'Ann',
        now,
      );
    }
  };
  const get = async <Shape>(url: string): Promise<Shape> => {
    const reply = await hub.app.inject({ url });
    if (reply.statusCode !== 200) throw new Error(`${url}: ${reply.statusCode} ${reply.body}`);
    return reply.json() as Shape;
  };
  const post = (url: string, payload: object) => hub.app.inject({ method: 'POST', url, payload });
  return { ...hub, tell, past, get, post };
}

/** Totals of the sheet's six batches, in days of ten units: 142, 151, 138, 147, 155 and 149. */
export const SIX = [14.2, 15.1, 13.8, 14.7, 15.5, 14.9];
