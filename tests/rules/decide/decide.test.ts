import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Decision,
  decide,
  type PlaceNow,
  rank,
  type Snapshot,
  taskKey,
} from '../../../rules/decide/index.ts';
import { celsius, instant, minutes } from '../../../rules/units.ts';
import { anySnapshot } from './anySnapshot.ts';
import { at, outside, patch, snapshot, spot, tunnel } from './makeSnapshot.ts';

const runs = { numRuns: 150 };

test('nothing is thrown and no rule breaks down, whatever is missing', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      expect(decide(any).failures).toEqual([]);
    }),
    runs,
  );
});

test('the same snapshot gives the same outlook, and is left as it was', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const before = JSON.stringify(any);
      expect(decide(any)).toEqual(decide(structuredClone(any)));
      expect(JSON.stringify(any)).toBe(before);
    }),
    { numRuns: 40 },
  );
});

test('every decision has its own key, every unknown says what is missing, every act has a reason', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const { decisions } = decide(any);
      const about = decisions.filter(({ kind }) => kind !== 'see-to-probe');
      expect(new Set(about.map(taskKey)).size).toBe(about.length);
      for (const decision of decisions) {
        if (decision.verdict === 'unknown') expect(decision.missing.length).toBeGreaterThan(0);
        if (decision.verdict === 'act') expect(decision.because.length).toBeGreaterThan(0);
        for (const { what, source } of decision.because) {
          expect(what).toMatch(/^[a-z]+(-[a-z]+)*$/);
          expect(source).not.toBe('');
        }
      }
    }),
    runs,
  );
});

test('opening and closing one place are never both asked, nor covering and uncovering', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const acts = decide(any)
        .decisions.filter(({ verdict }) => verdict === 'act')
        .map(({ kind }) => kind);
      expect(acts.includes('open-up') && acts.includes('close-up')).toBe(false);
      expect(acts.includes('cover') && acts.includes('uncover')).toBe(false);
    }),
    runs,
  );
});

/** The same farm with every probe of one place, or of all places, gone. */
const without = (any: Snapshot, gone: (place: PlaceNow) => boolean): Snapshot => ({
  ...any,
  places: any.places.map((place) => (gone(place) ? { ...place, spots: [] } : place)),
});
const verdicts = (any: Snapshot) =>
  new Map(decide(any).decisions.map((decision) => [taskKey(decision), decision.verdict]));

test('taking a place’s probes away never turns an act or an unknown into "all is well"', () => {
  fc.assert(
    fc.property(
      anySnapshot,
      fc.constantFrom('long-house', 'south-patch', 'cool-room'),
      (any, id) => {
        const before = verdicts(any);
        const after = verdicts(without(any, (place) => place.id === id));
        for (const [key, verdict] of before) {
          if (!key.includes(id) || /^(see-to-probe|close-up)/.test(key)) continue;
          // Once its morning is past, covers come off only for heat that a probe under them sees.
          if (key.startsWith('uncover')) continue;
          if (verdict !== 'leave')
            expect(after.get(key), `${key} was ${verdict}`).not.toBe('leave');
        }
      },
    ),
    runs,
  );
});

test('taking the outside probes away never turns an act or an unknown into "all is well"', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const before = verdicts(any);
      const after = verdicts(without(any, ({ kind }) => kind === 'outdoor' || kind === 'patch'));
      for (const key of ['open-up:long-house', 'close-up:long-house']) {
        // Hot or damp enough to ask and no outside to compare with: that is not "leave".
        const said = before.get(key);
        if (said === 'act') expect(after.get(key), key).not.toBe('leave');
      }
    }),
    runs,
  );
});

test('a farm without one reading is asked for nothing, and nobody says all is well indoors', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const empty = without({ ...any, probes: [] }, () => true);
      const { decisions, frost, coolRooms } = decide(empty);
      expect(decisions.filter(({ verdict }) => verdict === 'act')).toEqual([]);
      expect(frost).toEqual([]);
      for (const { state } of coolRooms) expect(state).toBe('unknown');
    }),
    runs,
  );
});

test('one rule that breaks down is unknown with its sentence, and the others go on', () => {
  const now = at('2025-06-21T09:00');
  const bad = spot(now, { temperature: 20, humidity: 400 }); // no probe can mean it
  const hot = spot(now, { temperature: 30, humidity: 50 });
  const air = outside(spot(now, { spot: 'air', temperature: 20, humidity: 60 }));
  const places = [tunnel({ id: 'a', spots: [bad] }), tunnel({ id: 'b', spots: [hot] }), air];
  const { decisions, failures } = decide(snapshot(now, { places }));
  const [broken, fine] = ['a', 'b'].map((id) =>
    decisions.find(({ kind, place }) => kind === 'open-up' && place === id),
  );
  expect(broken).toMatchObject({ verdict: 'unknown', missing: ['rule-broke'] });
  expect(String(broken?.because[0]?.value)).toMatch(/^Expected relative humidity .*got 400$/);
  expect(fine?.verdict).toBe('act');
  expect(failures.some(({ rule }) => rule === 'open-up:a')).toBe(true);
});

test('a place with nothing to open, cover or cool is asked for nothing', () => {
  const now = at('2025-06-21T09:00');
  const places = [tunnel({ vents: false }), patch({ cover: null }), outside()];
  expect(decide(snapshot(now, { places })).decisions).toEqual([]);
});

const asked = (place: string, wish: Partial<Decision> = {}): Decision =>
  ({
    kind: 'cover',
    place,
    subject: null,
    verdict: 'act',
    because: [],
    from: null,
    doBy: null,
    minutes: minutes(10),
    saves: { amount: null, money: null },
    alarm: null,
    ...wish,
  }) as Decision;
const saves = (money: number | null) => ({ saves: { amount: null, money } });

test('the list begins with alarms, then what a minute of work spares, then the deadline', () => {
  const list = [
    asked('late', { doBy: instant(200) }),
    asked('soon', { doBy: instant(100) }),
    asked('rich', saves(90)),
    asked('richer-but-long', { ...saves(100), minutes: minutes(60) }),
    asked('alarm', { alarm: 'frost' }),
    { ...asked('fine'), verdict: 'leave' } as Decision,
    { ...asked('who-knows'), verdict: 'unknown', missing: ['x'] } as Decision,
    asked('whenever'),
  ];
  const order = [
    'alarm',
    'rich',
    'richer-but-long',
    'soon',
    'late',
    'whenever',
    'who-knows',
    'fine',
  ];
  expect(rank(list).map(({ place }) => place)).toEqual(order);
});

test('ranking keeps every decision, whatever order they come in', () => {
  fc.assert(
    fc.property(anySnapshot, (any) => {
      const { decisions } = decide(any);
      const turned = rank([...decisions].reverse());
      expect(turned).toHaveLength(decisions.length);
      expect(new Set(turned)).toEqual(new Set(decisions));
    }),
    { numRuns: 30 },
  );
});

test('frost forecasts are one for each place and spot, the colder of two probes speaking', () => {
  const now = at('2025-12-21T15:30');
  const two = [4, 9].map((temperature, i) =>
    spot(now, { spot: 'grass', probe: `p${i}`, temperature }),
  );
  const { frost } = decide(snapshot(now, { places: [outside(...two)] }));
  expect(frost).toHaveLength(1);
  const [alone] = decide(snapshot(now, { places: [outside(...two.slice(0, 1))] })).frost;
  expect(frost[0]?.low.mean).toBe(alone?.low.mean ?? celsius(Number.NaN));
});
