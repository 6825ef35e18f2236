import { createLocalTime } from './localTime.ts';
import { lossSeason, type MadeLoss, type Stand } from './lossSeason.ts';
import type { Scenario } from './scenario.ts';
import { createChance } from './seed.ts';
import type { World } from './world.ts';

// The made-up grower's log of losses: entered as a person would, over HTTP. The weather of the same
// made-up world did them; what each stand bears is invented.

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const WEEKS = 15; // the log was begun so long before the story

const stands: readonly Stand[] = [
  { place: 'long-house', crop: 'basil', bears: 1, scorches: 36 },
  { place: 'sun-house', crop: 'basil', bears: 1, scorches: 36 },
  { place: 'hollow-house', crop: 'pea-shoots', bears: -3, scorches: 32 },
  { place: 'south-patch', crop: 'strawberry', bears: -2.6, scorches: 38 },
  { place: 'far-patch', crop: 'strawberry', bears: -2.6, scorches: 38 },
];
const ROUNDS = [1, 4]; // weekdays on which somebody walks round: Tuesday and Friday
const FORGOTTEN = 0.2; // weeks in which nobody opened the log

export type DemoLosses = {
  readonly losses: readonly (MadeLoss & { readonly day: string })[];
  /** Mondays of weeks at whose end somebody said what else was not lost. */
  readonly quiet: readonly string[];
};

/** Takes the world forward to the story's beginning, and tells what was logged on the way. */
export function demoLosses({ start, seed, plan }: Scenario, world: World): DemoLosses {
  const local = createLocalTime(plan.zone);
  const dayOf = (t: number) => new Date(local.day(t) * DAY).toISOString().slice(0, 10);
  const chance = createChance(seed, 'log');
  const first = local.day(start - WEEKS * 7 * DAY);
  const begin = first - ((first + 3) % 7); // a Monday
  const last = local.day(start);
  const walks: number[] = [];
  const quiet: string[] = [];
  for (let day = begin; day <= last; day++) {
    const weekday = (day + 3) % 7;
    const week = Math.floor((day - begin) / 7);
    if (chance.uniform(week) < FORGOTTEN) continue;
    if (ROUNDS.includes(weekday)) walks.push(day * DAY + 10 * HOUR);
    const monday = day - weekday;
    if (weekday === 6) quiet.push(new Date(monday * DAY).toISOString().slice(0, 10));
  }
  const losses = lossSeason(world, stands, walks, start - 60_000, seed);
  return { losses: losses.map((loss) => ({ ...loss, day: dayOf(loss.seen) })), quiet };
}

async function send(url: string, body: object): Promise<void> {
  const response = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${await response.text()}`);
  await response.arrayBuffer();
}

/** Enters the log; `page` is the hub's address without a stroke at its end. */
export async function enterDemoLosses(page: string, { losses, quiet }: DemoLosses): Promise<void> {
  for (const { place, crop, percent, look, day } of losses)
    await send(`${page}/api/losses`, { place, crop, amount: percent, unit: 'share', look, day });
  for (const week of quiet) await send(`${page}/api/losses/quiet-weeks`, { week });
}
