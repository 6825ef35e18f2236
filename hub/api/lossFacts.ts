import { storageOf } from '../../rules/cooler/index.ts';
import type { ChangeLoss } from '../contract/index.ts';
import { undoneIn } from '../journal/index.ts';
import type { Loss, LossEvent, LossFacts } from '../losses/index.ts';
import { mayUndo } from '../losses/index.ts';
import { sameLossWords, shown } from '../words/index.ts';
import { expectPhoto } from './expectPhoto.ts';
import { type ApiParts, Refused } from './parts.ts';
import { nameOf } from './present.ts';

/** The oldest day a loss may be entered for: later it is not remembered but made up. Ours. */
const OLDEST = 800; // days

/** What no schema of one field can see. @throws Refused 400 with the field */
export function checkLoss(parts: ApiParts, facts: LossFacts, now: number) {
  const { place, crop, amount, unit, of, day, batch } = facts;
  const farm = parts.farm();
  const calendar = parts.calendar();
  if (!farm.place(place)) {
    const ids = farm.places.map(({ id }) => id).join(', ');
    throw new Refused(400, `Expected one of ${ids} in place, got ${shown(place)}`);
  }
  if (!farm.crop(crop) && !storageOf(crop)) {
    const crops = farm.file.crops.map(({ id }) => id).join(', ');
    throw new Refused(400, `Expected one of ${crops} in crop, got ${shown(crop)}`);
  }
  if (unit === 'share' && amount > 100)
    throw new Refused(400, `Expected at most 100 % in amount, got ${amount}`);
  if (of !== null && unit === of.unit && amount > of.amount)
    throw new Refused(
      400,
      `Expected at most the ${of.amount} ${of.unit} of of in amount, got ${amount}`,
    );
  const today = calendar.dayOf(now);
  if (day > today) throw new Refused(400, `Expected today (${today}) or before in day, got ${day}`);
  if (day < calendar.add(today, -OLDEST))
    throw new Refused(400, `Expected a day of the last ${OLDEST} in day, got ${day}`);
  if (batch !== null && !parts.losses.batchKnown(batch))
    throw new Refused(400, `Expected the id of a batch in batch, got ${shown(batch)}`);
}

/** @throws Refused 409 where a lot tells of it already, unless it is said to be another */
export function expectNew(parts: ApiParts, facts: LossFacts) {
  const twin = parts.losses.twin(facts);
  if (twin === undefined) return;
  const told = sameLossWords(
    twin.kg,
    parts.farm().crop(twin.crop)?.name ?? twin.crop,
    nameOf(parts, twin.place),
    twin.day,
  );
  throw new Refused(
    409,
    `Expected another loss than what the hub knows, got perhaps the same: ${told}`,
  );
}

/** What a change comes to as an entry. @throws Refused with the field */
export function lossEvent(
  parts: ApiParts,
  loss: Loss,
  { correct, photo, undo, why }: ChangeLoss,
  now: number,
): LossEvent {
  if (undo !== undefined) {
    const undone = undoneIn(loss.entries);
    if (loss.entries.some((entry) => entry.id === undo && mayUndo(entry, undone)))
      return { event: 'undone', entry: undo };
    throw new Refused(
      409,
      `Expected an entry of ${loss.id} that can be taken back in undo, got ${undo}`,
    );
  }
  if (photo !== undefined) {
    if (photo === null && loss.photo === null)
      throw new Refused(409, `Expected a loss with a photo to withdraw, got none (${loss.id})`);
    if (photo !== null && loss.photo !== null)
      throw new Refused(
        409,
        `Expected a loss without a photo, got one: withdraw it first (${loss.id})`,
      );
    if (photo !== null) expectPhoto(parts, photo);
    return { event: 'photo', photo };
  }
  const set = Object.fromEntries(
    Object.entries(correct ?? {}).filter(([, value]) => value !== undefined),
  ) as Partial<LossFacts>;
  if (Object.keys(set).length === 0)
    throw new Refused(400, 'Expected a field to correct in correct, got none');
  checkLoss(parts, { ...loss, ...set }, now);
  return { event: 'corrected', set, why: why || null };
}
