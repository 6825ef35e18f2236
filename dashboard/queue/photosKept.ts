import { exchange, Refusal } from '../exchange.ts';
import { makeKey } from '../makeKey.ts';
import { words } from '../words.ts';
import { allIn, dropIn, oneIn, putIn } from './database.ts';

// Photos that wait with the entry they belong to. Bytes, because not every browser keeps Blobs.

/** Ours: about twenty as this page makes them smaller. */
export const MOST_PHOTO_BYTES = 10_000_000;
/** One that no entry came for. Ours, as in the hub. */
const UNUSED_FOR = 86_400_000; // ms
const PATIENCE = 60_000; // ms; ours: a photo over a weak link

type KeptPhoto = {
  readonly name: string;
  readonly type: string;
  readonly bytes: ArrayBuffer;
  readonly wall: number;
};

/** @throws Refusal of status null where there is no room for it */
export async function keepPhoto(picture: Blob, used: ReadonlySet<string>): Promise<string> {
  const kept = await allIn<KeptPhoto>('photos');
  let room = MOST_PHOTO_BYTES;
  for (const one of kept) {
    if (used.has(one.name) || one.wall > Date.now() - UNUSED_FOR) room -= one.bytes.byteLength;
    else await dropIn('photos', one.name);
  }
  if (picture.size > room) throw new Refusal(null, words.queue.noRoomForPhoto);
  const name = `waiting:${makeKey()}`;
  const bytes = await picture.arrayBuffer();
  await putIn('photos', { name, type: picture.type, bytes, wall: Date.now() } satisfies KeptPhoto);
  return name;
}

/** Sends a photo. @returns the name the hub gave it. @throws Refusal */
export async function handOver(picture: Blob): Promise<string> {
  const answer = (await exchange('/api/photos', {
    method: 'POST',
    headers: { 'content-type': picture.type },
    body: picture,
    patience: PATIENCE,
  })) as { photo: string };
  return answer.photo;
}

/** Sends one that waited. @throws Refusal of status 404 where this device has it no more */
export async function handOverKept(name: string): Promise<string> {
  const kept = await oneIn<KeptPhoto>('photos', name);
  if (kept === undefined) throw new Refusal(404, words.queue.photoGone);
  return handOver(new Blob([kept.bytes], { type: kept.type }));
}
