import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  infectionHours,
  infectionParameters,
  infectionProgress,
} from '../../../rules/disease/index.ts';
import { celsius } from '../../../rules/units.ts';
import { truth } from '../../truth/index.ts';

const ids = {
  lettuce: 'lettuce-downy-mildew',
  basil: 'basil-downy-mildew',
  mould: 'grey-mould',
  brassica: 'brassica-downy-mildew',
  blight: 'late-blight',
} as const;
const parametersOf = (id: string) => {
  const parameters = infectionParameters[id];
  if (parameters === undefined) throw new Error(`Expected parameters for ${id}, got none`);
  return parameters;
};
const NEVER = 999; // in the table

test.for(
  truth('disease/infectionHours.csv', ['air_c', 'lettuce', 'basil', 'mould', 'brassica', 'blight']),
)('wet hours needed at $air_c °C', (row) => {
  for (const [column, id] of Object.entries(ids)) {
    const wanted = row[column as keyof typeof ids];
    const needed = infectionHours(celsius(row.air_c), parametersOf(id));
    if (wanted === NEVER) expect(needed).toBeNull();
    else expect(Math.abs((needed ?? NEVER) - wanted)).toBeLessThan(0.006);
  }
});

test.for(Object.entries(infectionParameters))('%s needs least at its optimum', ([, disease]) => {
  expect(infectionHours(celsius(disease.optimum), disease)).toBeCloseTo(disease.wetHours, 12);
  expect(disease.source).not.toBe('');
  fc.assert(
    fc.property(fc.double({ min: -10, max: 45, noNaN: true }), (t) => {
      const needed = infectionHours(celsius(t), disease);
      const outside = t <= disease.min || t >= disease.max;
      if (needed === null) return outside || t < disease.min + 0.1 || t > disease.max - 0.1;
      return !outside && needed >= disease.wetHours - 1e-9;
    }),
  );
});

test('progress adds up over changing temperature: 3 h at 10 °C and 3 h at 15 °C infect lettuce', () => {
  // Computed apart from this code: 1.3561 and 0.9040.
  const lettuce = parametersOf('lettuce-downy-mildew');
  const wet = (length: number) => [
    { hours: length, temperature: celsius(10) },
    { hours: length, temperature: celsius(15) },
  ];
  expect(infectionProgress(wet(3), lettuce)).toBeCloseTo(1.3561, 4);
  expect(infectionProgress(wet(2), lettuce)).toBeCloseTo(0.904, 4);
  expect(infectionProgress([{ hours: 40, temperature: celsius(26) }], lettuce)).toBe(0);
});

test('an optimum outside its limits is refused', () => {
  expect(() => infectionHours(celsius(10), { min: 5, optimum: 30, max: 25, wetHours: 4 })).toThrow(
    'Expected optimum temperature of infection from 5 to 25 °C, got 30',
  );
  expect(() => infectionHours(celsius(10), { min: 5, optimum: 5, max: 25, wetHours: 4 })).toThrow(
    'Expected optimum from above 5 to below 25 °C, got 5',
  );
});
