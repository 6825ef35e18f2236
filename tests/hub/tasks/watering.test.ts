import { expect, test } from 'vitest';
import { DAY, growingHub, growingText } from '../growing/growingFarm.ts';
import { HOUR } from '../smallFarm.ts';

// 10 May at 51.9° N: the sun rises before five and sets after half past eight.
const NOW = Date.UTC(2026, 4, 10, 7);
const farm = growingText().replace(
  'name: Long House, kind: tunnel',
  'name: Long House, kind: tunnel, crop: basil, trays: 20, water: { below: 22, minutes: 25 }',
);

test('soil that dries below the limit of the farm file asks for water, once a day, with its worth', () => {
  const { core, clock, measure } = growingHub({ now: NOW, farm });
  const asked = () => core.tasks.open().filter(({ kind }) => kind === 'water');
  core.look();
  expect(asked()).toEqual([]); // nobody knows: no task, and never "fine"
  const said = core.lastLook()?.outlook.decisions.find(({ kind }) => kind === 'water');
  expect(said).toMatchObject({ verdict: 'unknown', missing: ['soil-moisture-here'] });

  measure('p1', NOW - DAY, NOW, (t) => 21 + (4 * (NOW - t)) / DAY, 'soil-moisture');
  core.look();
  const [task] = asked();
  expect(task).toMatchObject({ place: 'long-house', minutes: 25, verdict: 'act', alarm: null });
  // Twenty trays of 0.35 kg at 30, and a fifth of it at risk: 42.
  expect(task?.saves.money).toBeCloseTo(42, 6);
  expect((task?.doBy ?? 0) / HOUR).toBeLessThan((NOW + 5 * HOUR) / HOUR);

  core.answer(task?.id ?? '', { answer: 'done', until: null, note: null }, 'Ann');
  clock.set(NOW + 3 * HOUR);
  measure('p1', NOW + 1, NOW + 3 * HOUR, () => 21, 'soil-moisture');
  core.snapshots.window.forget();
  core.look();
  expect(asked()).toEqual([]); // the probe lies deep: it is given its day
  measure('p1', NOW + 3 * HOUR + 1, NOW + DAY, () => 20, 'soil-moisture');
  core.snapshots.window.forget(); // written past the intake, which would have told it
  clock.set(NOW + DAY);
  core.look();
  expect(asked()).toHaveLength(1);
});
