import { useEffect, useState } from 'preact/hooks';
import type { StarterCrop } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { Choice, Field } from '../coolRoom/Field.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Scrolled } from '../parts/Scrolled.tsx';
import { keptFigure } from '../typed.ts';
import { words } from '../words.ts';
import { ChangeForm } from './ChangeForm.tsx';
import type { Description } from './description.ts';
import { Listed } from './Listed.tsx';

const text = words.setUpSteps;
const named = (id: string) => text.cropNames[id] ?? id;

/** Crops from the list to begin with: every figure says where it is from; price and yield are one's own. */
export function CropStep({ now }: { now: Description }) {
  const { crops = [], places = [] } = now.description ?? {};
  const [starters, setStarters] = useState<readonly StarterCrop[] | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [id, setId] = useState('');
  const [price, setPrice] = useState('');
  const [perTray, setPerTray] = useState('');
  const [place, setPlace] = useState('');
  const [without, setWithout] = useState<string | null>(null);
  const load = () =>
    ask<StarterCrop[]>('/api/starter-crops').then(setStarters, (error: Error) =>
      setFault(error.message),
    );
  useEffect(() => void load(), []);
  if (starters === null) return <Fault sentence={fault} again={load} />;
  const starter = starters.find((one) => one.id === id);
  const crop = starter && {
    id,
    name: named(id),
    base: starter.base.value,
    band: starter.band.value,
    heatLimit: starter.heatLimit.value,
    chill: starter.chill?.value,
    disease: starter.disease,
    price: keptFigure(price, '/kg'),
    perTray: keptFigure(perTray, 'kg'),
  };
  const standing = places.map((one) => (one.id === place ? { ...one, crop: id } : one));
  const gone = crops.find((one) => one.id === without);
  return (
    <>
      <Listed
        items={crops.map((one) => ({ id: one.id, words: one.name ?? one.id }))}
        onTakeOut={setWithout}
      />
      {gone && (
        <ChangeForm next={{ ...now.description, crops: crops.filter((one) => one !== gone) }}>
          <h3>{text.forName(text.takeOut, gone.name ?? gone.id)}</h3>
        </ChangeForm>
      )}
      <h2>{text.addCrop}</h2>
      <ChangeForm
        next={crop ? { ...now.description, crops: [...crops, crop], places: standing } : null}
      >
        <Choice
          label={text.crop}
          value={id}
          none={text.choose}
          options={starters
            .filter((one) => crops.every((known) => known.id !== one.id))
            .map((one) => [one.id, named(one.id)])}
          onChoose={setId}
        />
        {starter && <Figures crop={starter} />}
        <Field label={text.price} value={price} onType={setPrice} kind="number" />
        <Field label={text.perTray} value={perTray} onType={setPerTray} kind="number" />
        <Choice
          label={text.stands}
          value={place}
          none={text.choose}
          options={places
            .filter(({ kind }) => kind === 'tunnel' || kind === 'patch')
            .map((one) => [one.id, one.name])}
          onChoose={setPlace}
        />
      </ChangeForm>
    </>
  );
}

function Figures({ crop }: { crop: StarterCrop }) {
  const names = words.farmFieldNames.crop;
  const rows: (readonly [string | undefined, string, string])[] = [
    [names.base, words.temperature(crop.base.value), crop.base.source],
    [
      names.band,
      crop.band.value.map((value) => words.temperature(value)).join(' – '),
      crop.band.source,
    ],
    [names.heatLimit, words.temperature(crop.heatLimit.value), crop.heatLimit.source],
  ];
  if (crop.chill) rows.push([names.chill, words.temperature(crop.chill.value), crop.chill.source]);
  return (
    <Scrolled label={text.figures}>
      <table>
        <caption>{text.figures}</caption>
        <thead>
          <tr>
            <th scope="col">{text.figure}</th>
            <th scope="col">{text.value}</th>
            <th scope="col">{text.source}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, value, source]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
              <td>{source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scrolled>
  );
}
