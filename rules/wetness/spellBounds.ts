import { expectRange } from '../expectRange.ts';
import { HOUR, type Hours, hours, type Instant } from '../units.ts';
import type { WetPiece } from './wetPieces.ts';

/** A wet spell as the pieces of its wet time. */
export type PieceSpell = {
  readonly from: Instant;
  readonly to: Instant;
  readonly wetHours: Hours;
  readonly pieces: readonly WetPiece[];
};

// There is no sharp truth in it: lesions fall steadily as a dry break grows from 0.3 to 24 h
// (Alderman, Lacy & Everts 1985, Phytopathology 75:808). The cautious middle of 3 h and more is ours.
const USUAL_MERGE_GAP = 4; // h

/**
 * Wet spells at both bounds: in `least` unknown time is dry and may part spells, in `most` it is
 * wet and may join them. A spell ends when the dry time since it was last wet adds up to
 * `mergeGapHours` (2 to 12).
 * @param pieces as wetPieces gives them, in order of time
 * @throws RangeError for a break outside 2..12 h
 */
export function spellBounds(
  pieces: readonly WetPiece[],
  mergeGapHours: number = USUAL_MERGE_GAP,
): { readonly least: PieceSpell[]; readonly most: PieceSpell[] } {
  expectRange('dry break that ends a spell', mergeGapHours, 2, 12, 'h');
  const gap = mergeGapHours * HOUR;
  const least = gather(pieces, gap, ({ state }) => state === 'wet');
  // With nothing unknown both bounds are the same spells, and those who sum over them need one pass.
  if (!pieces.some(({ state }) => state === 'unknown')) return { least, most: least };
  return { least, most: gather(pieces, gap, ({ state }) => state !== 'dry') };
}

function gather(
  pieces: readonly WetPiece[],
  gap: number,
  wet: (piece: WetPiece) => boolean,
): PieceSpell[] {
  const spells: PieceSpell[] = [];
  let running: WetPiece[] = [];
  let dry = 0; // ms since last wet
  const end = () => {
    const [first, last] = [running[0], running.at(-1)];
    if (first === undefined || last === undefined) return;
    const wetTime = running.reduce((sum, { from, to }) => sum + to - from, 0);
    spells.push({
      from: first.from,
      to: last.to,
      wetHours: hours(wetTime / HOUR),
      pieces: running,
    });
    running = [];
  };
  for (const piece of pieces) {
    if (wet(piece)) {
      running.push(piece);
      dry = 0;
      continue;
    }
    dry += piece.to - piece.from;
    if (dry >= gap) end();
  }
  end();
  return spells;
}
