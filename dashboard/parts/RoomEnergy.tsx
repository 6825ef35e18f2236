import type { CoolRoom } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** Energy of a cool room as far as it is measured; unknown is said, never a zero. */
export function RoomEnergy({ room }: { room: CoolRoom }) {
  const { kWhPerDay, dutyCycle } = room.energy;
  const text = words.room;
  return (
    <section>
      <h2>{text.energy}</h2>
      {kWhPerDay === null && dutyCycle === null ? (
        <p class="quiet">{text.energyNone}</p>
      ) : (
        <p>
          {text.perDay(kWhPerDay)} {text.duty(dutyCycle)}
        </p>
      )}
    </section>
  );
}
