import type { LossEntry, LossHistory, Loss as LossShown } from '../contract/index.ts';
import { undoneIn } from '../journal/index.ts';
import {
  type Loss,
  type LossEvent,
  mayUndo,
  moneyLost,
  shareLost,
  type ThrownOut,
  weightLost,
} from '../losses/index.ts';
import { cropName } from '../lots/index.ts';
import {
  lossAmountWords,
  lossEventWords,
  lossFields,
  lossLookName,
  lossOfWords,
  lossUnitName,
  lossWords,
  screens,
} from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf, roundedOrNull } from './present.ts';

/** Losses as the page shows them: those that were entered, and what lots tell; the newest first. */
export function shownLosses(
  parts: ApiParts,
  range: { readonly from: string; readonly to: string; readonly place?: string | undefined },
): LossShown[] {
  const ofLots = parts.losses.ofLots();
  const wanted = ({ day, place }: { day: string; place: string }) =>
    day >= range.from && day <= range.to && (range.place === undefined || place === range.place);
  return [
    ...parts.losses
      .all()
      .filter(wanted)
      .map((loss) => shownLoss(parts, loss, ofLots)),
    ...ofLots.filter(wanted).map((part) => shownPart(parts, part)),
  ].sort((a, b) => b.day.localeCompare(a.day) || b.enteredAt.localeCompare(a.enteredAt));
}

export function shownLoss(parts: ApiParts, loss: Loss, ofLots = parts.losses.ofLots()): LossShown {
  const farm = parts.farm();
  const twin = loss.another ? undefined : parts.losses.twin(loss, ofLots);
  const [first] = loss.entries;
  const name = cropName(farm, loss.crop);
  return {
    id: loss.id,
    origin: 'entered',
    lot: twin?.lot ?? null,
    ...{ place: loss.place, placeName: nameOf(parts, loss.place), crop: loss.crop, name },
    ...{ amount: loss.amount, unit: loss.unit, of: loss.of },
    share: roundedOrNull(shareLost(farm, loss), 4),
    kg: roundedOrNull(weightLost(farm, loss), 3),
    money: roundedOrNull(moneyLost(farm, loss)),
    ...{ look: loss.look, day: loss.day, batch: loss.batch, note: loss.note },
    photo: loss.photo === null ? null : `/api/photos/${loss.photo}`,
    state: loss.withdrawn ? 'withdrawn' : twin ? 'same' : 'holds',
    entry: first?.id ?? 0,
    entries: loss.entries.length,
    by: first?.who ?? '',
    enteredAt: iso(first?.t ?? 0),
    words: lossWords({ ...loss, name, lot: false }),
  };
}

/** Part of a lot that was thrown out, in the same form. */
export function shownPart(parts: ApiParts, part: ThrownOut): LossShown {
  const farm = parts.farm();
  const name = cropName(farm, part.crop);
  const amount = {
    amount: part.kg,
    unit: 'kg' as const,
    of: { amount: part.of, unit: 'kg' as const },
  };
  return {
    id: part.id,
    origin: 'lot',
    lot: part.lot,
    ...{ place: part.place, placeName: nameOf(parts, part.place), crop: part.crop, name },
    ...amount,
    share: roundedOrNull(shareLost(farm, { ...amount, crop: part.crop }), 4),
    kg: part.kg,
    money: roundedOrNull(moneyLost(farm, { ...amount, crop: part.crop })),
    ...{ look: null, day: part.day, batch: null, note: part.note, photo: null },
    state: 'holds',
    ...{ entry: part.entry, entries: 1, by: part.by, enteredAt: iso(part.at) },
    words: lossWords({ ...amount, name, look: null, lot: true }),
  };
}

/** A loss with everything that was ever said of it, the newest first. */
export function lossWithHistory(parts: ApiParts, loss: Loss): LossHistory {
  const undone = undoneIn(loss.entries);
  const history = loss.entries
    .map(
      (entry): LossEntry => ({
        entry: entry.id,
        t: iso(entry.t),
        who: entry.who,
        event: entry.body.event,
        undone: undone.has(entry.id),
        mayUndo: mayUndo(entry, undone),
        words: eventWords(parts, loss, entry.body),
      }),
    )
    .reverse();
  return { ...shownLoss(parts, loss), history };
}

function eventWords(parts: ApiParts, loss: Loss, body: LossEvent): string {
  switch (body.event) {
    case 'entered': {
      const name = cropName(parts.farm(), body.facts.crop);
      const words = lossWords({ ...body.facts, name, lot: false });
      return lossEventWords({ event: 'entered', words, photo: body.photo !== null });
    }
    case 'photo':
      return lossEventWords({ event: 'photo', added: body.photo !== null });
    case 'undone': {
      const of = loss.entries.find(({ id }) => id === body.entry);
      return lossEventWords({
        event: 'undone',
        words: of ? eventWords(parts, loss, of.body) : null,
      });
    }
    case 'corrected': {
      const unit = body.set.unit ?? unitBefore(loss, body);
      const set = Object.entries(body.set)
        // An amount is said with its unit.
        .filter(([field]) => field !== 'unit' || body.set.amount === undefined)
        .map(
          ([field, value]) => `${lossFields[field] ?? field} ${told(parts, field, value, unit)}`,
        );
      return lossEventWords({ event: 'corrected', set, why: body.why });
    }
  }
}

/** The unit that a loss was counted in when somebody corrected it. */
function unitBefore(loss: Loss, body: LossEvent): Loss['unit'] {
  let unit = loss.unit;
  for (const { body: each } of loss.entries) {
    if (each === body) break;
    if (each.event === 'entered') unit = each.facts.unit;
    if (each.event === 'corrected') unit = each.set.unit ?? unit;
  }
  return unit;
}

function told(parts: ApiParts, field: string, value: unknown, unit: Loss['unit']): string {
  if (value === null) return '–';
  if (field === 'amount') return lossAmountWords(Number(value), unit);
  if (field === 'unit') return lossUnitName(unit);
  if (field === 'day') return screens.dayInText(String(value));
  if (field === 'place') return nameOf(parts, String(value));
  if (field === 'crop') return cropName(parts.farm(), String(value));
  if (field === 'look') return lossLookName(value as Loss['look']);
  if (field === 'of') return lossOfWords(value as NonNullable<Loss['of']>);
  return String(value);
}
