import fc from 'fast-check';
import { expect, test } from 'vitest';
import { taskKinds } from '../../../hub/contract/terms.ts';
import { evidenceLabels, missingLabels } from '../../../hub/words/en.ts';
import * as words from '../../../hub/words/index.ts';
import { evidenceLabel, missingLabel, title } from '../../../hub/words/index.ts';
import { decide } from '../../../rules/decide/index.ts';
import { anySnapshot } from '../../rules/decide/anySnapshot.ts';

/** A number and its unit are held together by a hard space; here any space will do. */
const soft = (text: string) => text.replaceAll('\u00a0', ' ');
const why = (...given: Parameters<typeof words.why>) => soft(words.why(...given));
const caution = (kind: Parameters<typeof words.caution>[0]) => {
  const said = words.caution(kind);
  return said === null ? null : soft(said);
};

const fact = (what: string, value: number | string | null, limit: number | null = null) => ({
  what,
  value,
  unit: '',
  limit,
  source: 'told',
});

test('every term of every decision has a label, and every act a reason in words', () => {
  const seen = new Set<string>();
  fc.assert(
    fc.property(anySnapshot, (any) => {
      for (const decision of decide(any).decisions) {
        const missing = decision.verdict === 'unknown' ? decision.missing : [];
        for (const { what } of decision.because) {
          seen.add(what);
          expect(evidenceLabels, what).toHaveProperty(what);
        }
        for (const term of missing) expect(missingLabels, term).toHaveProperty(term);
        const words = why(decision.kind, decision.because, missing);
        if (decision.verdict !== 'leave') {
          expect(words, `${decision.kind} ${JSON.stringify(decision.because)}`).not.toBe('');
        }
        expect(words).not.toMatch(/!|undefined|NaN|null|[a-z]+-[a-z]+-[a-z]+/);
        expect(words).not.toMatch(/\d\.\d\d/);
        expect(words.split('. ').length).toBeLessThan(4);
      }
    }),
    { numRuns: 600, seed: 20260423 }, // always the same snapshots: variety is counted below
  );
  expect(seen.size).toBeGreaterThan(25); // otherwise the snapshots were too tame to prove anything
});

test('the reason to open says how long leaves were wet and how much drier it is outside', () => {
  const because = [fact('wet-hours', 6.52, 4), fact('outside-drier-by', 3.14, 0.3)];
  expect(why('open-up', because, [])).toBe(
    'Leaves have been wet for 6.5 hours. Outside air holds 3.1 g/m³ less water.',
  );
});

test('a fact short of its limit is not given as the reason', () => {
  const because = [
    fact('inside-temperature', 29, 28),
    fact('outside-cooler-by', 7, 1),
    fact('wet-hours', 5, 4),
    fact('outside-drier-by', 0.1, 0.3),
  ];
  expect(why('open-up', because)).toBe(
    'It is 29 °C inside; venting starts at 28 °C. Outside is 7 °C cooler.',
  );
});

test('what is missing is named, never hidden', () => {
  expect(why('cover', [], ['night-forecast'])).toMatch(
    /^Cannot say without a forecast for tonight/,
  );
  expect(why('open-up', [], ['inside-humidity', 'outside-temperature'])).toBe(
    'Cannot say without a humidity reading from inside and a temperature reading from outside.',
  );
});

test('chances are whole, other numbers have at most one decimal and a true minus, one hour is one hour', () => {
  const because = [fact('chance-of-damage', 31.25, 1.3), fact('tonight-low', -1.44, -2.2)];
  expect(why('cover', because)).toBe(
    'The chance of damage tonight is 31 %; covering pays from 1 %. Tonight’s low is about −1.4 °C; damage begins at −2.2 °C.',
  );
  expect(why('see-to-probe', [fact('silent-hours', 1.01)])).toBe('It has been silent for 1 hour.');
});

test('every kind of task has a short imperative title that names the place or the thing', () => {
  const titles = taskKinds.map((kind) =>
    title({ kind, place: 'Long House', subject: null, because: [] }),
  );
  expect(new Set(titles).size).toBe(taskKinds.length);
  for (const text of titles) expect(text).toMatch(/^[A-Z][a-z]+ .*Long House/);
});

test('titles read as somebody would say them', () => {
  const of = (kind: (typeof taskKinds)[number], place: string, subject: string | null = null) =>
    title({ kind, place, subject, because: [] });
  expect(of('open-up', 'Long House')).toBe('Open up Long House');
  expect(of('shut-door', 'Cool room')).toBe('Shut the cool room’s door');
  expect(of('see-to-probe', 'Long House', 'p7')).toBe('See to probe p7 in Long House');
  const because = [fact('battery', 12, 20)];
  expect(title({ kind: 'see-to-probe', place: 'Long House', subject: 'p7', because })).toBe(
    'Change the battery of probe p7 in Long House',
  );
});

test('where the work can hurt the usual caution is given and licensed people are named', () => {
  expect(caution('run-generator')).toMatch(
    /Outdoors only.*6 m.*no smell.*refuelling.*licensed electrician/,
  );
  expect(caution('move-produce')).toMatch(/not a verdict.*food-safety officer/);
  expect(caution('see-to-unit')).toMatch(/licensed/);
  expect(caution('see-to-probe')).toBeNull();
});

test('labels are phrases, not code', () => {
  const all = [
    ...Object.keys(evidenceLabels).map(evidenceLabel),
    ...Object.keys(missingLabels).map(missingLabel),
  ];
  for (const label of all) expect(label).not.toMatch(/[a-z]-[a-z]+-|!|_/);
  expect(evidenceLabel('never-heard-of')).toBe('never heard of');
});
