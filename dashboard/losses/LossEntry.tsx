import { useEffect, useRef, useState } from 'preact/hooks';
import type { EnterLoss, LossHistory, LossLook, LossOffers } from '../../hub/contract/index.ts';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { keptOf } from '../typed.ts';
import { words } from '../words.ts';
import { AmountPicker } from './AmountPicker.tsx';
import { enterLoss } from './commands.ts';
import { type Amount, entryOf, type MoreSaid, noMore } from './entry.ts';
import { MoreAboutLoss } from './MoreAboutLoss.tsx';

const CROPS = 3; // as big buttons; the rest stand in a list

/** Place, how much, what it looked like: three taps, the crop that stands there already chosen. */
export function LossEntry({
  offers,
  onStored,
}: {
  offers: LossOffers;
  onStored: (loss: LossHistory) => void;
}) {
  const text = words.losses;
  const [placeId, setPlace] = useState<string | null>(null);
  const [crop, setCrop] = useState('');
  const [amount, setAmount] = useState<Amount | null>(null);
  const [more, setMore] = useState<MoreSaid>(noMore);
  const [asked, setAsked] = useState<{ said: string; entry: EnterLoss } | null>(null);
  const { sending, failed, send } = useSending();
  const next = useRef<HTMLDivElement>(null);
  const place = offers.places.find((one) => one.place === placeId);
  useEffect(() => {
    // What comes next is under the thumb, also on a small screen.
    if (placeId !== null) next.current?.scrollIntoView({ block: 'nearest' });
  }, [placeId, amount]);

  const choose = (id: string) => {
    setPlace(id);
    setCrop(offers.places.find((one) => one.place === id)?.crops[0]?.crop ?? '');
    setAmount(null);
    setAsked(null);
  };
  const clear = () => {
    setPlace(null);
    setAmount(null);
    setMore(noMore);
    setAsked(null);
  };
  const store = async (entry: EnterLoss) => {
    const stored = await send(
      () => enterLoss(entry),
      ({ status, message }) => {
        if (status !== 409) return false;
        setAsked({ said: message, entry });
        return true;
      },
    );
    if (!stored) return;
    clear();
    onStored(stored);
  };
  const look = (chosen: LossLook) => {
    if (!place || !amount) return;
    const of = more.ofUnit === 'kg' ? keptOf(more.ofAmount, 'kg') : numberOf(more.ofAmount);
    store(entryOf(place, crop, amount, chosen, more, of));
  };
  return (
    <form
      class="quick loss-entry"
      onSubmit={(event) => event.preventDefault()}
      aria-label={text.quickTitle}
    >
      <fieldset class="quick-crops">
        <legend>{text.where}</legend>
        {offers.places.map(({ place: id, name }) => (
          <button type="button" key={id} aria-pressed={id === placeId} onClick={() => choose(id)}>
            {name}
          </button>
        ))}
      </fieldset>
      {place && (
        <>
          <fieldset class="quick-crops">
            <legend>{text.which}</legend>
            {place.crops.slice(0, CROPS).map((one) => (
              <button
                type="button"
                key={one.crop}
                aria-pressed={one.crop === crop}
                onClick={() => setCrop(one.crop)}
              >
                {one.name}
                {one.standing && <small>{text.standing}</small>}
              </button>
            ))}
            {place.crops.length > CROPS && (
              <select
                aria-label={text.otherCrop}
                value={place.crops.slice(CROPS).some((one) => one.crop === crop) ? crop : ''}
                onChange={(event) => setCrop(event.currentTarget.value || crop)}
              >
                <option value="">{text.otherCrop}…</option>
                {place.crops.slice(CROPS).map((one) => (
                  <option key={one.crop} value={one.crop}>
                    {one.name}
                  </option>
                ))}
              </select>
            )}
          </fieldset>
          <div ref={next}>
            <AmountPicker key={place.place} place={place} amount={amount} onChoose={setAmount} />
          </div>
          {amount ? (
            <fieldset class="loss-looks">
              <legend>{text.looked}</legend>
              {(Object.keys(text.looks) as LossLook[]).map((one) => (
                <button type="button" key={one} aria-disabled={sending} onClick={() => look(one)}>
                  <strong>{text.looks[one]}</strong>
                  <small>{text.drawings[one]}</small>
                </button>
              ))}
            </fieldset>
          ) : (
            <p class="quiet">{text.chooseAmount}</p>
          )}
          <MoreAboutLoss more={more} today={offers.today} onChange={setMore} />
        </>
      )}
      {asked && (
        <p class="caution" role="alert">
          {asked.said}{' '}
          <button type="button" onClick={() => store({ ...asked.entry, another: true })}>
            {text.another}
          </button>
        </p>
      )}
      <p role="status" class="failed-line">
        {sending ? text.sending : failed}
      </p>
    </form>
  );
}
