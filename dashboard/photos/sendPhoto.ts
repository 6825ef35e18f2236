import { Refusal } from '../exchange.ts';
import { handOver, keepPhoto, photosIn, reread } from '../queue/index.ts';
import { link, signInNeeded } from '../state.ts';

/**
 * Hands a photo to the hub; without a link it is kept here, to be sent with the entry it belongs to.
 * @returns the name the entry refers to it by
 * @throws Refusal with a sentence for the screen
 */
export async function sendPhoto(picture: Blob): Promise<string> {
  if (link.value.state === 'lost') return keep(picture);
  try {
    return await handOver(picture);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (error.status === 401) signInNeeded.value = true;
    if (error.status !== null) throw error;
    return keep(picture).catch(() => {
      throw error; // a browser that keeps nothing
    });
  }
}

const keep = async (picture: Blob) =>
  keepPhoto(picture, new Set((await reread()).flatMap(({ body }) => photosIn(body))));
