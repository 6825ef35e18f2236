import { randomUUID } from 'node:crypto';
import { type Batch, type BatchEvent, eventFault, undoing } from '../batches/index.ts';
import type { ChangeBatch } from '../contract/index.ts';
import { aboutIn, roomFault, unlessFault } from './batchFacts.ts';
import { correctedEvents } from './correctBatch.ts';
import { expectPhoto } from './expectPhoto.ts';
import { heeded } from './lotFacts.ts';
import { type ApiParts, Refused } from './parts.ts';

export type ToAdd = { readonly id: string; readonly place: string; readonly event: BatchEvent };
export type Change = {
  readonly adds: readonly ToAdd[];
  /** The batch that trays carried off go on as. */
  readonly made: string | null;
};

const timeOr = (said: string | undefined, now: number) =>
  said === undefined ? now : Date.parse(said);

/** What a change of a batch is written down as. @throws Refused with the field */
export function batchChange(parts: ApiParts, batch: Batch, said: ChangeBatch, now: number): Change {
  if (said.undo !== undefined) {
    const undos = undoing(batch, said.undo, parts.batches.all());
    if (typeof undos === 'string') throw new Refused(409, undos);
    return { adds: undos, made: null };
  }
  if (said.correct)
    return { adds: correctedEvents(parts, batch, said.correct, randomUUID(), now), made: null };
  if (said.move) return moved(parts, batch, said.move, said.override, now);
  const event = plainEvent(parts, batch, said, now);
  const command = Object.keys(said).find((key) => key !== 'override') ?? '';
  check(parts, batch, event, command, now);
  return { adds: [{ id: batch.id, place: batch.place, event }], made: null };
}

/** @throws Refused 409 for a batch that is over, 400 with the field for the rest */
function check(parts: ApiParts, batch: Batch, event: BatchEvent, command: string, now: number) {
  const fault = eventFault(batch, event, aboutIn(parts, command, now));
  if (fault !== null && /^Expected a batch that/.test(fault)) throw new Refused(409, fault);
  unlessFault(fault);
}

function plainEvent(
  parts: ApiParts,
  batch: Batch,
  { cut, throwOut, note, work, clear }: ChangeBatch,
  now: number,
): BatchEvent {
  if (cut)
    return {
      event: 'cut',
      at: timeOr(cut.at, now),
      kg: cut.kg,
      trays: cut.trays ?? Math.max(1, batch.traysLeft),
      stage: cut.stage ?? 'later',
      clears: cut.clears ?? parts.farm().crop(batch.crop)?.regrows !== true,
      minutes: cut.minutes ?? null,
      price: cut.price ?? null,
      lostKg: cut.lostKg ?? null,
      note: cut.note || null,
    };
  if (throwOut)
    return {
      event: 'thrown-out',
      trays: throwOut.trays ?? Math.max(1, batch.traysLeft),
      at: timeOr(throwOut.at, now),
      look: throwOut.look,
      note: throwOut.note || null,
    };
  if (note) {
    if (note.photo !== undefined) expectPhoto(parts, note.photo);
    return {
      event: 'noted',
      at: timeOr(note.at, now),
      look: note.look,
      note: note.note || null,
      photo: note.photo ?? null,
    };
  }
  if (work)
    return {
      event: 'worked',
      at: timeOr(work.at, now),
      work: work.work,
      minutes: work.minutes,
    };
  return { event: 'cleared', at: timeOr(clear?.at, now), note: clear?.note || null };
}

/** All of it goes; fewer trays go on as a batch of their own, so that each stands in one place. */
function moved(
  parts: ApiParts,
  batch: Batch,
  move: NonNullable<ChangeBatch['move']>,
  override: ChangeBatch['override'],
  now: number,
): Change {
  const at = timeOr(move.at, now);
  const minutes = move.minutes ?? null;
  const { place } = move;
  const trays = move.trays ?? batch.traysLeft;
  const whole: BatchEvent = { event: 'moved', place, at, minutes };
  check(parts, batch, whole, 'move', now);
  if (batch.stays.findLast(({ from }) => from <= at)?.place === place)
    throw new Refused(
      400,
      `Expected another place than where it stands in move.place, got ${place}`,
    );
  const some = trays !== batch.traysLeft;
  const into = parts.batches.nextId(batch.crop, parts.calendar().dayOf(batch.sownAt));
  const share = (cost: number | null) =>
    cost === null ? null : Number(((cost * trays) / standing(batch)).toFixed(4));
  const costs = { seedCost: share(batch.seedCost), otherCost: share(batch.otherCost) };
  const parted: BatchEvent = { event: 'parted', into, trays, at, ...costs };
  if (some) check(parts, batch, parted, 'move', now);
  const heed = heeded(roomFault(parts, place, trays), override);
  if (!some)
    return {
      adds: [{ id: batch.id, place, event: heed ? { ...whole, override: heed } : whole }],
      made: null,
    };
  const { crop, variety, sownAt, meantFor } = batch;
  const facts = { crop, variety, sownAt, meantFor, trays, place: batch.firstPlace, ...costs };
  const stays = [...batch.stays.filter(({ from }) => from <= at), { place, from: at }];
  const begins: BatchEvent = {
    ...{ event: 'sown', facts, partOf: { batch: batch.id, stays } },
    ...(heed ? { override: heed } : {}),
  };
  const adds: ToAdd[] = [
    { id: batch.id, place: batch.place, event: parted },
    { id: into, place, event: begins },
  ];
  if (minutes !== null && minutes > 0)
    adds.push({ id: into, place, event: { event: 'worked', at, work: 'moving', minutes } });
  return { adds, made: into };
}

/** Trays that the batch's costs are spread over: those that were not carried off before. */
const standing = ({ trays, parted }: Batch) =>
  Math.max(1, trays - parted.reduce((sum, gone) => sum + gone.trays, 0));
