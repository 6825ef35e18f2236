import { onTestFinished } from 'vitest';
import type { Lot, LotHistory } from '../../../hub/contract/index.ts';
import { HOUR, MINUTE, servedHub } from '../smallFarm.ts';

export { HOUR, MINUTE };
/** A Sunday morning. */
export const T = Date.UTC(2026, 4, 10, 6);
export const iso = (t: number) => new Date(t).toISOString();

/** An invented farm with a cool room, crops that keep, and deliveries on Thursday and Friday. */
export const coldFarm = ({
  deliveries = '[ { day: thursday }, { day: friday } ]',
  zone = 'UTC',
} = {}) => `
farm: { name: Test Garden (invented), zone: ${zone}, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, volume: 12 }
  - { id: cellar, name: Cellar, kind: cool-room, setPoint: 11, limit: 14 }
probes:
  - { id: leaf, place: long-house, spot: canopy, every: 10m }
  - { id: mast, place: outside, spot: air, every: 10m }
  - { id: cold, place: cool-room, spot: air, every: 10m }
  - { id: warm, place: cellar, spot: air, every: 10m }
crops:
  - { id: leaves, name: Leaves, price: 16, keeps: { days: 10, at: 0, freezes: -0.2, class: cut } }
  - { id: own, name: Own, keeps: { days: 10, at: 0, q10: 3 } }
  - { id: basil, name: Basil, price: 30, chill: 12 }
  - { id: eggplant, name: Eggplants }
  - { id: strawberry, name: Strawberries, price: 8 }
  - { id: moonflower, name: Moonflowers }
deliveries: ${deliveries}
`;

type Hub = Awaited<ReturnType<typeof servedHub>>;
export type ColdHub = Hub & {
  readonly ask: <Body = LotHistory>(
    method: 'GET' | 'POST' | 'PATCH',
    url: string,
    payload?: object,
  ) => Promise<{ status: number; body: Body & { error?: string } }>;
  /** Readings each ten minutes from `from` up to and including `to`. */
  readonly readings: (
    probe: string,
    from: number,
    to: number,
    value: number | ((t: number) => number),
  ) => void;
  readonly lots: (state?: string) => Promise<Lot[]>;
};

/** A hub of that farm; the clock stands at T and is moved by the test. */
export async function coldHub(farm: Parameters<typeof coldFarm>[0] = {}): Promise<ColdHub> {
  const hub = await servedHub({ now: T, farm: coldFarm(farm) });
  onTestFinished(() => {
    if (hub.faults.length > 0) throw hub.faults[0];
  });
  const ask: ColdHub['ask'] = async (method, url, payload) => {
    const reply = await hub.app.inject({ method, url, ...(payload ? { payload } : {}) });
    return { status: reply.statusCode, body: reply.json() };
  };
  return {
    ...hub,
    ask,
    readings: (probe, from, to, value) => {
      for (let t = from; t <= to; t += 10 * MINUTE) {
        if (hub.clock.now() < t) hub.clock.set(t);
        const v = typeof value === 'number' ? value : value(t);
        hub.core.intake.receive(
          {
            topic: `garden/${probe}/temperature`,
            payload: Buffer.from(JSON.stringify({ v, t })),
            receivedAt: t,
            again: false,
          },
          (error) => {
            if (error) throw error;
          },
        );
      }
      hub.core.intake.flush(); // one commit for all of them
    },
    lots: async (state = 'stored') => (await ask<Lot[]>('GET', `/api/lots?state=${state}`)).body,
  };
}
