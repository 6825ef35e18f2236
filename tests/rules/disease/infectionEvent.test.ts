import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  basilInfection,
  classFor,
  classOfIncidence,
  classOfProgress,
  daysSince,
  diseases,
  escalated,
  greyMouldFlowers,
  infectionEvent,
  lettuceMorning,
  powderyMildew,
  type RiskClass,
  type RiskRange,
  riskWord,
  stageOf,
  worseRange,
} from '../../../rules/disease/index.ts';
import { at } from '../wetness/series.ts';

const range = (least: RiskClass, most: RiskClass = least): RiskRange => ({ least, most });
const DAY = 24; // h
const anyClass = fc.constantFrom<RiskClass>('quiet', 'watch', 'event');

test('classes: 0.15 and 0.50 of incidence, 0.5 and 1 of progress', () => {
  // MacKenzie & Peres 2012 for the incidence; ours for the progress.
  expect([0.149, 0.15, 0.499, 0.5].map(classOfIncidence)).toEqual([
    'quiet',
    'watch',
    'watch',
    'event',
  ]);
  expect([0.499, 0.5, 0.999, 1, 30].map(classOfProgress)).toEqual([
    'quiet',
    'watch',
    'watch',
    'event',
    'event',
  ]);
  expect(() => classOfIncidence(1.01)).toThrow('Expected incidence from 0 to 1, got 1.01');
  expect(() => classOfIncidence(Number.NaN)).toThrow(RangeError);
  expect(() => classOfProgress(-0.1)).toThrow(RangeError);
});

test('one word where both bounds agree, two where they do not', () => {
  expect(riskWord(range('watch'))).toBe('watch');
  expect(riskWord(range('quiet', 'watch'))).toBe('quiet-to-watch');
  expect(riskWord(range('quiet', 'event'))).toBe('quiet-to-event');
  expect(riskWord(range('watch', 'event'))).toBe('watch-to-event');
  expect(riskWord('unknown')).toBe('unknown');
});

test('looking goes by the upper bound, what costs by the lower', () => {
  expect(classFor('looking', range('quiet', 'event'))).toBe('event');
  expect(classFor('costly', range('quiet', 'event'))).toBe('quiet');
  expect(classFor('costly', 'unknown')).toBeNull();
});

test('the worse of two ranges is worse at each bound', () => {
  expect(worseRange(range('quiet', 'event'), range('watch'))).toEqual(range('watch', 'event'));
  expect(worseRange('unknown', range('quiet'))).toBe('unknown');
  expect(worseRange(range('event'), 'unknown')).toEqual(range('event'));
  expect(worseRange('unknown', 'unknown')).toBe('unknown');
});

test('an event holds its class, how certain it is, and when to look', () => {
  const event = infectionEvent(basilInfection, { risk: range('watch', 'event') }, at(0));
  // Massachusetts fact sheet: symptoms after 5 to 10 days.
  expect(event).toEqual({
    disease: 'basil-downy-mildew-infection',
    at: at(0),
    risk: 'watch-to-event',
    certainty: 'possible',
    looksFrom: 5,
    looksUntil: 10,
  });
  expect(infectionEvent(basilInfection, { risk: range('event') }, at(0))?.certainty).toBe('sure');
  expect(infectionEvent(basilInfection, { risk: range('quiet') }, at(0))).toBeNull();
  expect(infectionEvent(basilInfection, { risk: 'unknown' }, at(0))).toMatchObject({
    risk: 'unknown',
    certainty: 'possible',
  });
  expect(infectionEvent(powderyMildew, { risk: null }, at(0))).toBeNull();
});

test('latent periods as published, and a fortnight where none is known', () => {
  const looks = (disease: Parameters<typeof infectionEvent>[0]) => {
    const event = infectionEvent(disease, { risk: range('event') }, at(0));
    return [event?.looksFrom, event?.looksUntil];
  };
  expect(looks(lettuceMorning)).toEqual([5, 14]); // Scherm & van Bruggen 1994
  expect(looks(greyMouldFlowers)).toEqual([28, 35]); // from memory
  expect(looks(powderyMildew)).toEqual([4, 18]); // from day 4, Amsalem et al. 2006; the end is ours
  expect(looks({ id: 'x', latentDays: null })).toEqual([0, 14]); // ours
});

test('an event waits, is looked for, and ages out', () => {
  const event = infectionEvent(basilInfection, { risk: range('event') }, at(0));
  if (event === null) throw new Error('Expected an event, got null');
  const stage = (days: number) => stageOf(event, at(days * DAY));
  expect([0, 4.99, 5, 10, 10.01].map(stage)).toEqual([
    'waiting',
    'waiting',
    'look',
    'look',
    'aged-out',
  ]);
});

test('three watch days of the last five raise the class a step', () => {
  const [q, w, e] = [range('quiet'), range('watch'), range('event')];
  expect(escalated(w, [w, w, q, q, w])).toEqual(e);
  expect(escalated(q, [w, e, q, q, w])).toEqual(w);
  expect(escalated(w, [w, w, q, q, q])).toEqual(w);
  expect(escalated(w, [w, w, w, q, q, q, q])).toEqual(w); // only the last five count
  expect(escalated(e, [w, w, w])).toEqual(e);
  expect(escalated(q, ['unknown', 'unknown', 'unknown'])).toEqual(range('quiet', 'watch'));
  expect(escalated('unknown', [w, w, w])).toBe('unknown');
});

test('escalating never lowers a class', () => {
  const order = ['quiet', 'watch', 'event'];
  const anyRange = fc.tuple(anyClass, anyClass).map(([a, b]) => {
    const [least = a, most = b] = [a, b].toSorted((x, y) => order.indexOf(x) - order.indexOf(y));
    return range(least, most);
  });
  fc.assert(
    fc.property(
      anyRange,
      fc.array(fc.oneof(anyRange, fc.constant<RiskRange>('unknown'))),
      (today, days) => {
        const then = escalated(today, days);
        if (then === 'unknown' || today === 'unknown') return false;
        const rank = (word: RiskClass) => order.indexOf(word);
        return rank(then.least) >= rank(today.least) && rank(then.most) >= rank(then.least);
      },
    ),
  );
});

test('days since an event, and none when there was none', () => {
  expect(daysSince(at(0), at(47.9))).toBe(1);
  expect(daysSince(at(0), at(48))).toBe(2);
  expect(daysSince(null, at(0))).toBeNull();
  expect(() => daysSince(at(1), at(0))).toThrow('Expected an instant before now');
});

test('latent periods of each way of judging, days', () => {
  // Basil: Massachusetts fact sheet. Lettuce: Scherm & van Bruggen 1994. Mildew: Amsalem et al.
  // 2006. Strawberry flowers: from memory.
  const known = diseases.filter(({ latentDays }) => latentDays !== null);
  expect(Object.fromEntries(known.map(({ id, latentDays }) => [id, latentDays]))).toEqual({
    'basil-downy-mildew-infection': [5, 10],
    'basil-downy-mildew-sporulation': [5, 10],
    'lettuce-downy-mildew-morning': [5, 14],
    'lettuce-downy-mildew-infection': [5, 14],
    'powdery-mildew': [4, null],
    'grey-mould-flowers': [28, 35],
  });
});
