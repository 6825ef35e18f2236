import { useState } from 'preact/hooks';
import type { FarmPlace, PlaceKind } from '../../hub/contract/index.ts';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { keptFigure, typedOf } from '../typed.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { figure, shortName } from './figure.ts';
import { Listed } from './Listed.tsx';

const text = words.setUpSteps;
const kinds = Object.entries(words.kinds) as [PlaceKind, string][];
const shown = (value: number | undefined) => (value === undefined ? '' : String(value));

/** The places of the farm: added by kind, changed, taken out. */
export function PlaceStep({ now }: { now: Description }) {
  const places = now.description?.places ?? [];
  const [id, setId] = useState<string | null>(null);
  const [without, setWithout] = useState<string | null>(null);
  const chosen = places.find((one) => one.id === id);
  const gone = places.find((one) => one.id === without);
  return (
    <>
      <h2>{text.placesNow}</h2>
      <Listed
        items={places.map((one) => ({
          id: one.id,
          words: `${one.name}, ${words.kinds[one.kind]}`,
        }))}
        onChange={setId}
        onTakeOut={setWithout}
      />
      {gone && (
        <ChangeForm next={{ ...now.description, places: places.filter((one) => one !== gone) }}>
          <h3>{text.forName(text.takeOut, gone.name)}</h3>
        </ChangeForm>
      )}
      <h2>{chosen ? text.changePlace(chosen.name) : text.addPlace}</h2>
      {places.every(({ kind }) => kind !== 'outdoor') && <p class="quiet">{text.outdoorWhy}</p>}
      <PlaceFields key={id ?? ''} now={now} places={places} chosen={chosen} />
      {chosen && (
        <button type="button" onClick={() => setId(null)}>
          {text.addAnother}
        </button>
      )}
    </>
  );
}

function PlaceFields({
  now,
  places,
  chosen,
}: {
  now: Description;
  places: readonly FarmPlace[];
  chosen: FarmPlace | undefined;
}) {
  const [kind, setKind] = useState<string>(chosen?.kind ?? 'tunnel');
  const [name, setName] = useState(chosen?.name ?? '');
  const [capacity, setCapacity] = useState(shown(chosen?.capacity));
  const [vents, setVents] = useState(chosen?.vents ?? true);
  const [covers, setCovers] = useState<string>(chosen?.covers ?? '');
  const [setPoint, setSetPoint] = useState(typedOf(chosen?.setPoint ?? 3, '°C')); // ours: near that of most salads
  const [limit, setLimit] = useState(typedOf(chosen?.limit ?? 5, '°C')); // ours; food rules may say less
  const own: Readonly<Record<string, object>> = {
    tunnel: { vents, capacity: figure(capacity) },
    patch: { covers: covers === '' ? undefined : covers },
    'cool-room': { setPoint: keptFigure(setPoint, '°C'), limit: keptFigure(limit, '°C') },
    outdoor: {},
  };
  const id =
    chosen?.id ??
    shortName(
      name,
      places.map((one) => one.id),
    );
  const place = { ...chosen, id, name: name.trim(), kind, ...own[kind] };
  const list = chosen ? places.map((one) => (one === chosen ? place : one)) : [...places, place];
  return (
    <ChangeForm next={name.trim() === '' ? null : { ...now.description, places: list }}>
      <Choice label={text.kind} value={kind} options={kinds} onChoose={setKind} />
      <Field label={text.placeName} value={name} onType={setName} required longest={60} />
      {kind === 'tunnel' && (
        <>
          <Field label={text.capacity} value={capacity} onType={setCapacity} kind="number" />
          <label>
            <input
              type="checkbox"
              checked={vents}
              onChange={(event) => setVents(event.currentTarget.checked)}
            />{' '}
            {text.vents}
          </label>
        </>
      )}
      {kind === 'patch' && (
        <Choice
          label={text.covers}
          value={covers}
          options={Object.entries(text.coverKinds)}
          onChoose={setCovers}
        />
      )}
      {kind === 'cool-room' && (
        <>
          <Field label={text.setPoint} value={setPoint} onType={setSetPoint} kind="number" />
          <Field label={text.limit} value={limit} onType={setLimit} kind="number" />
          <p class="quiet">{text.limitWhy}</p>
        </>
      )}
    </ChangeForm>
  );
}
