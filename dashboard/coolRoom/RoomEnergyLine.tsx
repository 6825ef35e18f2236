import type { CoolRoom } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** What of the energy hangs on the weather, with how well that is known. */
export function RoomEnergyLine({ room }: { room: CoolRoom }) {
  const { line } = room.trend;
  if (line === null || !line.enough) return null;
  const { slope, slopeLow, slopeHigh, intercept } = line;
  return <p class="quiet">{words.room.energyLine(slope, slopeLow, slopeHigh, intercept)}</p>;
}
