import { onTestFinished } from 'vitest';
import type { PickHistory } from '../../../hub/contract/index.ts';
import { servedHub } from '../smallFarm.ts';

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
/** A Monday noon in October. */
export const T = Date.UTC(2025, 9, 13, 12);
export const iso = (t: number) => new Date(t).toISOString();

/** An invented farm with a patch, a tunnel and a bed outdoors, and costs of a tray in its file. */
export const pickFarm = ({ lat = 51.9 } = {}) => `
farm: { name: Test Garden (invented), zone: UTC, lat: ${lat}, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil, capacity: 40 }
  - { id: sun-house, name: Sun House, kind: tunnel, vents: true, capacity: 30 }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: south-patch, name: South Patch, kind: patch, crop: strawberry }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, volume: 12 }
crops:
  - { id: basil, name: Basil, base: 10, price: 30, seed: 1, other: 0.5, minutes: { sow: 3, tend: 2, cut: 6, pack: 4, move: 1 } }
  - { id: pea-shoots, name: Pea shoots, base: 4, price: 18 }
  - { id: strawberry, name: Strawberries, price: 9 }
  - { id: mystery, name: Mystery leaves }
`;

/** A hub of that farm; the clock stands at T. */
export async function pickHub(options: Parameters<typeof pickFarm>[0] = {}) {
  const hub = await servedHub({ now: T, farm: pickFarm(options) });
  onTestFinished(() => {
    if (hub.faults.length > 0) throw hub.faults[0];
  });
  hub.core.look();
  const ask = async <Body = PickHistory>(
    method: 'GET' | 'POST' | 'PATCH',
    url: string,
    payload?: object,
  ) => {
    const reply = await hub.app.inject({ method, url, ...(payload ? { payload } : {}) });
    return { status: reply.statusCode, body: reply.json() as Body & { error?: string } };
  };
  /** Pickings of the patch so many days ago. */
  const pickings = async (
    list: readonly (readonly [daysAgo: number, kg: number, minutes: number])[],
    more: object = {},
  ) => {
    for (const [ago, kg, minutes] of list) {
      const pick = { place: 'south-patch', at: iso(T - ago * DAY), kg, minutes, lostKg: 0 };
      const { status, body } = await ask('POST', '/api/picks', { ...pick, ...more });
      if (status !== 200) throw new Error(body.error);
    }
  };
  return { ...hub, ask, pickings };
}
