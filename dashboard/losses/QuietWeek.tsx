import type { LossOffers } from '../../hub/contract/index.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { shortDay } from '../times.ts';
import { words } from '../words.ts';
import { sayQuiet } from './commands.ts';

/** One tap that says of a week that nothing else was lost in it. */
export function QuietWeek({ offers, onSaid }: { offers: LossOffers; onSaid: () => void }) {
  const text = words.losses;
  const { sending, failed, send } = useSending();
  const { week, places } = offers.quiet;
  const open = places.filter(({ said }) => !said);
  const tell = async (holds: boolean) => {
    if (await send(() => sayQuiet({ week, holds }))) onSaid();
  };
  const day = shortDay(week);
  return (
    <section class="quiet-week">
      <h2>{text.quiet}</h2>
      <p class="quiet">{text.quietWhy}</p>
      {places.length === 0 ? (
        <p>{text.quietNone}</p>
      ) : open.length > 0 ? (
        <>
          <p>{text.quietPlaces(open.map(({ name }) => name).join(', '))}</p>
          <button type="button" aria-disabled={sending} onClick={() => tell(true)}>
            {sending ? text.sending : text.quietAll(day)}
          </button>
        </>
      ) : (
        <p role="status">
          {text.quietAllSaid(day)}{' '}
          <button type="button" aria-disabled={sending} onClick={() => tell(false)}>
            {text.undo}
          </button>
        </p>
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </section>
  );
}
