// What it costs to say of a year's batches when they are ready: asked for the first time, when nothing
// is counted yet, and again, as each open page does.

import { trialFarm } from '../hub/growing/seasons/trialFarm.ts';
import { figure, timed } from './report.ts';

const DAY = 86_400_000;
const BATCHES = 200;

export async function growingBench() {
  const from = Date.UTC(2023, 0, 1);
  const to = from + 365 * DAY;
  const plan = { seed: 5, stationYears: 12, light: false, looks: 1 };
  const farm = trialFarm(plan, from, to);
  const { core, clock } = farm;
  clock.set(to - 100 * DAY);
  for (let i = 0; i < BATCHES; i++) {
    const sownAt = from + (30 + i) * DAY;
    const place = i % 2 === 0 ? 'long-house' : 'sun-house';
    const facts = { crop: 'lettuce', variety: null, trays: 4, sownAt, place };
    const more = { seedCost: null, otherCost: null, meantFor: null };
    const id = `lettuce-${i}`;
    core.batches.add(
      id,
      null,
      { event: 'sown', facts: { ...facts, ...more }, partOf: null },
      'x',
      to,
    );
    const at = sownAt + 40 * DAY;
    if (at > clock.now()) continue;
    const noted = { event: 'noted', at, look: 'ready', note: null, photo: null } as const;
    core.batches.add(id, null, noted, 'x', to);
    if (i < BATCHES - 40) core.batches.add(id, null, { event: 'cleared', at, note: null }, 'x', to);
  }
  const ask = () => {
    for (const batch of core.batches.all())
      if (batch.state === 'growing') core.growing.ready(batch, clock.now());
  };
  figure('growing-200-batches-first', timed(ask), 'ms');
  figure('growing-200-batches-again', timed(ask), 'ms');
  clock.set(clock.now() + DAY);
  figure('growing-200-batches-next-day', timed(ask), 'ms');
  farm.close();
}
