import type { PhotoKept } from '../../hub/contract/index.ts';
import { Refusal } from '../ask.ts';
import { signInNeeded } from '../state.ts';
import { words } from '../words.ts';

const PATIENCE = 60_000; // ms; ours: a photo over a weak link

/** @throws Refusal with a sentence for the screen */
export async function sendPhoto(picture: Blob): Promise<PhotoKept> {
  let response: Response;
  try {
    response = await fetch('/api/photos', {
      method: 'POST',
      headers: { 'content-type': picture.type },
      body: picture,
      signal: AbortSignal.timeout(PATIENCE),
    });
  } catch {
    throw new Refusal(null, words.state.noAnswer);
  }
  const body = (await response.json().catch(() => null)) as (PhotoKept & { error?: string }) | null;
  if (response.status === 401) signInNeeded.value = true;
  if (!response.ok || body === null)
    throw new Refusal(response.status, body?.error ?? words.state.badAnswer(response.status));
  return body;
}
