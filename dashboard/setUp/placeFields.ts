import type { FarmBegun, FarmChoices, PlaceKind } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type FieldSpec, type Item, inUnits, type Texts } from './fieldSpec.ts';

const GROWS: readonly PlaceKind[] = ['tunnel', 'patch'];

type PlaceSpec = FieldSpec & { readonly kinds?: readonly PlaceKind[] };

const figure = (path: string, group: string, kinds: readonly PlaceKind[]): PlaceSpec => ({
  ...{ path, as: 'figure', group, kinds },
});

/** The fields of a place of the kind that is chosen. */
export function placeFields(
  { crops = [] }: Partial<FarmBegun>,
  choices: FarmChoices,
  texts: Texts,
): FieldSpec[] {
  const text = words.setUpFields;
  const stages = choices.stages[texts.crop ?? ''] ?? [];
  const patch: readonly PlaceKind[] = ['patch'];
  const room: readonly PlaceKind[] = ['cool-room'];
  const all: PlaceSpec[] = [
    { path: 'kind', as: 'choice', options: Object.entries(words.kinds) },
    { path: 'name', as: 'text', required: true },
    { path: 'capacity', as: 'figure', kinds: ['tunnel'] },
    { path: 'vents', as: 'yes', kinds: ['tunnel'] },
    { path: 'setPoint', as: 'figure', kinds: room },
    { path: 'limit', as: 'figure', kinds: room },
    { path: 'volume', as: 'figure', group: 'room', kinds: room },
    { path: 'value', as: 'figure', group: 'room', kinds: room },
    { path: 'checkDays', as: 'figure', group: 'room', kinds: room },
    { path: 'power.hours', as: 'list', group: 'power', kinds: room },
    { path: 'power.litresPerHour', as: 'figure', group: 'power', kinds: room },
    {
      ...{ path: 'power.fuel', as: 'choice', group: 'power', kinds: room },
      ...{ none: text.notTold, options: Object.entries(text.fuels) },
    },
    { path: 'power.litrePrice', as: 'figure', group: 'power', kinds: room },
    {
      ...{ path: 'crop', as: 'choice', group: 'grows', kinds: GROWS, none: text.notTold },
      options: crops.map(({ id, name }) => [id, name ?? id]),
    },
    { path: 'trays', as: 'figure', group: 'grows', kinds: ['tunnel'] },
    {
      ...{ path: 'covers', as: 'choice', group: 'cover', kinds: GROWS },
      ...{ none: text.noCovers, options: Object.entries(text.covers) },
    },
    figure('cover.minutes', 'cover', GROWS),
    figure('cover.value', 'cover', GROWS),
    figure('cover.damage', 'cover', GROWS),
    { ...figure('cover.effect', 'cover', GROWS), times: 100 },
    {
      ...{ path: 'stage', as: 'choice', group: 'cover', kinds: GROWS, none: text.notTold },
      options: stages.map((stage) => [stage, text.stages[stage] ?? stage]),
    },
    { path: 'picking.from', as: 'text', group: 'picking', kinds: patch },
    { path: 'picking.to', as: 'text', group: 'picking', kinds: patch },
    figure('picking.minutes', 'picking', patch),
    figure('picking.value', 'picking', patch),
    figure('wet.at', 'wet', GROWS),
    figure('wet.below', 'wet', GROWS),
    figure('wet.hours', 'wet', GROWS),
    { path: 'airing.opens', as: 'text', group: 'airing', kinds: ['tunnel'] },
    { path: 'airing.shuts', as: 'text', group: 'airing', kinds: ['tunnel'] },
    figure('water.below', 'water', GROWS),
    figure('water.minutes', 'water', GROWS),
  ];
  const kind = texts.kind as PlaceKind;
  return inUnits('place', all)
    .filter(({ kinds }) => kinds === undefined || kinds.includes(kind))
    .map(({ kinds: _, ...spec }) => spec);
}

/** What a new place begins with: the figures are ours, near those of most cool rooms for salads. */
export function newPlace(kind: string): Item {
  const name = words.setUpFields.placeNames[kind] ?? '';
  if (kind === 'tunnel') return { kind, name, vents: true };
  if (kind === 'cool-room') return { kind, name, setPoint: 3, limit: 5 };
  return { kind, name };
}

/** The kind that is missing most: a house first, then what all is compared with, then the cool room. */
export function nextKind(places: FarmBegun['places']): PlaceKind {
  const kinds: readonly PlaceKind[] = ['tunnel', 'outdoor', 'cool-room'];
  return kinds.find((kind) => places.every((one) => one.kind !== kind)) ?? 'tunnel';
}
