import { words } from '../words.ts';
import { withoutWants } from './cropFields.ts';
import type { Description } from './description.ts';
import type { Item } from './fieldSpec.ts';
import { shortName } from './figure.ts';
import { ListPart } from './ListPart.tsx';
import { mixFields } from './partFields.ts';

const named = (mix: Item) => String(mix.name ?? mix.id ?? '');

/** What is sold as one: crops with their shares. */
export function MixPart({ now }: { now: Description }) {
  const text = words.setUpSteps;
  const farm = now.description;
  if (farm === null) return null;
  const { crops, mixes } = farm;
  if (crops.length < 2 && mixes.length === 0) return <p class="quiet">{text.mixesLater}</p>;
  const cropName = (id: string) => crops.find((one) => one.id === id)?.name ?? id;
  const sold = (without: string) =>
    new Set([...crops, ...mixes].map(({ id }) => id).filter((id) => id !== without));
  return (
    <section>
      <h2>{text.mixes}</h2>
      <ListPart
        now={now}
        list="mixes"
        told={words.setUpFields.mix}
        title={text.addMix}
        nameOf={named}
        lineOf={(mix) => {
          const parts = (mix as (typeof mixes)[number]).parts;
          return text.mixLine(
            named(mix),
            parts.map((part) => ({ ...part, crop: cropName(part.crop) })),
          );
        }}
        specs={() => mixFields(farm)}
        begin={() => ({})}
        whole={(mix) => {
          const name = named(mix).trim();
          const taken = [...crops, ...mixes].map(({ id }) => id);
          const parts = (mix.parts ?? []) as readonly unknown[];
          if (name === '' || parts.length === 0) return null;
          return { id: mix.id ?? shortName(name, taken), ...mix };
        }}
        without={(at) => ({
          ...farm,
          mixes: mixes.filter((_, i) => i !== at),
          deliveries: withoutWants(farm.deliveries, sold(mixes[at]?.id ?? '')),
        })}
      />
    </section>
  );
}
