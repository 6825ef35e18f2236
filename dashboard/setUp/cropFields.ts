import type { FarmBegun, FarmChoices, StarterCrop } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type FieldSpec, type Item, inUnits } from './fieldSpec.ts';

const figure = (path: string, group: string): FieldSpec => ({ path, as: 'figure', group });
/** Fields that only the page knows. */
export const STARTER = 'starter';
export const STANDS = 'stands';

/** The fields of a crop; the grower's own figures stand open. */
export function cropFields(choices: FarmChoices): FieldSpec[] {
  const text = words.setUpFields;
  const minutes = ['sow', 'tend', 'cut', 'pack', 'move'];
  return inUnits('crop', [
    { path: 'price', as: 'figure' },
    { path: 'perTray', as: 'figure' },
    { path: 'days', as: 'span', single: true },
    { path: 'name', as: 'text', group: 'climate', required: true },
    figure('base', 'climate'),
    { path: 'band', as: 'span', group: 'climate' },
    figure('heatLimit', 'climate'),
    figure('chill', 'climate'),
    {
      ...{ path: 'disease', as: 'many', group: 'climate' },
      options: choices.diseases.map((id) => [id, text.diseases[id] ?? id]),
    },
    figure('seed', 'work'),
    figure('other', 'work'),
    ...minutes.map((what) => figure(`minutes.${what}`, 'work')),
    { path: 'regrows', as: 'yes', group: 'work' },
    { path: 'young.days', as: 'span', single: true, group: 'young' },
    figure('young.perTray', 'young'),
    figure('young.price', 'young'),
    {
      ...{ path: 'keeps.like', as: 'choice', group: 'keeps', none: text.notTold },
      options: choices.keepsLike.map((id) => [id, text.keptCrops(id)]),
    },
    { path: 'keeps.days', as: 'span', single: true, group: 'keeps' },
    figure('keeps.at', 'keeps'),
    figure('keeps.q10', 'keeps'),
    figure('keeps.freezes', 'keeps'),
    figure('keeps.chill', 'keeps'),
    {
      ...{ path: 'keeps.class', as: 'choice', group: 'keeps', none: text.notTold },
      options: Object.entries(words.lots.classes),
    },
  ]);
}

/** A crop of the list to begin with, as the farm file would have it; price and yield are one's own. */
export const cropOf = (starter: StarterCrop, name: string): Item => ({
  id: starter.id,
  name,
  base: starter.base.value,
  band: starter.band.value,
  heatLimit: starter.heatLimit.value,
  ...(starter.chill && { chill: starter.chill.value }),
  disease: starter.disease,
  ...(starter.days && { days: starter.days.value }),
  ...(starter.minutes && { minutes: starter.minutes.value }),
});

/** What is left when a crop is given up: no place, delivery or mix speaks of it any more. */
export function withoutCrop(farm: FarmBegun, id: string): Item {
  const mixes = farm.mixes.filter(({ parts }) => parts.every((part) => part.crop !== id));
  const sold = new Set([
    ...farm.crops.map((one) => one.id).filter((one) => one !== id),
    ...mixes.map((one) => one.id),
  ]);
  return {
    ...farm,
    crops: farm.crops.filter((one) => one.id !== id),
    mixes,
    places: farm.places.map(({ crop, stage, ...place }) =>
      crop === id ? place : { ...place, ...(crop && { crop }), ...(stage && { stage }) },
    ),
    deliveries: withoutWants(farm.deliveries, sold),
  };
}

/** Deliveries that want nothing but what is sold. */
export const withoutWants = (deliveries: FarmBegun['deliveries'], sold: ReadonlySet<string>) =>
  deliveries.map((one) => ({ ...one, wants: one.wants.filter(({ of }) => sold.has(of)) }));
