import { expect, test } from 'vitest';
import {
  decide,
  lowForetold,
  type NightRecord,
  type PushedForecast,
} from '../../../rules/decide/index.ts';
import { learnUpdate } from '../../../rules/decide/learnUpdate.ts';
import { lowByMorning } from '../../../rules/decide/lowByMorning.ts';
import { celsius, HOUR, instant } from '../../../rules/units.ts';
import { at, outside, pastNights, patch, snapshot, spot } from './makeSnapshot.ts';

// 45° N, 0° E on 21 December: sunset 16:21, sunrise 07:35 UTC (suncalc, astronomy-engine).
const sunset = at('2025-12-21T16:21');
const sunrise = at('2025-12-22T07:35');
const morning = at('2025-12-21T09:30');
const afternoon = at('2025-12-21T15:10');
const evening = at('2025-12-21T18:25');
const midnight = at('2025-12-22T00:30');
const grass = (now: number, temperature: number, more = {}) =>
  spot(now, { spot: 'grass', temperature, ...more });
const forecast = (now: number, bed: ReturnType<typeof grass>, pushed: PushedForecast[] = []) => {
  const outlook = decide(snapshot(now, { places: [outside(bed)], pushed }));
  expect(outlook.failures).toEqual([]);
  const [found] = outlook.frost;
  if (found === undefined) throw new Error('Expected a forecast, got none');
  return found;
};
const named = (i: number) => new Date(Date.UTC(2025, 10, 20 + i)).toISOString().slice(0, 10);

// Thirty mornings whose night fell 3 K below the morning's dew point, whatever last night did.
const damp = Array.from({ length: 30 }, (_, i): NightRecord => {
  const dew = 4 + 3 * Math.sin(i * 1.7);
  return {
    night: named(i),
    morning: { temperature: celsius(dew + 2), dewPoint: celsius(dew) },
    afternoon: null,
    evening: null,
    low: celsius(dew - 3 + ((i * 7) % 5) / 10),
  };
});

test('a morning that tells of the night is learned from, where it beats last night’s low again', () => {
  const today = { temperature: celsius(1), dewPoint: celsius(-1) };
  const said = lowByMorning(damp, today);
  expect(said?.low.mean).toBeCloseTo(-3.8, 0);
  expect(said?.method).toBe('recent-nights');
});

test('where nothing does better than last night’s low again, there is no such line', () => {
  // Lows that creep down by a tenth of a kelvin a night, and mornings that say nothing of it.
  const steady = Array.from({ length: 40 }, (_, i): NightRecord => {
    const idle = celsius(((i * 7) % 13) - 5);
    const morning = { temperature: idle, dewPoint: null };
    const low = celsius(4 - i / 10 + (i % 2) / 50);
    return { night: named(i), morning, afternoon: null, evening: null, low };
  });
  const said = lowByMorning(steady, { temperature: celsius(0), dewPoint: null });
  expect(said?.low.mean ?? 0).toBeCloseTo(0, 0);

  // Walks without memory: steps of a Lehmer generator. What is said is near last night's low.
  let seed = 7;
  let refused = 0;
  let off = 0;
  for (let walk = 0; walk < 40; walk++) {
    let low = 0;
    const nights = Array.from({ length: 60 }, (_, i): NightRecord => {
      seed = (seed * 16807) % 2147483647;
      low += 4 * (seed / 2147483647 - 0.5);
      return { night: named(i), morning: null, afternoon: null, evening: null, low: celsius(low) };
    });
    const line = lowByMorning(nights, null);
    if (line === null) refused += 1;
    else off += Math.abs(line.low.mean - low);
  }
  expect(refused).toBeGreaterThan(10);
  expect(off / (40 - refused)).toBeLessThan(0.6); // half of a step's standard deviation, 1.15
});

test('without the morning’s reading, or last night’s low, that line is silent', () => {
  expect(lowByMorning(damp, null)).toBeNull();
  const gap = [...damp, { ...damp[0], night: named(30), low: null } as NightRecord];
  expect(lowByMorning(gap, { temperature: celsius(1), dewPoint: celsius(-1) })).toBeNull();
  const now = morning;
  expect(forecast(now, grass(now, 2, { nights: gap })).method).toBe('recent-nights');
});

test('an evening nobody read leaves the afternoon to speak, a low nobody read teaches nothing', () => {
  const nights = pastNights(20).map((night, i) => (i % 2 ? { ...night, evening: null } : night));
  const said = forecast(evening, grass(evening, 3, { nights }));
  expect(said).toMatchObject({ method: 'evening', nightsLearned: 10 });
  const holes = pastNights(20).map((night, i) => (i % 2 ? { ...night, low: null } : night));
  expect(forecast(evening, grass(evening, 3, { nights: holes })).nightsLearned).toBe(10);
  const none = pastNights(20).map((night) => ({ ...night, evening: null }));
  expect(forecast(evening, grass(evening, 3, { nights: none })).method).toBe('afternoon');
});

test('one night of a probe left in the sun does not bend the line of the others', () => {
  const nights = pastNights(30);
  const [first, ...rest] = nights;
  const broken = [{ ...first, low: celsius(35) } as NightRecord, ...rest];
  const clean = forecast(evening, grass(evening, 3, { nights: rest }));
  expect(forecast(evening, grass(evening, 3, { nights: broken })).low).toEqual(clean.low);
});

test('a station’s nights narrow the first guess, and own nights replace them', () => {
  const prior = { mean: celsius(-3), sd: 3, df: 30, station: 'Coast', nights: 400 };
  const guess = forecast(evening, grass(evening, 3));
  const helped = forecast(evening, grass(evening, 3, {}), []);
  expect(helped.low).toEqual(guess.low);
  const bed = { ...grass(evening, 3), prior };
  const said = forecast(evening, bed);
  // By hand: 3 - 5 = -2 ± 3.5 and -3 ± 3: weights 1/12.25 and 1/9.
  expect(said.low.mean).toBeCloseTo((-2 / 12.25 - 3 / 9) / (1 / 12.25 + 1 / 9), 1);
  expect(said.low.sd).toBeCloseTo(1 / Math.sqrt(1 / 12.25 + 1 / 9), 1);
  expect(said).toMatchObject({ method: 'station', nightsLearned: 0 });
  const own = { ...grass(evening, 3, { nights: pastNights(14) }), prior };
  expect(forecast(evening, own).method).toBe('evening');
});

// Nights that fall along the square-root curve of FAO 2005 to 5 K below the evening, but for a
// jump of their own at the third hour that the rest of the night keeps.
const HOURS = 15;
const kept = Array.from({ length: 24 }, (_, i): NightRecord => {
  const start = 2 + ((i * 5) % 7);
  const jump = (((i * 11) % 9) - 4) * 0.8;
  const at3 = (after: number) =>
    start - 5 * Math.sqrt(Math.max(0, after - 2) / (HOURS - 2)) + (after > 2 ? jump : 0);
  return {
    night: named(i),
    afternoon: null,
    evening: { temperature: celsius(start), dewPoint: null },
    low: celsius(at3(HOURS)),
    hours: Array.from({ length: HOURS }, (_, after) => celsius(at3(after))),
    length: HOURS,
  };
});

test('through the night the way that has been nearest on own nights is taken, with its spread', () => {
  const learned = learnUpdate(kept, 8);
  expect(learned?.way).toBe('kept');
  const evenings = learnUpdate(kept, 3);
  expect(learned?.spread ?? 9).toBeLessThanOrEqual((evenings?.spread ?? 0) + 0.5);
  expect(learnUpdate(kept.slice(0, 14), 8)).toBeNull();
  expect(learnUpdate(kept, 2.5)).toBeNull();
});

test('from three hours after sunset on a forecast is called one through the night', () => {
  const nights = kept;
  expect(forecast(evening, grass(evening, 3, { nights })).method).toBe('evening');
  const later = forecast(midnight, grass(midnight, 1, { nights }));
  expect(later.method).toBe('through-the-night');
  expect(later.pBelow.p).toBeGreaterThan(0);
  expect(later.pBelow.p).toBeLessThan(1);
});

const issue = (low: number, lowsBefore: readonly (number | null)[] = []): PushedForecast => ({
  source: 'met',
  issuedAt: instant(afternoon - HOUR),
  temperature: {
    t: Array.from({ length: 20 }, (_, i) => instant(sunset + (i - 1) * HOUR)),
    value: Array.from({ length: 20 }, (_, i) => (i === 12 ? low : low + 4)),
  },
  rain: { t: [], value: [] },
  nights: lowsBefore.map((value, i) => {
    const said = value === null ? null : celsius(value);
    const night = `2025-10-${String(i + 1).padStart(2, '0')}`;
    return { night, lows: { morning: said, afternoon: said, evening: said } };
  }),
});

test('the low of a pushed forecast is that of the night, if it holds the whole of it', () => {
  expect(lowForetold(issue(-3).temperature, sunset, sunrise)).toBe(-3);
  const { t, value } = issue(-3).temperature;
  const short = { t: t.slice(0, 8), value: value.slice(0, 8) };
  expect(lowForetold(short, sunset, sunrise)).toBeNull();
  const coarse = { t: t.filter((_, i) => i % 6 === 0), value: value.filter((_, i) => i % 6 === 0) };
  expect(lowForetold(coarse, sunset, sunrise)).toBeNull();
  expect(lowForetold({ t: [], value: [] }, sunset, sunrise)).toBeNull();
});

test('a pushed forecast has no say at the start, and a share once its record is the better one', () => {
  const nights = pastNights(20);
  const bed = grass(afternoon, 3, { nights });
  const own = forecast(afternoon, bed);
  const fresh = forecast(afternoon, bed, [issue(5)]);
  expect(fresh.low).toEqual(own.low);
  expect(fresh.sources[0]).toMatchObject({ source: 'met', said: 5, nights: 0, weight: 0 });

  const right = nights.map(({ low }) => low);
  const proven = forecast(afternoon, bed, [issue(5, right)]);
  expect(proven.sources[0]?.nights).toBe(20);
  expect(proven.sources[0]?.weight).toBeGreaterThan(0.3);
  expect(proven.low.mean).toBeGreaterThan(own.low.mean + 1);

  const wrong = right.map((low, i) => (low ?? 0) + (i % 2 ? 8 : -8));
  const poor = forecast(afternoon, bed, [issue(5, wrong)]);
  expect(poor.low).toEqual(own.low);
  expect(poor.sources[0]).toMatchObject({ weight: 0, nights: 20 });
});

test('a pushed forecast with a bias is believed less its bias', () => {
  const nights = pastNights(20);
  const biased = nights.map(({ low }) => (low ?? 0) + 3);
  const { sources } = forecast(afternoon, grass(afternoon, 3, { nights }), [issue(5, biased)]);
  // By hand: 20 nights 3 too warm, and 3 without any bias counted in: 60/23 = 2.609 is taken off.
  expect(sources[0]?.corrected).toBeCloseTo(5 - 60 / 23, 9);
});

test('each limit of what grows here has its chance and its time', () => {
  const now = evening;
  const place = patch({ spots: [grass(now, 1, { nights: pastNights(14) })] });
  const [said] = decide(snapshot(now, { places: [place] })).frost;
  expect(said?.limits).toHaveLength(1);
  expect(said?.limits[0]).toMatchObject({ what: 'damage', at: -2.2, p: said?.pBelow.p });
  const bare = decide(snapshot(now, { places: [outside(grass(now, 1))] })).frost[0];
  expect(bare?.limits).toEqual([]);
});

// 37.5° S, 145° E on 21 December 2025: sunset 09:40:45, sunrise of the 21st 18:55 UTC the day
// before (suncalc, astronomy-engine). The farm's day there begins at 13:00 UTC.
test('south of the equator, and half a day ahead, the night is the one to come there', () => {
  const now = at('2025-12-21T06:00'); // 17:00 local
  const begins = at('2025-12-20T13:00');
  const bed = grass(now, 12, { nights: pastNights(14) });
  const [said] = decide(
    snapshot(now, {
      places: [outside(bed)],
      farm: { lat: -37.5, lon: 145, wage: 16 },
      day: { name: '2025-12-21', begins, ends: instant(begins + 24 * HOUR) },
    }),
  ).frost;
  expect(said).toMatchObject({ night: '2025-12-22', method: 'afternoon' });
  expect(Math.abs((said?.fan[0]?.t ?? 0) - at('2025-12-21T09:40'))).toBeLessThan(2 * 60_000);
  const end = said?.fan.at(-1)?.t ?? 0;
  expect(Math.abs(end - HOUR - at('2025-12-21T18:55'))).toBeLessThan(2 * 60_000);
});
