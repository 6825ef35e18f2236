import { steppedClock } from '../../hub/clock.ts';
import { type Core, joinCore } from '../../hub/main/core.ts';
import { importFarm } from '../../hub/main/farm/farmKept.ts';
import { openStore } from '../../hub/store/index.ts';
import type { Quantity } from '../../simulators/reading.ts';
import type { SeasonPlan } from '../../simulators/seasonPlan.ts';
import type { SeasonNow } from '../../simulators/seasonWorld.ts';
import { createChance } from '../../simulators/seed.ts';
import { quiet } from './faultBase.ts';
import { farmText } from './seasonFarm.ts';
import { inFlower } from './seasonHabit.ts';
import type { Diary } from './seasonHands.ts';

// The whole hub of a made-up season, under a stepped clock: it is fed with what noisy probes say,
// and with what the grower writes down; it sees nothing of the truth.

const QUARTER = 900_000; // ms
const NOISE = { temperature: [0.15, 0.1], humidity: [1.5, 0.5] } as const;
const LOST = 0.01; // share of reports that never arrive

/** The hub of a season, in a store of its own in memory. */
export function makeSeasonHub(plan: SeasonPlan, now: SeasonNow, file: string) {
  const store = openStore(file);
  const clock = steppedClock(plan.from);
  let told = inFlower(plan, plan.from);
  importFarm(store, farmText(plan, told), plan.from);
  const core: Core = joinCore({ store, clock, log: quiet });
  const noise = createChance(plan.seed, 'noise of the probes');
  const offsets = createChance(plan.seed, 'offsets of the probes');
  let draws = 0;

  function* readings() {
    const names = Object.keys(plan.houses);
    const sensed: [string, number, number][] = [
      ['mast', now.weather.temperature, now.weather.humidity],
      ...names.map((id): [string, number, number] => {
        const { temperature = 0, humidity = 0 } = now.tunnels[id] ?? {};
        return [`${id}-canopy`, temperature, humidity];
      }),
      ...Object.entries(now.patches).flatMap(([id, patch]): [string, number, number][] => [
        [`${id}-flower`, patch.flower, patch.humidity],
        [`${id}-under`, patch.underCover, patch.underCoverHumidity],
      ]),
    ];
    for (const [i, [probe, temperature, humidity]] of sensed.entries()) {
      if (noise.uniform(draws++) < LOST) continue;
      for (const [quantity, truth, most] of [
        ['temperature', temperature + 0.2 * offsets.normal(i), 60],
        ['humidity', humidity + 1.5 * offsets.normal(100 + i), 100],
      ] as const satisfies readonly [Quantity, number, number][]) {
        const [spread, step] = NOISE[quantity];
        const value = Math.round((truth + spread * noise.normal(draws++)) / step) * step;
        yield { probe, quantity, t: now.t, value: Number(Math.min(most, value).toFixed(2)) };
      }
    }
  }

  const diary: Diary = {
    sown({ id, crop, trays, house: place, sownAt }) {
      const facts = { crop, trays, place, sownAt, variety: null, seedCost: null, otherCost: null };
      const event = { event: 'sown', facts: { ...facts, meantFor: null }, partOf: null } as const;
      core.batches.add(id, place, event, 'grower', now.t);
    },
    cut({ id, house, trays }, kg) {
      const cut = { at: now.t, kg: Math.max(0.01, Number(kg.toFixed(2))), trays, clears: true };
      const untold = { minutes: null, price: null, lostKg: null, note: null };
      const event = { event: 'cut', stage: 'later', ...cut, ...untold } as const;
      core.batches.add(id, house, event, 'grower', now.t);
    },
    thrownOut({ id, house }, trays) {
      const event = { event: 'thrown-out', trays, at: now.t, look: 'mould', note: null } as const;
      core.batches.add(id, house, event, 'grower', now.t);
    },
    moved({ id, house: place }, minutes) {
      const event = { event: 'moved', place, at: now.t, minutes } as const;
      core.batches.add(id, place, event, 'grower', now.t);
    },
  };

  return {
    core,
    diary,
    /** Readings of this step, if any are due; the farm's description is changed when flowers come and go. */
    hear(): void {
      clock.set(now.t);
      if (now.t % QUARTER !== 0) return;
      core.intake.receiveReadings([...readings()], now.t, (error) => {
        if (error) throw error;
      });
      core.intake.flush();
      const flowers = inFlower(plan, now.t);
      if (flowers === told) return;
      told = flowers;
      importFarm(store, farmText(plan, told), now.t);
    },
    look() {
      core.look();
      const looked = core.lastLook();
      if (!looked || looked.failure) throw new Error(`Expected a look, got ${looked?.failure}`);
      return looked.open;
    },
    close: () => core.close(),
  };
}
export type SeasonHub = ReturnType<typeof makeSeasonHub>;
