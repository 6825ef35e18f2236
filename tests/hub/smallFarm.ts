import { join } from 'node:path';
import { pino } from 'pino';
import { onTestFinished } from 'vitest';
import type { ApiParts } from '../../hub/api/index.ts';
import { buildServer } from '../../hub/api/index.ts';
import { steppedClock } from '../../hub/clock.ts';
import { type Core, joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { photosIn } from '../../hub/photos/index.ts';
import type { Store } from '../../hub/store/index.ts';
import { tempFolder, tempStore } from './tempStore.ts';

export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;

/** An invented farm: one tunnel, a patch, a cool room and a mast outside. */
export const farmText = ({ zone = 'Europe/Dublin', base = 10, offset = 0 } = {}) => `
farm: { name: Test Garden (invented), zone: ${zone}, lat: 51.9, lon: -8.3, altitude: 25, money: EUR, wage: 16 }
places:
  - { id: long-house, name: Long House, kind: tunnel, vents: true, crop: basil }
  - { id: outside, name: Outside, kind: outdoor }
  - { id: south-patch, name: South patch, kind: patch, cover: { minutes: 35, value: 900, damage: -2.2 } }
  - { id: cool-room, name: Cool room, kind: cool-room, setPoint: 3, limit: 5, volume: 12 }
probes:
  - { id: p1, place: long-house, spot: canopy, every: 5m, offset: { temperature: ${offset} } }
  - { id: mast, place: outside, spot: air, every: 5m }
  - { id: cold, place: cool-room, spot: air, every: 5m }
crops:
  - { id: basil, base: ${base}, band: [18, 28], heatLimit: 32, chill: 11 }
mappings:
  - topic: weather/+probe/state
    fields: [{ quantity: temperature, pointer: /air/t }, { quantity: humidity, pointer: /air/rh }]
`;

export const quietLog = pino({ level: 'silent' });

export type SmallHub = {
  readonly core: Core;
  readonly clock: ReturnType<typeof steppedClock>;
  readonly store: Store;
  readonly path: string;
  readonly parts: ApiParts;
  /** Takes readings in through the real intake, as if sent at their own time. */
  readonly send: (
    probe: string,
    quantity: 'temperature' | 'humidity',
    t: number,
    v: number,
  ) => void;
};

/** Intake, store, snapshot, rules and tasks joined (no farm: with an empty `farm`) over a temporary file, under a stepped clock. */
export function smallHub({
  now = Date.UTC(2026, 4, 10, 9),
  farm = farmText(),
  open = true,
  isSet = true,
  store: given = undefined as ReturnType<typeof tempStore> | undefined,
} = {}): SmallHub {
  const { store, path } = given ?? tempStore();
  const clock = { ...steppedClock(now), isSet: () => isSet };
  if (farm !== '' && store.farm() === undefined) importFarm(store, farm, now);
  const core = joinCore({ store, clock, log: quietLog, waitMs: 1 });
  const parts: ApiParts = {
    ...core,
    look: () => core.look(),
    brokerConnected: () => true,
    open,
  };
  const send: SmallHub['send'] = (probe, quantity, t, value) => {
    core.intake.receive(
      {
        topic: `garden/${probe}/${quantity}`,
        payload: Buffer.from(JSON.stringify({ v: value, t })),
        receivedAt: clock.now(),
        again: false,
      },
      (error) => {
        if (error) throw error;
      },
    );
    core.intake.flush();
  };
  return { core, clock, store, path, parts, send };
}

/** The same with its HTTP server, to be asked without a port. */
export async function servedHub(
  options: Parameters<typeof smallHub>[0] = {},
  served: Partial<Parameters<typeof buildServer>[1]> = {},
) {
  const hub = smallHub(options);
  const faults: unknown[] = [];
  const photos = photosIn(join(tempFolder(), 'photos'), hub.clock.now);
  const app = await buildServer(Object.assign(hub.parts, { photos }), {
    cookieSecret: 'only-for-tests-only-for-tests-only',
    pages: null,
    version: '0.0.0',
    onFault: (error) => faults.push(error),
    ...served,
  });
  onTestFinished(() => app.close());
  return { ...hub, app, photos, faults };
}
