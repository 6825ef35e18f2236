import { expect, test } from 'vitest';
import { decide, type LotNow } from '../../../rules/decide/index.ts';
import { celsius, HOUR, instant, minutes } from '../../../rules/units.ts';
import { at, type Course, coolRoom, snapshot, spot } from './makeSnapshot.ts';

const now = at('2025-06-02T08:00');
const DAY = 24 * HOUR;

const lot = (wish: Partial<LotNow> = {}): LotNow => ({
  ...{ id: 'leaves-0601-1', place: 'cool-room', crop: 'Leaves', kilograms: 10 },
  pricePerKilogram: 16,
  storedAt: instant(now - 48 * HOUR),
  keeps: { life: { from: 10, to: 10 }, reference: 0, q10: 3, freezesAt: -0.2, chillMin: null },
  history: [{ hours: 48, temperature: 3 }],
  ...{ at: celsius(3), outdoors: null, released: null },
  exposure: { above: minutes(0), unknown: minutes(0), limit: celsius(5), clock: null },
  ...wish,
});
const decided = (
  lots: readonly LotNow[],
  { sales = [2, 9], air = 3 as Course, standing = [] as string[] } = {},
) =>
  decide(
    snapshot(now, {
      standing,
      places: [coolRoom({ spots: [spot(now, { spot: 'air', probe: 'cold', temperature: air })] })],
      stored: { lots, sales: sales.map((days) => instant(now + days * DAY)) },
    }),
  ).decisions;
const of = (kind: string, decisions: ReturnType<typeof decided>, subject?: string) =>
  decisions.find((one) => one.kind === kind && (!subject || one.subject === subject));

// 48 h at 3 °C and Q10 3 use 48 x 1.390389 = 66.74 h of 240: (240 - 66.74) / 1.390389 / 24 = 5.192 d left.
test.for([
  { sales: [4, 6], verdict: 'act', why: 'lot-slack', by: 4 }, // lasts to the next, not to the one after
  { sales: [6, 9], verdict: 'act', why: 'lot-over-before-sale', by: 5.192 },
  { sales: [4, 5], verdict: 'leave', why: 'lot-slack', by: null },
  { sales: [4], verdict: 'leave', why: 'lot-slack', by: null },
])('with deliveries in $sales days: $verdict, because $why', ({ sales, verdict, why, by }) => {
  const decision = of('sell-first', decided([lot()], { sales }));
  expect(decision).toMatchObject({ verdict, place: 'cool-room', subject: 'leaves-0601-1' });
  expect(decision?.because.map(({ what }) => what)).toContain(why);
  if (decision?.verdict === 'act') {
    expect(((decision.doBy ?? 0) - now) / DAY).toBeCloseTo(by ?? 0, 2);
    expect(decision.saves).toEqual({ amount: 5, money: 80 }); // half of 10 kg at 16
    expect(decision.alarm).toBeNull();
  }
});

test('without delivery days, or without knowing how long it keeps, nobody can say', () => {
  expect(of('sell-first', decided([lot()], { sales: [] }))).toMatchObject({
    ...{ verdict: 'unknown', missing: ['delivery-days'] },
  });
  const keeps = { ...lot().keeps, life: null };
  const blind = decided([lot({ keeps })]);
  expect(of('sell-first', blind)).toMatchObject({ verdict: 'unknown', missing: ['lot-life'] });
  expect(of('throw-out', blind)).toMatchObject({ verdict: 'unknown', missing: ['lot-life'] });
});

test('a lot whose keeping time is used up is to be looked at, and sold first no more', () => {
  const old = lot({ history: [{ hours: 200, temperature: 3 }] }); // 278 h used of 240
  const decisions = decided([old]);
  expect(of('throw-out', decisions)?.verdict).toBe('act');
  expect(of('sell-first', decisions)?.verdict).toBe('leave');
});

test.for([
  { above: 241, unknown: 0, verdict: 'act' },
  { above: 100, unknown: 141, verdict: 'act' }, // unknown time is possibly above
  { above: 100, unknown: 100, verdict: 'leave' },
])(
  '$above min over and $unknown unknown of a clock of 240: $verdict',
  ({ above, unknown, verdict }) => {
    const exposure = {
      ...{ above: minutes(above), unknown: minutes(unknown) },
      ...{ limit: celsius(5), clock: minutes(240) },
    };
    const said = of('throw-out', decided([lot({ exposure })]));
    expect(said?.verdict).toBe(verdict);
    expect(said?.because.find(({ what }) => what === 'lot-unknown-hours')?.value).toBeCloseTo(
      unknown / 60,
      2,
    );
  },
);

test('nothing is asked of a lot that a named person has released', () => {
  const old = lot({ history: [{ hours: 200, temperature: 3 }], released: instant(now - HOUR) });
  expect(of('throw-out', decided([old]))?.verdict).toBe('leave');
});

test('a lot that chilled is to be looked at, with what it bears as the limit', () => {
  const keeps = { ...lot().keeps, chillMin: 12 };
  const said = of('throw-out', decided([lot({ keeps })]));
  expect(said?.verdict).toBe('act');
  expect(said?.because.find(({ what }) => what === 'lot-chilling')?.limit).toBe(12);
});

const freezingFor = (minutesLong: number) => (ago: number) => (ago < minutesLong ? -0.4 : 2);

test('a quarter of an hour below zero with lots stored wakes somebody', () => {
  const said = of('move-produce', decided([lot()], { air: freezingFor(21) }), 'freezing');
  expect(said).toMatchObject({ verdict: 'act', alarm: 'frost', place: 'cool-room' });
});

test('less than that does not, and an empty room never does', () => {
  expect(of('move-produce', decided([lot()], { air: freezingFor(11) }), 'freezing')?.verdict).toBe(
    'leave',
  );
  expect(of('move-produce', decided([], { air: -2 }), 'freezing')).toBeUndefined();
});

test('once raised it stays until the air is clearly over zero', () => {
  const standing = ['move-produce:cool-room:freezing'];
  const verdict = (air: number) =>
    of('move-produce', decided([lot()], { air, standing }), 'freezing')?.verdict;
  expect(verdict(0.3)).toBe('act');
  expect(verdict(0.5)).toBe('leave');
});

test('without a reading nobody can say whether lots freeze', () => {
  const silent = decide(
    snapshot(now, {
      places: [coolRoom({ spots: [spot(now, { spot: 'air', temperature: 3, silent: 90 })] })],
      stored: { lots: [lot()], sales: [] },
    }),
  ).decisions;
  expect(of('move-produce', silent, 'freezing')?.verdict).toBe('unknown');
});
