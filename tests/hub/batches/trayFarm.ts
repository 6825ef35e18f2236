import { onTestFinished } from 'vitest';
import type { Batch, BatchHistory } from '../../../hub/contract/index.ts';
import { HOUR, servedHub } from '../smallFarm.ts';

export { HOUR };
export const DAY = 24 * HOUR;
/** A Thursday, noon in Dublin's summer time. */
export const T = Date.UTC(2026, 3, 23, 11);
export const iso = (t: number) => new Date(t).toISOString();

/** An invented farm with two tunnels and room for few trays, and crops that are sown in trays. */
export const trayFarm = `
farm: { name: Test Garden (invented), zone: Europe/Dublin, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil, trays: 30, capacity: 40 }
  - { id: sun-house, name: Sun House, kind: tunnel, vents: true, crop: basil, trays: 5, capacity: 20 }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, volume: 12 }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 5m }
crops:
  - { id: basil, name: Basil, base: 10, price: 30, perTray: 0.35 }
  - { id: pea-shoots, name: Pea shoots, base: 4, price: 18, perTray: 0.5 }
  - { id: chives, name: Chives, base: 4, regrows: true }
`;

export type Answer<Body> = { readonly status: number; readonly body: Body & { error?: string } };

/** A hub of that farm; the clock stands at T. */
export async function trayHub(farm = trayFarm) {
  const hub = await servedHub({ now: T, farm });
  onTestFinished(() => {
    if (hub.faults.length > 0) throw hub.faults[0];
  });
  const ask = async <Body = BatchHistory>(
    method: 'GET' | 'POST' | 'PATCH',
    url: string,
    payload?: object,
  ): Promise<Answer<Body>> => {
    const reply = await hub.app.inject({ method, url, ...(payload ? { payload } : {}) });
    return { status: reply.statusCode, body: reply.json() };
  };
  const ok = async <Body = BatchHistory>(...given: Parameters<typeof ask>): Promise<Body> => {
    const { status, body } = await ask<Body>(...given);
    if (status !== 200) throw new Error(`${given[1]} answered ${status}: ${body.error}`);
    return body;
  };
  return {
    ...hub,
    ask,
    ok,
    /** Twelve trays of basil, sown three weeks ago. */
    sow: (more: object = {}) =>
      ok('POST', '/api/batches', {
        ...{ crop: 'basil', trays: 12, place: 'long-house', sownAt: iso(T - 21 * DAY) },
        ...more,
      }),
    change: (id: string, change: object) => ask('PATCH', `/api/batches/${id}`, change),
    list: (query = '') => ok<Batch[]>('GET', `/api/batches${query}`),
  };
}
