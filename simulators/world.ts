import { createAirMass, type WeatherPiece } from './airMass.ts';
import { type CoolRoom, coolRoomKind, firstCoolRoom, nextCoolRoom } from './coolRoom.ts';
import { type CoolRoomEvent, createCoolRoomDay } from './coolRoomDay.ts';
import { createLocalTime } from './localTime.ts';
import { nextPatch, type Patch, type PatchKind } from './patch.ts';
import { firstTunnel, nextTunnel, type Tunnel, type TunnelKind } from './tunnel.ts';
import { createVents, type VentHabit, type VentPiece } from './vents.ts';
import { firstWeather, nextWeather, STEP, type Weather } from './weather.ts';

const MINUTE = 60_000;

/** Everything that makes one made-up farm: no state in it. */
export type FarmPlan = {
  readonly lat: number;
  readonly lon: number;
  readonly zone: string;
  /** Every run steps from here, so that history and live probes meet the same world. */
  readonly epoch: number;
  readonly weather: readonly WeatherPiece[];
  readonly tunnels: Readonly<
    Record<string, { kind: TunnelKind; habit: VentHabit; vents: readonly VentPiece[] }>
  >;
  readonly patches: Readonly<
    Record<string, { kind: PatchKind; covered: readonly { from: number; to: number }[] }>
  >;
  readonly coolRoom: readonly CoolRoomEvent[];
};

/** The made-up farm at one minute. */
export type WorldNow = {
  readonly t: number;
  readonly weather: Weather;
  readonly tunnels: Readonly<Record<string, Tunnel>>;
  readonly patches: Readonly<Record<string, Patch>>;
  readonly coolRoom: CoolRoom;
  /** mm since the epoch. */
  readonly rainTotal: number;
};

/** A world that only goes forward, minute by minute, and is the same for the same plan and seed. */
export function createWorld(plan: FarmPlan, seed: number) {
  const airMass = createAirMass(seed, plan.weather);
  const local = createLocalTime(plan.zone);
  const coolRoomDay = createCoolRoomDay(seed, local, plan.coolRoom);
  const vents = new Map(
    Object.entries(plan.tunnels).map(([name, tunnel]) => [
      name,
      createVents(seed, name, tunnel.habit, local, tunnel.vents),
    ]),
  );

  let t = Math.floor(plan.epoch / STEP) * STEP;
  let weather = firstWeather(t, airMass(t));
  let tunnels: Record<string, Tunnel> = {};
  let patches: Record<string, Patch> = {};
  let coolRoom = firstCoolRoom(t, coolRoomKind);
  let around = weather.temperature;
  let rainTotal = 0;

  function stepGarden() {
    weather = nextWeather(weather, airMass(t), plan.lat, plan.lon);
    rainTotal += weather.rain;
    const before = { tunnels, patches };
    tunnels = {};
    for (const [name, { kind }] of Object.entries(plan.tunnels)) {
      const last = before.tunnels[name] ?? firstTunnel(weather);
      const open = vents.get(name)?.(t, last.temperature) ?? 0;
      tunnels[name] = nextTunnel(last, kind, weather, open);
    }
    patches = {};
    for (const [name, { kind, covered }] of Object.entries(plan.patches)) {
      const on = covered.some(({ from, to }) => t >= from && t < to);
      patches[name] = nextPatch(before.patches[name] ?? null, kind, weather, on);
    }
    // The shed around the cool room follows outside over some hours; people and sun warm it.
    const shed = weather.temperature + 2.5 + 0.004 * weather.sun;
    around += (shed - around) / 30;
  }

  const now = (): WorldNow => ({ t, weather, tunnels, patches, coolRoom, rainTotal });
  return {
    now,
    /** Steps until the world's minute is `until` (never backwards). */
    advanceTo(until: number): WorldNow {
      while (t + MINUTE <= until) {
        t += MINUTE;
        if (t % STEP === 0) stepGarden();
        const today = coolRoomDay(t, weather.temperature);
        coolRoom = nextCoolRoom(coolRoom, coolRoomKind, { ...today, around });
      }
      return now();
    },
  };
}

export type World = ReturnType<typeof createWorld>;
