import { expect, test } from 'vitest';
import { createWorld, demoLosses, scenario } from '../../simulators/index.ts';

const made = () => demoLosses(scenario, createWorld(scenario.plan, scenario.seed));

test('the made-up log is the same each time, and follows from the made-up weather', {
  timeout: 120_000,
}, () => {
  const log = made();
  expect(made()).toEqual(log);
  expect(log.losses.length).toBeGreaterThan(20);
  for (const { percent, day, seen } of log.losses) {
    expect(percent).toBeGreaterThan(0);
    expect(percent).toBeLessThanOrEqual(100);
    expect(day < '2026-04-24' && seen < scenario.start).toBe(true);
  }
  const frosted = log.losses.filter(({ look }) => look === 'frosted');
  // The story has clear cold spells in February, March and April; flowers freeze in their weeks.
  expect(frosted.length).toBeGreaterThan(0);
  for (const { day } of frosted)
    expect(day, 'frost in a cold spell').toMatch(/^2026-0(?:1|2-1|2-2|3-1|4-)/);
  // The house that lacks air loses more to mould than the airy one.
  const sum = (place: string) =>
    log.losses
      .filter((one) => one.place === place && ['stem-rot', 'grey-mould'].includes(one.look))
      .reduce((all, { percent }) => all + percent, 0);
  expect(sum('hollow-house')).toBeGreaterThan(1.2 * sum('long-house'));
});
