import { useEffect, useRef, useState } from 'preact/hooks';
import type { LotHistory, LotOffers, PutAway } from '../../hub/contract/index.ts';
import { exactNow } from '../clock.ts';
import { CropButtons } from '../parts/CropButtons.tsx';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { myName, putAway } from './commands.ts';
import { FormEnd } from './Field.tsx';
import { type More, MoreAboutLot, moreOf } from './MoreAboutLot.tsx';
import { NameField } from './NameField.tsx';
import { useSending } from './useSending.ts';

const MINUTE = 60_000;

type Offer = LotOffers['crops'][number];

/** Crop, weight, store: two taps and a number, with one hand. */
export function QuickEntry({
  room,
  offers,
  onStored,
}: {
  room: string;
  offers: LotOffers;
  onStored: (lot: LotHistory) => void;
}) {
  const text = words.lots;
  const [crop, setCrop] = useState<string | null>(null);
  const [kg, setKg] = useState('');
  const [more, setMore] = useState<More | null>(null);
  const [warned, setWarned] = useState('');
  const { sending, failed, send } = useSending();
  const weight = useRef<HTMLInputElement>(null);
  const offer = offers.crops.find((one) => one.crop === crop);
  useEffect(() => {
    if (crop !== null) weight.current?.focus({ preventScroll: true });
  }, [crop]);

  const choose = (chosen: Offer) => {
    setCrop(chosen.crop);
    setMore(moreOf(chosen));
    // Before anything is saved, and before the weight is typed.
    setWarned(chosen.warning ?? '');
  };
  const clear = () => {
    setCrop(null);
    setKg('');
    setMore(null);
    setWarned('');
  };
  const store = async (given: Pick<PutAway, 'crop' | 'kg'>, about: More, override: boolean) => {
    const { wait, from, cooled, of } = about;
    const harvested = wait === '' ? null : exactNow() - Number(wait) * MINUTE;
    const stored = await send(
      () =>
        putAway({
          ...given,
          place: room,
          from: from === '' ? null : from,
          harvestedAt: harvested === null ? null : new Date(harvested).toISOString(),
          cooled: cooled === '' ? null : cooled,
          class: of === '' ? null : of,
          ...(override ? { override: { by: myName().trim() } } : {}),
        }),
      ({ status, message }) => {
        if (status !== 409) return false;
        setWarned(message);
        return true;
      },
    );
    if (!stored) return;
    clear();
    onStored(stored);
  };
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    const value = keptOf(kg, 'kg');
    if (offer === undefined || more === null || value === null) return;
    store({ crop: offer.crop, kg: value }, more, warned !== '');
  };
  const { last } = offers;
  const lastOffer = last && offers.crops.find((one) => one.crop === last.crop);
  const again = () => {
    if (!last || !lastOffer) return;
    if (lastOffer.warning === null)
      return store({ crop: last.crop, kg: last.kg }, moreOf(lastOffer), false);
    // A warning is for a person to read: the same again is filled in, not sent.
    choose(lastOffer);
    setKg(typedOf(last.kg, 'kg'));
  };
  return (
    <form class="quick" onSubmit={submit} aria-label={text.quickTitle}>
      {last && lastOffer && crop === null && (
        <button type="button" class="main quick-same" aria-disabled={sending} onClick={again}>
          {sending ? text.sending : text.same(last.kg, last.name)}
        </button>
      )}
      <CropButtons
        look="quick-crops"
        legend={text.which}
        other={text.otherCrop}
        crops={offers.crops}
        chosen={crop}
        onChoose={choose}
      />
      {offer && more && (
        <>
          {warned !== '' && (
            <p class="caution" role="alert">
              <strong>{text.warned}: </strong>
              {warned}
            </p>
          )}
          {offer.weights.length > 0 && (
            <fieldset class="quick-weights">
              <legend>{text.lastWeights}</legend>
              {offer.weights.map((one) => (
                <button type="button" key={one} onClick={() => setKg(typedOf(one, 'kg'))}>
                  {words.kilograms(one)}
                </button>
              ))}
            </fieldset>
          )}
          <label>
            {text.weight}
            <input
              ref={weight}
              required
              inputMode="decimal"
              autocomplete="off"
              pattern="[0-9]*[.,]?[0-9]+"
              value={kg}
              onInput={(event) => setKg(event.currentTarget.value)}
            />
          </label>
          <MoreAboutLot more={more} offer={offer} onChange={setMore} />
          {warned !== '' && (
            <>
              <p class="quiet">{text.nameWhy}</p>
              <NameField />
            </>
          )}
          <FormEnd label={warned === '' ? text.enter : text.anyway} sending={sending} said={failed}>
            <button type="button" onClick={clear}>
              {text.back}
            </button>
          </FormEnd>
        </>
      )}
      {crop === null && (
        <p role="status" class="failed-line">
          {failed}
        </p>
      )}
    </form>
  );
}
