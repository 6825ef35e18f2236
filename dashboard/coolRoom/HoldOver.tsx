import type { CoolRoom } from '../../hub/contract/index.ts';
import { words } from '../words.ts';

/** Fields that a hub may tell besides; a hub that does not is shown as it is. */
type Learned = {
  readonly least?: number | null;
  readonly most?: number | null;
  readonly produceMinutes?: number | null;
};

/** How long the room stays below its limit with the cooling off: the short end where a range is known. */
export function HoldOver({ room }: { room: CoolRoom }) {
  const text = words.room;
  const { minutesToLimit } = room.holdOver;
  const { least, most, produceMinutes } = room.holdOver as CoolRoom['holdOver'] & Learned;
  return (
    <section>
      <h2>{text.holdOver}</h2>
      <p>
        {least != null && most != null
          ? text.holdRange(least, most, room.limit)
          : text.hold(minutesToLimit, room.limit)}{' '}
        {produceMinutes != null && text.produce(produceMinutes)}
      </p>
    </section>
  );
}
