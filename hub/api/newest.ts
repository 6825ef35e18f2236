import { type ApiParts, type Looked, Refused } from './parts.ts';

/** The newest look; a hub that has just started has none yet. @throws Refused 503 */
export function newest(parts: ApiParts): Looked {
  const looked = parts.lastLook();
  if (!looked)
    throw new Refused(
      503,
      'Expected a first look at the farm, got none yet: try again in a moment',
    );
  return looked;
}
