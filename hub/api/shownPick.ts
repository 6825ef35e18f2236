import type { PickHistory, Pick as PickShown } from '../contract/index.ts';
import { undoneIn } from '../journal/index.ts';
import { cropName } from '../lots/index.ts';
import type { Pick, PickEvent } from '../picks/index.ts';
import { eventTime, type PickEventFacts, pickEventWords, type pickFields } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, nameOf } from './present.ts';

/** A picking as the pages show it. */
export function shownPick(parts: ApiParts, pick: Pick): PickShown {
  const { entries, ...facts } = pick;
  const farm = parts.farm();
  const price = pick.price ?? farm.crop(pick.crop)?.price ?? null;
  return {
    ...facts,
    at: iso(pick.at),
    name: cropName(farm, pick.crop),
    placeName: nameOf(parts, pick.place),
    entry: entries.find(({ body }) => body.event === 'picked')?.id ?? 0,
    entries: entries.length,
    missing: [
      ...(pick.lostKg === null ? (['lostKg'] as const) : []),
      ...(pick.minutes === null ? (['minutes'] as const) : []),
      ...(price === null ? (['price'] as const) : []),
    ],
  };
}

/** The same with everything that was ever said of it, the newest first. */
export function pickWithPast(parts: ApiParts, pick: Pick): PickHistory {
  const undone = undoneIn(pick.entries);
  return {
    ...shownPick(parts, pick),
    history: pick.entries
      .map(({ id, t, who, body }) => ({
        entry: id,
        t: iso(t),
        who,
        event: body.event,
        undone: undone.has(id),
        words: pickEventWords(factsOf(parts, body)),
      }))
      .reverse(),
  };
}

function factsOf(parts: ApiParts, body: PickEvent): PickEventFacts {
  if (body.event === 'picked') return { event: 'picked', kg: body.facts.kg };
  if (body.event === 'undone') return { event: 'undone' };
  type Field = keyof typeof pickFields;
  const set = Object.entries(body.set).map(([name, value]): [Field, string | number | null] => {
    const field = name as Field;
    if (field === 'at' && typeof value === 'number')
      return [field, eventTime(value, parts.calendar().zone)];
    if (field === 'place') return [field, nameOf(parts, String(value))];
    if (field === 'crop') return [field, cropName(parts.farm(), String(value))];
    return [field, value];
  });
  return { event: 'corrected', set, why: body.why };
}
