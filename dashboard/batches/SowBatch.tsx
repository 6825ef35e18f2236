import { useState } from 'preact/hooks';
import type { BatchHistory, BatchOffers } from '../../hub/contract/index.ts';
import { FormEnd } from '../coolRoom/Field.tsx';
import { numberOf } from '../coolRoom/useSending.ts';
import { fromTheWall } from '../onTheWall.ts';
import { CropButtons } from '../parts/CropButtons.tsx';
import { words } from '../words.ts';
import { sowBatch } from './commands.ts';
import { SowingFields } from './SowingFields.tsx';
import { countOf, TrayCount } from './TrayCount.tsx';
import { useHeeded } from './useHeeded.ts';
import { Warned } from './Warned.tsx';

type Offer = BatchOffers['crops'][number];

/** What was paid the last time, for so many trays; '' where nobody said. */
function costOf(offer: Offer, field: 'seedCost' | 'otherCost', trays: string): string {
  const [cost, before, count] = [offer[field], offer.trays, countOf(trays)];
  if (cost === null || before === null || count === null) return '';
  return String(Math.round((100 * cost * count) / before) / 100);
}

/** Crop, trays, place: the rest is as the last time. */
export function SowBatch({
  offers,
  zone,
  onSown,
}: {
  offers: BatchOffers;
  zone: string;
  onSown: (batch: BatchHistory) => void;
}) {
  const text = words.batches;
  const [crop, setCrop] = useState<string | null>(null);
  const [place, setPlace] = useState<string | null>(null);
  const [said, setSaid] = useState(NOTHING);
  const { sending, failed, warned, forget, go } = useHeeded();
  const put = (field: keyof typeof NOTHING) => (value: string) => {
    forget();
    setSaid({ ...said, [field]: value });
  };
  // Costs told of another number of trays are told for each of them.
  const putTrays = (value: string) => {
    forget();
    const offer = offers.crops.find((one) => one.crop === crop);
    const cost = (field: 'seedCost' | 'otherCost') => {
      const asBefore = offer !== undefined && said[field] === costOf(offer, field, said.trays);
      return asBefore ? costOf(offer, field, value) : said[field];
    };
    setSaid({
      ...said,
      trays: value,
      seedCost: cost('seedCost'),
      otherCost: cost('otherCost'),
    });
  };
  const choose = (offer: Offer) => {
    forget();
    setCrop(offer.crop);
    setPlace(
      offer.place ?? (offers.places.length === 1 ? (offers.places[0]?.place ?? null) : null),
    );
    setSaid({
      ...NOTHING,
      trays: offer.trays === null ? '' : String(offer.trays),
      variety: offer.variety ?? '',
      seedCost: costOf(offer, 'seedCost', String(offer.trays ?? '')),
      otherCost: costOf(offer, 'otherCost', String(offer.trays ?? '')),
    });
  };
  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const trays = countOf(said.trays);
    if (crop === null || place === null || trays === null) return;
    const minutes = numberOf(said.minutes);
    const sown = await go((override) =>
      sowBatch({
        ...{ crop, place, trays, variety: said.variety.trim() || null },
        ...{ seedCost: numberOf(said.seedCost), otherCost: numberOf(said.otherCost) },
        ...(said.sownAt === '' ? {} : { sownAt: fromTheWall(said.sownAt, zone) }),
        ...(said.meantFor === '' ? {} : { meantFor: said.meantFor }),
        ...(minutes === null ? {} : { minutes }),
        ...override,
      }),
    );
    if (!sown) return;
    setCrop(null);
    setSaid(NOTHING);
    onSown(sown);
  };
  return (
    <form class="batch-form" onSubmit={submit} aria-label={text.sowTitle}>
      <CropButtons
        look="batch-two"
        legend={text.crop}
        other={text.otherCrop}
        crops={offers.crops}
        chosen={crop}
        onChoose={choose}
      />
      {crop !== null && (
        <>
          <TrayCount label={text.howMany} value={said.trays} onChange={putTrays} />
          <fieldset class="batch-two">
            <legend>{text.place}</legend>
            {offers.places.map((one) => (
              <button
                type="button"
                key={one.place}
                aria-pressed={one.place === place}
                onClick={() => {
                  forget();
                  setPlace(one.place);
                }}
              >
                {one.name} <span class="quiet">{text.freeRoom(one.room)}</span>
              </button>
            ))}
          </fieldset>
          <details>
            <summary>{text.more}</summary>
            <div class="batch-form">
              <SowingFields said={said} put={put} />
            </div>
          </details>
          <Warned sentence={warned} />
          {place !== null && (
            <FormEnd
              label={warned === '' ? text.sowThis : text.anyway}
              sending={sending}
              said={failed}
            >
              <button type="button" onClick={() => setCrop(null)}>
                {text.back}
              </button>
            </FormEnd>
          )}
        </>
      )}
    </form>
  );
}

const NOTHING = {
  ...{ trays: '', variety: '', sownAt: '', seedCost: '', otherCost: '', meantFor: '' },
  minutes: '',
};
