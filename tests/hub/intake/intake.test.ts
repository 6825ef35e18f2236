import { expect, test } from 'vitest';
import { type Intaken, makeIntake } from '../../../hub/intake/index.ts';
import { tempStore } from '../tempStore.ts';

const NOW = Date.UTC(2026, 4, 10, 9);

/** The real intake over a real store; `fail` makes the next commit fail. */
function intakeOver(waitMs = 10_000) {
  const { store } = tempStore();
  const kept: Intaken[] = [];
  let failing = false;
  const intake = makeIntake({
    mappings: () => [],
    recall: (probe, quantity) =>
      store.readings.allBetween(probe, quantity, 0, Number.MAX_SAFE_INTEGER),
    offsetOf: () => 0,
    waitMs,
    keep: (batch) =>
      store.transaction(() => {
        for (const { readings, amendments } of batch) {
          store.readings.add(readings);
          store.readings.amend(amendments);
        }
        if (failing) {
          failing = false;
          throw new Error('disk full');
        }
        kept.push(...batch);
      }),
  });
  const send = (payload: string, { at = 0, again = false, quantity = 'temperature' } = {}) => {
    let told: string | null | undefined;
    intake.receive(
      {
        topic: `garden/p1/${quantity}`,
        payload: Buffer.from(payload),
        receivedAt: NOW + at,
        again,
      },
      (error) => {
        told = error ? error.message : null;
      },
    );
    intake.flush();
    return told;
  };
  const values = () =>
    store.readings.allBetween('p1', 'temperature', 0, Number.MAX_SAFE_INTEGER).map((r) => r.value);
  const failNext = () => {
    failing = true;
  };
  return { send, values, kept, failNext, store, intake };
}

test('a bare number that comes again within a minute counts once', () => {
  const { send, values } = intakeOver();
  expect(send('20')).toBeNull();
  expect(send('20', { at: 2000, again: true })).toBeNull();
  expect(values()).toEqual([20]);
});

test('a bare number that comes again much later, or with another value, counts', () => {
  const { send, values } = intakeOver();
  send('20');
  send('20.5', { at: 2000, again: true });
  send('20.5', { at: 90_000, again: true });
  expect(values()).toEqual([20, 20.5, 20.5]);
});

test('the same value sent twice on purpose counts twice', () => {
  const { send, values } = intakeOver();
  send('20');
  send('20', { at: 2000 });
  expect(values()).toEqual([20, 20]);
});

test('a reading with its time counts once however often it comes', () => {
  const { send, values } = intakeOver();
  for (let i = 0; i < 3; i++) send(`{"v":20,"t":${NOW - 1000}}`, { at: i * 1000, again: i > 0 });
  expect(values()).toEqual([20]);
});

test('a bare number whose commit failed is kept when it is sent again', () => {
  const { send, values, failNext } = intakeOver();
  failNext();
  expect(send('20')).toBe('disk full');
  expect(values()).toEqual([]);
  expect(send('20', { at: 3000, again: true })).toBeNull();
  expect(values()).toEqual([20]);
});

test('a jump confirmed in a commit that failed is believed when it is sent again', () => {
  const { send, store, failNext } = intakeOver();
  send(`{"v":20,"t":${NOW}}`);
  send(`{"v":35,"t":${NOW + 300_000}}`, { at: 300_000 });
  failNext();
  send(`{"v":35.2,"t":${NOW + 600_000}}`, { at: 600_000 });
  send(`{"v":35.2,"t":${NOW + 600_000}}`, { at: 603_000, again: true });
  const flags = store.readings.allBetween('p1', 'temperature', 0, NOW * 2).map((r) => r.flag);
  expect(flags).toEqual([null, null, null]);
});

test('two bare numbers in one millisecond are both kept', () => {
  const { send, values } = intakeOver();
  send('20');
  send('20.1');
  expect(values()).toEqual([20, 20.1]);
});

test('an unreadable message is acknowledged and counted, with who sent it', () => {
  const { send, kept } = intakeOver();
  expect(send('warm')).toBeNull();
  expect(kept[0]).toMatchObject({
    readings: [],
    refused: [{ source: 'p1', reason: 'not-json', t: NOW }],
  });
  expect(kept[0]?.heard.get('p1')).toBe(NOW);
});

test('a doubtful reading is kept with its flag and counted', () => {
  const { send, kept, store } = intakeOver();
  send('85');
  expect(store.readings.newest('p1', 'temperature')).toMatchObject({
    value: 85,
    flag: 'out-of-range',
  });
  expect(kept[0]?.refused).toMatchObject([{ source: 'p1', reason: 'out-of-range' }]);
});

test('readings of a file are dated by themselves', () => {
  const { intake, kept } = intakeOver();
  const t = NOW - 86_400_000;
  intake.receiveReadings([{ probe: 'p1', quantity: 'temperature', t, value: 9 }], NOW, () => {});
  intake.flush();
  expect(kept[0]?.readings[0]).toMatchObject({ t, value: 9 });
  expect(kept[0]?.heard.get('p1')).toBe(t);
});
