import { createChance } from './seed.ts';
import type { World, WorldNow } from './world.ts';

// What a made-up season's weather does to what stands in it: mould that needs a film of water and
// mild air to take hold, shows days later and dries out again; frost, heat and cold that hurt by
// their depth and length; slugs that come when they like. All of it is ours, from no source, and
// other arithmetic than the hub's: no threshold of its rules appears here.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const STEP = HOUR / 2;

export type MadeLoss = {
  readonly place: string;
  readonly crop: string;
  /** % of what stood there. */
  readonly percent: number;
  readonly look: string;
  /** When somebody saw it. */
  readonly seen: number;
};
export type Stand = {
  readonly place: string;
  readonly crop: string;
  /** Below this it is hurt, and above this it scorches, °C. */
  readonly bears: number;
  readonly scorches: number;
};

type Health = {
  /** Mould that took hold and is not yet seen: one number for each day since. */
  brewing: number[];
  /** What shows and nobody has taken out, as shares. */
  mould: number;
  frost: number;
  heat: number;
};

const LATENT = 4; // days from infection to grey fur
const FILM = 92; // %RH from which a film of water stands on leaves here
const GROWS = 0.0075; // share an hour at its best temperature
const BEST = 19; // °C
const WIDTH = 8; // K to either side over which it slows
const SLUGS = 0.13; // chance a week
const OVERSEEN = 0.05; // share that nobody notices
const FEWEST = 4; // % that is worth a line in the log

/** Temperature and humidity where the crop stands. */
function airAt(now: WorldNow, place: string): { temperature: number; humidity: number } | null {
  const tunnel = now.tunnels[place];
  if (tunnel) return tunnel;
  const patch = now.patches[place];
  return patch ? { temperature: patch.flower, humidity: patch.humidity } : null;
}

/** How fast mould takes hold in this half hour, in shares. */
function infects({ temperature, humidity }: { temperature: number; humidity: number }): number {
  if (humidity < FILM || temperature < 2) return 0;
  const warmth = Math.exp(-(((temperature - BEST) / WIDTH) ** 2));
  return (GROWS * warmth * STEP) / HOUR;
}

/**
 * Takes the world forward to `to`, and tells what somebody who walks round twice a week would have
 * lost: `walks` are the instants, oldest first.
 */
export function lossSeason(
  world: World,
  stands: readonly Stand[],
  walks: readonly number[],
  to: number,
  seed: number,
): MadeLoss[] {
  const health = new Map<string, Health>(
    stands.map(({ place }) => [place, { brewing: [0], mould: 0, frost: 0, heat: 0 }]),
  );
  const chance = createChance(seed, 'losses');
  const losses: MadeLoss[] = [];
  let walk = 0;
  let draws = 0;
  // What grew and froze before anybody looked is nobody's loss.
  let { t } = world.advanceTo((walks[0] ?? to) - 7 * DAY);
  let day = Math.floor(t / DAY);
  while (t + STEP <= to) {
    t += STEP;
    const now = world.advanceTo(t);
    for (const stand of stands) {
      const air = airAt(now, stand.place);
      const own = health.get(stand.place);
      if (!air || !own) continue;
      own.brewing[0] = (own.brewing[0] ?? 0) + infects(air);
      // Half an hour at 3 K below what it bears takes about a hundredth.
      own.frost += (Math.max(0, stand.bears - air.temperature) * STEP) / HOUR / 140;
      own.heat += (Math.max(0, air.temperature - stand.scorches) * STEP) / HOUR / 60;
    }
    if (Math.floor(t / DAY) > day) {
      day = Math.floor(t / DAY);
      for (const own of health.values()) {
        own.brewing.unshift(0);
        own.mould += own.brewing.length > LATENT ? (own.brewing.pop() ?? 0) : 0;
      }
    }
    for (; (walks[walk] ?? Number.POSITIVE_INFINITY) <= t; walk += 1)
      for (const { place, crop } of stands) {
        const own = health.get(place);
        if (!own) continue;
        const slugs =
          chance.uniform(draws++) < SLUGS / 2 ? 0.03 + 0.12 * chance.uniform(draws++) : 0;
        const found: readonly (readonly [look: string, share: number])[] = [
          [crop === 'pea-shoots' ? 'stem-rot' : 'grey-mould', own.mould],
          [crop === 'strawberry' ? 'frosted' : 'wilted', own.frost],
          ['scorched', own.heat],
          ['eaten', slugs],
        ];
        for (const [look, share] of found) {
          const percent = Math.round(
            100 * Math.min(0.9, share) * (0.8 + 0.4 * chance.uniform(draws++)),
          );
          if (percent < FEWEST || chance.uniform(draws++) < OVERSEEN) continue;
          losses.push({ place, crop, percent, look, seen: walks[walk] ?? t });
        }
        // What was found is taken out.
        [own.mould, own.frost, own.heat] = [0, 0, 0];
      }
  }
  return losses;
}
