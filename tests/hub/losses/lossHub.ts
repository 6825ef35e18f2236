import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { buildServer } from '../../../hub/api/index.ts';
import type { Loss, LossHistory } from '../../../hub/contract/index.ts';
import { photosIn } from '../../../hub/photos/index.ts';
import { HOUR, smallHub } from '../smallFarm.ts';
import { tempFolder } from '../tempStore.ts';

export const DAY = 24 * HOUR;
/** A Friday at noon. */
export const T = Date.UTC(2026, 4, 15, 12);

/** An invented farm of two tunnels, a patch and a cool room. */
const FARM = `
farm: { name: Test Garden (invented), zone: UTC, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil, trays: 20 }
  - { id: sun-house, name: Sun House, kind: tunnel, vents: true, crop: basil, trays: 10 }
  - { id: south-patch, name: South patch, kind: patch, crop: strawberry }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5 }
probes:
  - { id: leaf, place: long-house, spot: canopy, every: 60m }
  - { id: cold, place: cool-room, spot: air, every: 60m }
crops:
  - { id: basil, name: Basil, heatLimit: 32, chill: 11, price: 30, perTray: 0.5 }
  - { id: strawberry, name: Strawberries, heatLimit: 30, chill: -1.1, price: 8 }
  - { id: leaves, name: Leaves, price: 16, keeps: { days: 10 } }
`;

export type LossHub = Awaited<ReturnType<typeof lossHub>>;

/** A hub of that farm with a folder for photos; the clock stands at T and is moved by the test. */
export async function lossHub({ store = undefined as Parameters<typeof smallHub>[0] } = {}) {
  const hub = smallHub({ now: T, farm: FARM, ...store });
  const folder = join(tempFolder(), 'photos');
  const photos = photosIn(folder, hub.clock.now);
  const faults: unknown[] = [];
  const app = await buildServer(
    { ...hub.parts, photos },
    {
      cookieSecret: 'only-for-tests-only-for-tests-only',
      pages: null,
      version: '0.0.0',
      onFault: (error) => faults.push(error),
    },
  );
  onTestFinished(async () => {
    await app.close();
    if (faults.length > 0) throw faults[0];
  });
  const ask = async <Body = LossHistory>(
    method: 'GET' | 'POST' | 'PATCH',
    url: string,
    payload?: object,
  ) => {
    const reply = await app.inject({ method, url, ...(payload ? { payload } : {}) });
    return { status: reply.statusCode, body: reply.json() as Body & { error?: string } };
  };
  return {
    ...hub,
    app,
    ask,
    folder,
    photos,
    send: async (bytes: Uint8Array, type = 'image/jpeg') =>
      app.inject({
        method: 'POST',
        url: '/api/photos',
        payload: Buffer.from(bytes),
        headers: { 'content-type': type },
      }),
    enter: (said: object) =>
      ask('POST', '/api/losses', {
        ...{ place: 'long-house', crop: 'basil', amount: 4, unit: 'trays', look: 'grey-mould' },
        ...said,
      }),
    losses: async (query = '') => (await ask<Loss[]>('GET', `/api/losses${query}`)).body,
    /** Hourly readings of temperature and humidity from `from` to `to`. */
    air(probe: string, from: number, to: number, at: (t: number) => readonly [number, number]) {
      for (let t = from; t < to; t += HOUR) {
        if (hub.clock.now() < t) hub.clock.set(t);
        for (const [i, quantity] of (['temperature', 'humidity'] as const).entries())
          hub.core.intake.receive(
            {
              topic: `garden/${probe}/${quantity}`,
              payload: Buffer.from(JSON.stringify({ v: at(t)[i], t })),
              receivedAt: t,
              again: false,
            },
            (error) => {
              if (error) throw error;
            },
          );
      }
      hub.core.intake.flush();
    },
  };
}

/** The smallest picture of each kind that its first bytes tell; what follows is made up. */
export const picture = (kind: 'jpg' | 'png' | 'webp', rest = 'invented') =>
  Buffer.concat([
    Buffer.from(
      {
        jpg: [0xff, 0xd8, 0xff, 0xe0],
        png: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
        webp: [0x52, 0x49, 0x46, 0x46, 8, 0, 0, 0, 0x57, 0x45, 0x42, 0x50],
      }[kind],
    ),
    Buffer.from(rest),
  ]);
