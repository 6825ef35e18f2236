import { useEffect, useState } from 'preact/hooks';
import type { StarterCrop } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { cropFields, cropOf, STANDS, STARTER, withoutCrop } from './cropFields.ts';
import type { Description, Draft } from './description.ts';
import type { FieldSpec, Item, Texts } from './fieldSpec.ts';
import { shortName } from './figure.ts';
import { ListPart } from './ListPart.tsx';
import { MixPart } from './MixPart.tsx';
import { StarterFigures } from './StarterFigures.tsx';
import { useChoices } from './useChoices.ts';

/** A crop that no list knows. */
const OTHER = 'other';
const named = (crop: Item) => String(crop.name ?? crop.id ?? '');

/** Crops from the list to begin with: every figure says where it is from; price and yield are one's own. */
export function CropStep({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const choices = useChoices();
  const [starters, setStarters] = useState<readonly StarterCrop[] | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const load = () =>
    ask<StarterCrop[]>('/api/starter-crops').then(setStarters, (error: Error) =>
      setFault(error.message),
    );
  useEffect(() => void load(), []);
  const farm = now.description;
  if (starters === null || farm === null) return <Fault sentence={fault} again={load} />;
  const { crops, places } = farm;
  const nameOf = (id: string) => text.cropNames[id] ?? id;
  const starterOf = (texts: Texts) => starters.find(({ id }) => id === texts[STARTER]);
  const listed = starters.filter(({ id }) => crops.every((known) => known.id !== id));
  const growing = places.filter(({ kind }) => kind === 'tunnel' || kind === 'patch');
  // In the one house there is, while nothing is told of it.
  const only = growing.length === 1 ? growing[0] : undefined;
  const chosenFirst: FieldSpec = {
    ...{ path: STARTER, as: 'choice', aside: true, none: text.choose },
    options: [...listed.map(({ id }) => [id, nameOf(id)] as const), [OTHER, text.otherCrop]],
  };
  const stands: FieldSpec = {
    ...{ path: STANDS, as: 'choice', aside: true, none: words.setUpFields.notTold },
    options: growing.map(({ id, name }) => [id, name]),
  };
  const specs = (texts: Texts, chosen: boolean): readonly FieldSpec[] => {
    const fields = cropFields(choices);
    if (chosen) return fields;
    if ((texts[STARTER] ?? '') === '') return [chosenFirst];
    // A crop that no list knows is named first.
    const name: FieldSpec = { path: 'name', as: 'text', required: true };
    const own = texts[STARTER] === OTHER ? fields.filter(({ path }) => path !== 'name') : fields;
    return [
      chosenFirst,
      ...(own === fields ? [] : [name]),
      ...own.filter(open),
      stands,
      ...own.filter((one) => !open(one)),
    ];
  };
  return (
    <>
      <ListPart
        now={now}
        list="crops"
        told={words.setUpFields.crop}
        title={text.addCrop}
        nameOf={named}
        lineOf={(crop) => text.cropLine(named(crop), crop.price, crop.perTray, farm.farm.money)}
        specs={specs}
        begin={(texts) => {
          const starter = starterOf(texts);
          return starter ? cropOf(starter, nameOf(starter.id)) : {};
        }}
        whole={(crop) => {
          const name = named(crop).trim();
          const taken = crops.map(({ id }) => id);
          return name === '' ? null : { id: crop.id ?? shortName(name, taken), ...crop };
        }}
        put={(next, crop, texts) =>
          (texts[STANDS] ?? '') === '' ? next : { ...next, places: withCrop(places, crop, texts) }
        }
        starts={{ [STANDS]: only && only.crop === undefined ? only.id : '' }}
        without={(at) => withoutCrop(farm, crops[at]?.id ?? '') as Draft}
        takeOut={text.retire}
        more={(texts) => {
          const starter = starterOf(texts);
          return starter && <StarterFigures crop={starter} />;
        }}
      />
      <p class="quiet">{text.retireWhy}</p>
      <MixPart now={now} />
    </>
  );
}

const open = ({ group }: FieldSpec) => group === undefined;

const withCrop = (places: readonly Item[], crop: Item, texts: Texts) =>
  places.map((one) => (one.id === texts[STANDS] ? { ...one, crop: crop.id } : one));
