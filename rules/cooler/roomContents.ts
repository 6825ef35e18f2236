/** How full a room is, as far as it changes how slowly the room warms. */
export type RoomContents = 'empty' | 'half' | 'full';

// Shares of the most that lay there in the last weeks. Ours, from no source.
const EMPTY = 0.1;
const FULL = 0.6;

/**
 * How full a room is beside the most that lay in it lately. null where nobody knows how much lies
 * there, or where nothing was ever put away. The shares are ours, from no source.
 * @param kilograms inside now, and the most there was, kg
 */
export function roomContents(kilograms: number | null, most: number): RoomContents | null {
  if (kilograms === null || !(most > 0)) return null;
  const share = kilograms / most;
  if (share < EMPTY) return 'empty';
  return share < FULL ? 'half' : 'full';
}
