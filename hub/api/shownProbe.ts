import type { Probe } from '../contract/index.ts';
import { keptUnit, quantities } from '../contract/index.ts';
import type { ProbeRow, RefusalCount } from '../store/index.ts';
import { refusalWords } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, isoOrNull } from './present.ts';
import { suggestPlace } from './suggestPlace.ts';

const MINUTE = 60_000;

/** A probe as the Probes page shows it. */
export function shownProbe(
  parts: ApiParts,
  { id, everyMs }: ProbeRow,
  refused: readonly RefusalCount[],
): Probe {
  const { store, snapshots } = parts;
  const here = snapshots.spots.currentOf(id);
  const names = store.readings.quantitiesOf(id);
  const latest = names.flatMap((name) => {
    const newest = store.readings.newest(id, name);
    const quantity = name === 'battery-voltage' ? 'battery' : quantities.find((q) => q === name);
    if (!newest || !quantity) return [];
    const unit = keptUnit[name as keyof typeof keptUnit];
    return [{ quantity, value: newest.value, unit, readAt: iso(newest.t), flag: newest.flag }];
  });
  const battery = latest.find(({ quantity }) => quantity === 'battery');
  return {
    id,
    place: here?.place ?? null,
    spot: (here?.spot as Probe['spot']) ?? null,
    everyMinutes: everyMs / MINUTE,
    heardAt: isoOrNull(parts.heardAt(id)),
    latest,
    battery: battery ? { value: battery.value, unit: battery.unit === 'V' ? 'V' : '%' } : null,
    offsets: corrected(parts, id),
    placements: snapshots.spots
      .all()
      .filter(({ probe }) => probe === id)
      .map(({ place, spot, from, to }) => ({
        place,
        spot: spot as NonNullable<Probe['spot']>,
        from: iso(from),
        to: isoOrNull(to),
      })),
    suggestion: here ? null : suggestPlace(parts, id),
    refused: refused.map(({ reason, count, last, lastAt }) => ({
      reason,
      words: refusalWords(reason),
      count,
      last,
      lastAt: iso(lastAt),
    })),
  };
}

/** Near 3 °C, where most checked probes hang, a slope is worth as much as this. Ours. */
const NEAR = 3; // °C

/** Corrections as the farm file tells them, or as a check has found since. */
function corrected({ store, corrections, clock }: ApiParts, id: string): Probe['offsets'] {
  const found = corrections.added(id, 'temperature', NEAR, clock.now());
  const offsets = store.probes.offsets(id);
  return found === undefined ? offsets : { ...offsets, temperature: Number(found.toFixed(2)) };
}
