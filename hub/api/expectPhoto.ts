import { shown } from '../words/index.ts';
import { type ApiParts, Refused } from './parts.ts';

/** @throws Refused 400 for a photo that was not sent before */
export function expectPhoto(parts: ApiParts, photo: string) {
  if (!parts.photos) throw new Refused(503, 'Expected a hub that keeps photos, got one without');
  if (!parts.photos.has(photo))
    throw new Refused(400, `Expected a photo that was sent in photo, got ${shown(photo)}`);
}
