import { chillingWarning, storageOf } from '../../rules/cooler/index.ts';
import { median } from '../../rules/statistics/index.ts';
import type { Cooling, LotClass } from '../contract/index.ts';
import { cropName, keepingOf, type LotFacts } from '../lots/index.ts';
import { chillWarning, shown } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';
import { iso, nameOf } from './present.ts';

/** What somebody sends of a lot; a field left out is not said. Times ISO 8601. */
export type LotSaid = {
  readonly crop?: string | undefined;
  readonly kg?: number | undefined;
  readonly place?: string | undefined;
  readonly from?: string | null | undefined;
  readonly harvestedAt?: string | null | undefined;
  readonly storedAt?: string | undefined;
  readonly cooled?: Cooling | null | undefined;
  readonly class?: LotClass | null | undefined;
  readonly price?: number | null | undefined;
};

/** Fields that were said, with times in ms. */
export function saidFacts(said: LotSaid): Partial<LotFacts> {
  const { harvestedAt, storedAt, ...rest } = said;
  const facts: Record<string, unknown> = { ...rest };
  if (harvestedAt !== undefined)
    facts.harvestedAt = harvestedAt === null ? null : Date.parse(harvestedAt);
  if (storedAt !== undefined) facts.storedAt = Date.parse(storedAt);
  return Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
}

/** The cool room of an id. @throws Refused 400 */
export function coolRoomOf(parts: ApiParts, id: string, field: string) {
  const rooms = parts.farm().places.filter(({ kind }) => kind === 'cool-room');
  const room = rooms.find((one) => one.id === id);
  if (room) return room;
  const ids = rooms.map((one) => one.id).join(', ') || 'none on this farm';
  throw new Refused(400, `Expected a cool room (${ids}) in ${field}, got ${shown(id)}`);
}

/** What no schema of one field can see. @throws Refused 400 with the field */
export function checkFacts(parts: ApiParts, facts: LotFacts, now: number) {
  const { crop, place, from, harvestedAt, storedAt } = facts;
  const farm = parts.farm();
  coolRoomOf(parts, place, 'place');
  if (!farm.crop(crop) && !storageOf(crop)) {
    const crops = farm.file.crops.map(({ id }) => id).join(', ');
    throw new Refused(400, `Expected one of ${crops} in crop, got ${shown(crop)}`);
  }
  if (from !== null && !farm.place(from))
    throw new Refused(400, `Expected a place of the farm in from, got ${shown(from)}`);
  if (storedAt > now)
    throw new Refused(400, `Expected a time that is past in storedAt, got ${iso(storedAt)}`);
  if (harvestedAt !== null && harvestedAt > storedAt)
    throw new Refused(
      400,
      `Expected harvestedAt at or before storedAt (${iso(storedAt)}), got ${iso(harvestedAt)}`,
    );
}

/**
 * What speaks against putting a crop into a room, in words: it is hurt by the cold the room has had
 * over the last 24 hours. null where nothing does, or where nobody knows how cold the room is.
 */
export function warningOf(parts: ApiParts, crop: string, room: string, now: number) {
  const farm = parts.farm();
  const { chillMin } = keepingOf(farm, crop);
  if (chillMin === null) return null;
  const values = parts.snapshots.lots.dayOf(room, now).flatMap(({ value }) => value ?? []);
  const usual = values.length === 0 ? null : median(values);
  if (usual === null || chillingWarning(chillMin, usual) !== true) return null;
  return chillWarning(cropName(farm, crop), chillMin, nameOf(parts, room), usual);
}

/** @throws Refused 409 with the warning, unless somebody overrides it by name */
export function heeded(
  warning: string | null,
  override: { readonly by: string } | undefined,
): { by: string; warning: string } | null {
  if (warning === null) return null;
  if (override) return { by: override.by, warning };
  throw new Refused(
    409,
    `Expected a name in override.by to put it there anyway, got none: ${warning}`,
  );
}
