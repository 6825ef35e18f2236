import type { FarmBegun } from '../../hub/contract/index.ts';
import { words } from '../words.ts';
import { type FieldSpec, inUnits } from './fieldSpec.ts';

// The fields of the smaller parts of the description.

export const nameFields = (): FieldSpec[] => [
  { path: 'name', as: 'text', required: true },
  { path: 'money', as: 'text', required: true },
  { path: 'wage', as: 'figure', required: true },
];

export const mixFields = ({ crops }: FarmBegun): FieldSpec[] =>
  inUnits('mix', [
    { path: 'name', as: 'text', required: true },
    {
      ...{ path: 'parts', as: 'rows' },
      columns: [
        {
          ...{ path: 'crop', as: 'choice', none: words.setUpSteps.choose },
          options: crops.map(({ id, name }) => [id, name ?? id] as const),
        },
        { path: 'share', as: 'figure', times: 100 },
      ],
    },
    { path: 'price', as: 'figure' },
  ]);

export const deliveryFields = ({ crops, mixes }: FarmBegun): FieldSpec[] => [
  {
    ...{ path: 'day', as: 'choice', none: words.setUpSteps.choose, required: true },
    options: Object.entries(words.setUpSteps.days),
  },
  {
    ...{ path: 'wants', as: 'rows' },
    columns: [
      {
        ...{ path: 'of', as: 'choice', none: words.setUpFields.nothing },
        options: [...crops, ...mixes].map(({ id, name }) => [id, name ?? id] as const),
      },
      { path: 'kg', as: 'figure', unit: 'kg' },
    ],
  },
];

/** Corrections offered; others stand in the farm file. */
const CORRECTED = ['temperature', 'humidity', 'soil-moisture', 'soil-temperature'] as const;

export const probeFields = (): FieldSpec[] =>
  inUnits('probe', [
    { path: 'every', as: 'text' },
    { path: 'bare', as: 'yes' },
    ...CORRECTED.map((quantity) => ({ path: `offset.${quantity}`, as: 'figure' }) as const),
  ]);
