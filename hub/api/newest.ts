import { noFarmYet } from '../words/index.ts';
import { type ApiParts, type Looked, Refused } from './parts.ts';
import { iso } from './present.ts';

/** The newest look; a hub that has just started has none yet. @throws Refused 503 */
export function newest(parts: ApiParts): Looked {
  const looked = parts.lastLook();
  if (!looked && !parts.farm().settled) throw new Refused(503, noFarmYet);
  if (!looked)
    throw new Refused(
      503,
      parts.clockState() === 'unset'
        ? `Expected a clock that is set, got ${iso(parts.clock.now())}: readings are kept and wait for it (${parts.held()} so far)`
        : 'Expected a first look at the farm, got none yet: try again in a moment',
    );
  return looked;
}
