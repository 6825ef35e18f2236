import { useState } from 'preact/hooks';
import type { EnterPick, PickHistory, PickOffers } from '../../hub/contract/index.ts';
import { Choice, Field, FormEnd } from '../coolRoom/Field.tsx';
import { numberOf, useSending } from '../coolRoom/useSending.ts';
import { keptOf, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { enterPick } from './commands.ts';
import { HowMuch } from './HowMuch.tsx';
import { type About, MoreAboutPick, nothingMore, toldMore } from './MoreAboutPick.tsx';

const BUTTONS = 6; // spots as big buttons; the rest are chosen by place and crop

type Spot = PickOffers['spots'][number];
type Where = { readonly place: string; readonly crop: string };
const sameSpot = (a: Where, b: Where) => a.place === b.place && a.crop === b.crop;

/** Where, how much, stored: three taps with one hand; minutes and losses by big steps. */
export function QuickPick({
  offers,
  onStored,
}: {
  offers: PickOffers;
  onStored: (pick: PickHistory) => void;
}) {
  const text = words.picks;
  const [where, setWhere] = useState<Where | null>(null);
  const [other, setOther] = useState(false);
  const [kg, setKg] = useState('');
  const [minutes, setMinutes] = useState('');
  const [lost, setLost] = useState('');
  const [about, setAbout] = useState<About>(nothingMore);
  const { sending, failed, send } = useSending();
  const spots = offers.spots.slice(0, BUTTONS);
  const spot = where && offers.spots.find((one) => sameSpot(one, where));
  const choose = (chosen: Spot) => {
    setOther(false);
    setWhere(chosen);
    setAbout({
      ...nothingMore,
      walk: String(chosen.walkMinutes ?? ''),
      pickers: String(chosen.pickers),
    });
  };
  const clear = () => {
    setWhere(null);
    setOther(false);
    setKg('');
    setMinutes('');
    setLost('');
    setAbout(nothingMore);
  };
  const ready = where !== null && where.place !== '' && where.crop !== '';
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const weight = keptOf(kg, 'kg');
    if (!ready || weight === null) return;
    const pick: EnterPick = {
      ...{ place: where.place, crop: where.crop, kg: weight },
      ...{ lostKg: keptOf(lost, 'kg'), minutes: numberOf(minutes) },
      ...toldMore(about, numberOf(minutes)),
    };
    const stored = await send(() => enterPick(pick));
    if (!stored) return;
    clear();
    onStored(stored);
  };
  return (
    <form class="quick-pick" onSubmit={submit} aria-label={text.enter}>
      <fieldset class="big-buttons">
        <legend>{text.where}</legend>
        {spots.map((one) => (
          <button
            type="button"
            key={`${one.place} ${one.crop}`}
            aria-pressed={where !== null && !other && sameSpot(one, where)}
            onClick={() => choose(one)}
          >
            {one.placeName}
            <small>{one.name}</small>
          </button>
        ))}
        <button
          type="button"
          aria-pressed={other}
          onClick={() => {
            setOther(true);
            setWhere({ place: '', crop: '' });
            setAbout(nothingMore);
          }}
        >
          {text.elsewhere}
        </button>
      </fieldset>
      {other && where && (
        <>
          <Choice
            label={text.place}
            value={where.place}
            none={text.notTold}
            options={offers.places.map(({ id, name }) => [id, name])}
            onChoose={(place) => setWhere({ ...where, place })}
          />
          <Choice
            label={text.crop}
            value={where.crop}
            none={text.notTold}
            options={offers.crops.map(({ id, name }) => [id, name])}
            onChoose={(crop) => setWhere({ ...where, crop })}
          />
        </>
      )}
      {ready && (
        <>
          {spot && spot.weights.length > 0 && (
            <fieldset class="big-buttons three">
              <legend>{text.lastWeights}</legend>
              {spot.weights.map((one) => (
                <button
                  type="button"
                  key={one}
                  aria-pressed={kg === typedOf(one, 'kg')}
                  onClick={() => setKg(typedOf(one, 'kg'))}
                >
                  {words.kilograms(one)}
                </button>
              ))}
            </fieldset>
          )}
          <Field label={text.weight} value={kg} kind="number" required onType={setKg} />
          <HowMuch
            kg={keptOf(kg, 'kg')}
            usual={spot?.minutes ?? []}
            minutes={minutes}
            lost={lost}
            onMinutes={setMinutes}
            onLost={setLost}
          />
          <MoreAboutPick about={about} onChange={setAbout} />
          <FormEnd label={text.send} sending={sending} said={failed}>
            <button type="button" onClick={clear}>
              {words.lots.back}
            </button>
          </FormEnd>
        </>
      )}
    </form>
  );
}
