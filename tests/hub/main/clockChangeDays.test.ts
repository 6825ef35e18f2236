import { expect, test } from 'vitest';
import { farmText, HOUR, MINUTE, smallHub } from '../smallFarm.ts';

// Days on which a zone's clocks change. Source: IANA time zone database, the rules in force in 2026,
// through this machine's copy of it only for where a day begins; the hours of each day are the rules'.
test.for([
  ['Europe/Dublin', '2026-03-29', 23],
  ['Europe/Dublin', '2026-10-25', 25],
  ['America/New_York', '2026-03-08', 23],
  ['America/New_York', '2026-11-01', 25],
  ['America/St_Johns', '2026-03-08', 23],
  ['America/St_Johns', '2026-11-01', 25],
  ['Pacific/Auckland', '2026-04-05', 25],
  ['Pacific/Auckland', '2026-09-27', 23],
  ['Australia/Adelaide', '2026-04-05', 25],
  ['Australia/Adelaide', '2026-10-04', 23],
  ['Australia/Lord_Howe', '2026-04-05', 24.5],
  ['Australia/Lord_Howe', '2026-10-04', 23.5],
  ['Asia/Kolkata', '2026-03-29', 24],
] as const)(
  'in %s the day %s of %d hours has all its readings, once, and every look goes well',
  { timeout: 60_000 },
  ([zone, day, hours]) => {
    const farm = farmText({ zone });
    const start = Date.parse(`${day}T00:00:00Z`) - 36 * HOUR;
    const hub = smallHub({ now: start, farm });
    const calendar = hub.core.calendar();
    for (let t = start; t < start + 84 * HOUR; t += 5 * MINUTE) {
      hub.clock.set(t);
      const wave = Math.sin(((t % (24 * HOUR)) / (24 * HOUR)) * 2 * Math.PI);
      const pack = [
        { n: 'temperature', v: Math.round(160 + 30 * wave) / 10, t: t / 1000 },
        { n: 'humidity', v: Math.round(70 - 10 * wave) },
      ];
      const payload = Buffer.from(JSON.stringify(pack));
      for (const topic of ['garden/p1', 'garden/mast'])
        hub.core.receive({ topic, payload, again: false, from: null }, () => {});
      if (t % (30 * MINUTE) === 0) {
        hub.core.flush();
        hub.core.look();
        expect(hub.core.lastLook()?.failure).toBeNull();
      }
    }
    hub.core.flush();
    hub.core.snapshots.fold();
    const { begins, ends } = calendar.bounds(day);
    expect((ends - begins) / HOUR).toBe(hours);
    const id = hub.store.readings.idOf('p1', 'temperature') ?? 0;
    expect(hub.store.rollups.days(id, begins, ends)).toMatchObject([{ t: begins, n: hours * 12 }]);
    const [facts] = hub.core.snapshots.days.between('long-house', day, day, hub.clock.now());
    expect(facts?.unknownHours ?? Number.NaN).toBeLessThan(0.2);
    // A forecast is issued once for a night, whichever way its hours are counted.
    const issued = hub.store.forecasts
      .between('2026-01-01', '2026-12-31')
      .map((body) => JSON.parse(body))
      .map(({ place, spot, night, method }) => `${place} ${spot} ${night} ${method}`);
    expect(new Set(issued).size).toBe(issued.length);
    const keys = hub.core.tasks.open().map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  },
);
