import type { Answer } from '../answer.ts';
import { closeUp } from './closeUp.ts';
import { by, put } from './how.ts';
import type { Look } from './look.ts';
import { openUp } from './openUp.ts';
import { fact, leave } from './say.ts';
import type { PlaceNow } from './snapshot.ts';
import { OURS } from './sources.ts';
import { SHUT_BEFORE_SET } from './ventWet.ts';

/**
 * Open and close for one place, never both. Where nobody said how the vents stand, both may have
 * their reasons: heat keeps a house open until an hour before sunset; then the night goes first,
 * as cold goes before heat and heat before wetness.
 *
 * Source: ours, from no source; an hour before sunset after Savage 1980, Agrochemophysica 12:5.
 */
export function vents(
  look: Look,
  place: PlaceNow,
): { readonly 'open-up': Answer; readonly 'close-up': Answer } {
  const opening = openUp(look, place);
  const closing = closeUp(look, place);
  if (closing.verdict !== 'act') return { 'open-up': opening, 'close-up': closing };

  const hot = hotNow(opening) || hotNow(openUp(look, { ...place, opened: null }));
  const early = look.sun !== null && look.now < look.sun.set - SHUT_BEFORE_SET;
  if (hot && early) {
    const why = fact('still-too-warm-to-close', null, '', null, OURS, BOTH);
    const because = [...closing.because, why];
    return { 'open-up': opening, 'close-up': leave(...because) };
  }
  if (opening.verdict !== 'act') return { 'open-up': opening, 'close-up': closing };
  const because = [...opening.because, fact('night-goes-first', null, '', null, OURS, BOTH)];
  return { 'open-up': leave(...because), 'close-up': closing };
}

const BOTH = by('vents', put('open-up', 'act'), put('close-up', 'act'));

const hotNow = (answer: Answer) =>
  answer.verdict === 'act' && answer.because.some(({ what }) => what === 'outside-cooler-by');
