import type { Batch, BatchEvent } from '../batches/index.ts';
import type { BatchEntry, BatchHistory, Batch as BatchShown } from '../contract/index.ts';
import { undoneIn } from '../journal/index.ts';
import { cropName } from '../lots/index.ts';
import { batchEventWords, batchFields, batchWords, eventTime, screens } from '../words/index.ts';
import type { ApiParts } from './parts.ts';
import { iso, isoOrNull, nameOf, rounded, roundedOrNull } from './present.ts';

const DAY = 86_400_000; // ms

/** A batch as it stands, in words too. */
export function shownBatch(parts: ApiParts, batch: Batch, now: number): BatchShown {
  const told = ({ entry, at, who }: { entry: number; at: number; who: string }) => ({
    ...{ entry, at: iso(at), by: who },
  });
  const last = batch.notes.at(-1);
  const end = batch.endedAt ?? now;
  return {
    id: batch.id,
    crop: batch.crop,
    name: cropName(parts.farm(), batch.crop),
    variety: batch.variety,
    trays: batch.trays,
    traysLeft: batch.traysLeft,
    sownAt: iso(batch.sownAt),
    days: rounded(Math.max(0, end - batch.sownAt) / DAY),
    place: batch.place,
    placeName: nameOf(parts, batch.place),
    stays: batch.stays.map(({ place, from }, i) => ({
      place,
      placeName: nameOf(parts, place),
      from: iso(from),
      to: isoOrNull(batch.stays[i + 1]?.from ?? batch.endedAt),
    })),
    seedCost: roundedOrNull(batch.seedCost),
    otherCost: roundedOrNull(batch.otherCost),
    meantFor: batch.meantFor,
    state: batch.state,
    endedAt: isoOrNull(batch.endedAt),
    readyAt: {
      young: isoOrNull(batch.readyAt.young),
      later: isoOrNull(batch.readyAt.later),
    },
    partOf: batch.partOf,
    parted: batch.parted.map((one) => ({ ...told(one), into: one.into, trays: one.trays })),
    cuts: batch.cuts.map((cut) => {
      const { kg, trays, stage, clears, minutes, price, lostKg, note } = cut;
      return { ...told(cut), kg, trays, stage, clears, minutes, price, lostKg, note };
    }),
    thrownOut: batch.thrownOut.map((one) => ({
      ...told(one),
      ...{ trays: one.trays, look: one.look, note: one.note },
    })),
    notes: batch.notes.map((one) => ({
      ...told(one),
      ...{ look: one.look, note: one.note },
      photo: one.photo === null ? null : `/api/photos/${one.photo}`,
    })),
    works: batch.works.map((one) => ({ ...told(one), work: one.work, minutes: one.minutes })),
    entry: batch.entries.find(({ body }) => body.event === 'sown')?.id ?? 0,
    entries: batch.entries.length,
    words: batchWords({
      state: batch.state,
      trays: batch.trays,
      traysLeft: batch.traysLeft,
      kg: batch.cuts.reduce((sum, { kg }) => sum + kg, 0),
      look: last?.look ?? null,
      seenAgo: last === undefined ? null : Math.max(0, now - last.at),
    }),
  };
}

/** The batch with everything that was ever said of it, the newest first. */
export function wholeBatch(
  parts: ApiParts,
  batch: Batch,
  made: string | null,
  now: number,
): BatchHistory {
  return { ...shownBatch(parts, batch, now), history: batchEntries(parts, batch), made };
}

function batchEntries(parts: ApiParts, batch: Batch): BatchEntry[] {
  const undone = undoneIn(batch.entries);
  return batch.entries
    .map(({ id, t, who, body }) => ({
      ...{ entry: id, t: iso(t), who, event: body.event, undone: undone.has(id) },
      words: batchEventWords(eventFacts(parts, body)),
    }))
    .reverse();
}

/** An entry as its sentence needs it: places by name, what was corrected already worded. */
function eventFacts(parts: ApiParts, body: BatchEvent): Parameters<typeof batchEventWords>[0] {
  const zone = parts.calendar().zone;
  const about = { zone, at: 'at' in body ? body.at : null };
  const place = (id: string) => nameOf(parts, id);
  if (body.event === 'sown') {
    const { trays, sownAt } = body.facts;
    const to = place(body.partOf?.stays.at(-1)?.place ?? body.facts.place);
    const heed = body.override ?? null;
    return {
      ...{ ...about, at: body.partOf?.stays.at(-1)?.from ?? sownAt, event: 'sown', trays, to },
      ...{ from: body.partOf?.batch ?? null, warning: heed?.warning, by: heed?.by },
    };
  }
  if (body.event === 'moved') {
    const { minutes, override: heed } = body;
    const to = place(body.place);
    return { ...about, event: 'moved', to, minutes, warning: heed?.warning, by: heed?.by };
  }
  if (body.event === 'corrected')
    return {
      ...{ ...about, event: 'corrected', note: body.note },
      set: Object.entries(body.set).map(
        ([field, value]) => `${batchFields[field] ?? field} ${correctedTo(parts, field, value)}`,
      ),
    };
  return { ...body, ...about };
}

/** What a field of a batch was corrected to: money in the farm's, days and times as they are said. */
function correctedTo(parts: ApiParts, field: string, value: string | number | null): string {
  if (value === null) return '–';
  if (field === 'place') return nameOf(parts, String(value));
  if (field === 'crop') return cropName(parts.farm(), String(value));
  if (field === 'meantFor') return screens.dayInText(String(value));
  if (typeof value === 'string') return value;
  if (field === 'sownAt') return eventTime(value, parts.calendar().zone);
  if (field === 'seedCost' || field === 'otherCost')
    return screens.cents(value, parts.farm().file.farm.money);
  return String(value);
}
