/** How full a room is, as far as it changes how slowly the room warms. */
export type RoomContents = 'empty' | 'half' | 'full';

// Shares of the most that lay there in the last weeks. Ours, from no source.
const EMPTY = 0.1;
const FULL = 0.6;
// kg below which produce hardly slows a walk-in room down: its walls hold more heat. Ours.
const LEAST = 20;

/**
 * How full a room is beside the most that lay in it lately. null where nobody knows how much lies
 * there, or where there never was so much that it matters (20 kg). The shares are ours, from no source.
 * @param kilograms inside now, and the most there was, kg
 */
export function roomContents(kilograms: number | null, most: number): RoomContents | null {
  if (kilograms === null || !(most >= LEAST)) return null;
  const share = kilograms / most;
  if (share < EMPTY) return 'empty';
  return share < FULL ? 'half' : 'full';
}
