import type { Evidence, Saving } from '../answer.ts';
import { coldHours, nightAir } from '../days/index.ts';
import { type Celsius, celsius, type Instant, instant } from '../units.ts';
import { readAt, within } from './column.ts';
import { by, put } from './how.ts';
import { type Look, outsideLow, outsideNow } from './look.ts';
import { fact } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { OPEN_NIGHT, OURS, TUNNEL_NIGHT } from './sources.ts';

const A_DAY = 86_400_000; // ms

/** What a night with the vents open spares over one with them shut; below zero: costs. */
export type NightVents = {
  /** Hours more of cold that hurts, and hours fewer that suit a disease; null where nobody knows. */
  readonly colder: number;
  readonly drier: number | null;
  readonly saves: Saving;
  readonly because: readonly Evidence[];
};

/**
 * What leaving the vents open tonight spares of the trays that stand there: the hours fewer that
 * suit a disease, less the hours more of cold that hurts, each at the share of the crop that a
 * harmful hour costs. null where no trays, no forecast or no readings of last night are known.
 *
 * Source: nightAir, coldHours and harmPerHour name theirs; that the two kinds of hours weigh alike
 * is ours.
 */
export function nightVents(look: Look, place: PlaceNow): NightVents | null {
  const { snapshot, sun } = look;
  const tonight = outsideLow(look);
  const outside = outsideNow(snapshot);
  const stands = snapshot.trays?.standing.filter((stand) => stand.place === place.id) ?? [];
  if (sun === null || tonight === null || outside === null || stands.length === 0) return null;
  const { night } = sun;
  const window = within(outside.column, instant(night.set - A_DAY), instant(night.rise - A_DAY));
  const reads: { t: Instant; temperature: Celsius }[] = [];
  for (let i = window.from; i < window.to; i++) {
    const read = readAt(outside.column, i);
    if (read !== null) reads.push({ t: read.t, temperature: celsius(read.value) });
  }

  let [kg, money, worth] = [0, 0, 0];
  let untold = false;
  let [colder, drier] = [0, 0];
  let unsure = true;
  for (const { crop: id, trays } of stands) {
    const crop = snapshot.crops.find((one) => one.id === id);
    const known = snapshot.trays?.crops.find((one) => one.crop === id);
    const here = known?.past?.find((one) => one.place === place.id)?.days ?? [];
    const air = nightAir(here, known?.pastOutside ?? []);
    const cold = (keeps: number) =>
      coldHours(reads, tonight.low, keeps, crop?.chill ?? null, night.hours);
    const [open, shut] = [cold(air.keeps.open), cold(air.keeps.shut)];
    if (known === undefined || crop?.perTray == null || open === null || shut === null) {
      untold = true;
      continue;
    }
    const { damp } = air;
    const less = damp.shut === null || damp.open === null ? null : damp.shut - damp.open;
    unsure &&= less === null;
    const kilograms = trays * crop.perTray;
    const harm = known.share.mean * ((less ?? 0) - (open - shut));
    kg += kilograms * harm;
    if (crop.price === null) untold = true;
    else money += kilograms * crop.price * harm;
    colder += kilograms * (open - shut);
    drier += kilograms * (less ?? 0);
    worth += kilograms;
  }
  if (untold || worth === 0) return null;
  const how = by(
    'nightVents',
    put('tonight-low', tonight.low.mean, '°C'),
    put('spread', tonight.low.sd, 'K'),
    put('kilograms', worth, 'kg'),
  );
  const mean = { colder: colder / worth, drier: unsure ? null : drier / worth };
  return {
    ...mean,
    saves: { amount: kg, money },
    because: [
      ...(mean.drier === null
        ? []
        : [fact('open-damp-hours-fewer', mean.drier, 'h', null, OPEN_NIGHT, how)]),
      fact('open-cold-hours-more', mean.colder, 'h', null, TUNNEL_NIGHT, how),
      fact('open-night-spares', money, 'money', null, OURS, how),
    ],
  };
}
