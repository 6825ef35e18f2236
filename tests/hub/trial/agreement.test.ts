import { join } from 'node:path';
import { expect, test } from 'vitest';
import { calendarOf } from '../../../hub/clock.ts';
import type { TrialChange } from '../../../hub/contract/index.ts';
import { type Replayed, replay } from '../../../hub/main/verbs/replay.ts';
import { openPast } from '../../../hub/store/index.ts';
import { changedFarm, type WouldAsk, walkPast } from '../../../hub/trial/index.ts';
import { tempFolder } from '../tempStore.ts';
import { DAY, pastHub } from './pastHub.ts';

// A trial is short: hours, and their means. Held against the whole hub under a clock that follows
// the readings, look by look.

const KINDS = ['open-up', 'close-up', 'shade', 'cover'];
const CHANGES: readonly TrialChange[] = [
  { what: 'wet-hours', of: 'long-house', to: 8 },
  { what: 'wet-at', of: 'sun-house', to: 95 },
  { what: 'wet-below', of: 'hollow-house', to: 80 },
  { what: 'cover-value', of: 'south-patch', to: 60 },
  { what: 'chill', of: 'pea-shoots', to: 6 },
];

const PLACES = ['hollow-house', 'long-house', 'south-patch', 'sun-house'];

const ended = (steps: Iterator<unknown, ReturnType<typeof lastOf>>) => {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
};
declare function lastOf(): readonly {
  readonly place: string;
  readonly before: readonly WouldAsk[];
  readonly after: readonly WouldAsk[];
}[];

test('a trial asks on nearly all days on which the whole hub asks, under either limits', {
  timeout: 400_000,
}, async () => {
  const past = await pastHub(tempFolder(), 7, false);
  const { dayOf } = calendarOf(past.file.farm.zone);
  const from = past.from + 2 * DAY; // the first days are looked back on
  const settings = { farm: past.farm, readings: past.readings, json: true } as const;
  const file = join(past.folder, 'looked.db');
  const old = await replay(settings, file);
  const next = await replay({ ...settings, limits: past.limits(CHANGES) });
  past.fold(file);

  const reader = openPast(file);
  const places = ended(
    walkPast(reader, {
      ...{ before: past.file, after: changedFarm(past.file, CHANGES) },
      ...{ from, to: past.to },
    }),
  );
  // With every rule asked at every look it says the same: the first conditions leave nothing out.
  const yes = () => true;
  const whole = ended(
    walkPast(
      reader,
      { before: past.file, after: changedFarm(past.file, CHANGES), from, to: past.to },
      {
        ...{ 'open-up': yes, 'close-up': yes, 'leave-open': yes, shade: yes, cover: yes },
      },
    ),
  );
  expect(places).toEqual(whole);
  reader.close();
  expect(places.map(({ place }) => place).sort()).toEqual(PLACES);

  const stood = (place: string, all: Iterable<{ kind: string; from: number; to: number }>) => {
    const days = new Set<string>();
    for (const { kind, from: begins, to } of all)
      if (KINDS.includes(kind))
        for (let t = Math.max(from, begins); t < Math.max(to, begins + 1); t += DAY / 48)
          days.add(`${place} ${kind} ${dayOf(t)}`);
    return days;
  };
  const told = ({ tasks }: Replayed, place: string) => {
    const open = new Map<string, { kind: string; from: number }>();
    const all: { kind: string; from: number; to: number }[] = [];
    for (const { t, id, kind, event, place: at } of tasks) {
      if (at !== place) continue;
      if (event === 'opened') open.set(id, { kind, from: Date.parse(t) });
      const one = open.get(id);
      if (event === 'lapsed' && one) {
        all.push({ ...one, to: Date.parse(t) });
        open.delete(id);
      }
    }
    for (const one of open.values()) all.push({ ...one, to: past.to });
    return stood(
      place,
      all.filter(({ to }) => to > from),
    );
  };
  let both = 0;
  let either = 0;
  const apart: string[] = [];
  for (const { place, before, after } of places)
    for (const [hub, trial] of [
      [told(old, place), before],
      [told(next, place), after],
    ] as const) {
      const asked = stood(
        place,
        trial.map(({ kind, from: t, to }) => ({ kind, from: t, to: to ?? past.to })),
      );
      for (const day of new Set([...hub, ...asked])) {
        either += 1;
        if (hub.has(day) && asked.has(day)) both += 1;
        else apart.push(`${day} ${hub.has(day) ? 'hub only' : 'trial only'}`);
      }
    }
  expect(either).toBeGreaterThan(15);
  // 45 of 45 when this was written.
  expect(both / either, apart.join('; ')).toBeGreaterThanOrEqual(0.95);
});
