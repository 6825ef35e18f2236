import type { FarmBegun } from '../contract/index.ts';
import { type FarmPart, farmChangeWords } from '../words/index.ts';
import { sameValue } from './sameValue.ts';

type Named = { readonly key: string; readonly name: string; readonly fields: Fields };
type Fields = Readonly<Record<string, unknown>>;

/** The lists of a description, each with what names an item and what a person calls it. */
const parts: Readonly<Record<Exclude<FarmPart, 'farm'>, (farm: FarmBegun) => readonly Named[]>> = {
  place: ({ places }) => places.map((one) => named(one.id, one.name, one)),
  crop: ({ crops }) => crops.map((one) => named(one.id, one.name ?? one.id, one)),
  mix: ({ mixes }) => mixes.map((one) => named(one.id, one.name ?? one.id, one)),
  delivery: ({ deliveries }) => numbered(deliveries.map((one) => named(one.day, one.day, one))),
  probe: ({ probes }) => probes.map((one) => named(one.id, one.id, one)),
  mapping: ({ mappings }) => numbered(mappings.map((one) => named(one.topic, one.topic, one))),
};
const named = (key: string, name: string, fields: Fields): Named => ({ key, name, fields });
/** Two of one name are told apart by their order. */
const numbered = (list: readonly Named[]): Named[] =>
  list.map((one, i) => ({
    ...one,
    key: `${one.key} ${list.slice(0, i).filter(({ key }) => key === one.key).length}`,
  }));

type Leaf = { readonly field: string; readonly before: unknown; readonly after: unknown };
const isMap = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Single fields that differ; a list counts as one value. */
function leaves(before: unknown, after: unknown, path = ''): Leaf[] {
  if (sameValue(before, after)) return [];
  if (!isMap(before ?? {}) || !isMap(after ?? {})) return [{ field: path, before, after }];
  const [was, is] = [(before ?? {}) as Fields, (after ?? {}) as Fields];
  const fields = new Set([...Object.keys(was), ...Object.keys(is)]);
  return [...fields].flatMap((field) =>
    leaves(was[field], is[field], path === '' ? field : `${path}.${field}`),
  );
}

/** What another description would change, one sentence each, in words of a grower. */
export function farmChanges(before: FarmBegun | undefined, after: FarmBegun): string[] {
  const placeName = (id: unknown) =>
    after.places.find((one) => one.id === id)?.name ??
    before?.places.find((one) => one.id === id)?.name ??
    String(id);
  const sold = [after, before].flatMap((farm) => [...(farm?.crops ?? []), ...(farm?.mixes ?? [])]);
  const cropName = (id: unknown) => sold.find((one) => one.id === id)?.name ?? String(id);
  const words = farmChangeWords(placeName, cropName);
  const said = leaves(before?.farm, after.farm)
    .filter(({ field, after: to }) => before !== undefined || field !== 'altitude' || to !== 0)
    .map((leaf) => words.changed('farm', after.farm.name, leaf));
  for (const [part, list] of Object.entries(parts) as [
    keyof typeof parts,
    (typeof parts)['place'],
  ][]) {
    const were = new Map((before ? list(before) : []).map((one) => [one.key, one]));
    for (const { key, name, fields } of list(after)) {
      const was = were.get(key);
      were.delete(key);
      if (!was) {
        said.push(words.added(part, name, fields));
        continue;
      }
      const moved = part === 'probe' && ['place', 'spot'].some((f) => was.fields[f] !== fields[f]);
      if (moved) said.push(words.moved(name, fields));
      for (const leaf of leaves(was.fields, fields))
        if (!moved || !['place', 'spot'].includes(leaf.field))
          said.push(words.changed(part, name, leaf));
    }
    for (const { name } of were.values()) said.push(words.gone(part, name));
  }
  return said;
}
