import type { SeasonPlan } from '../../simulators/seasonPlan.ts';
import type { SeasonNow, Stand } from '../../simulators/seasonWorld.ts';
import { cutOf, sownNow, type TrayCrop, trayKinds } from '../../simulators/trayCrop.ts';
import type { Books, Work } from './seasonBooks.ts';
import { MINUTES } from './seasonFarm.ts';

/** What is done with trays is written down, in the hub where there is one. */
export type Diary = {
  readonly sown: (stand: Stand) => void;
  readonly cut: (stand: Stand, kg: number) => void;
  readonly thrownOut: (stand: Stand, trays: number) => void;
  /** Carried without a task having asked. */
  readonly moved: (stand: Stand, minutes: number) => void;
};
export const noDiary: Diary = { sown() {}, cut() {}, thrownOut() {}, moved() {} };

const EVENING = 8 * 3_600_000; // ms
const SCRAPS = 0.25; // share of what shows that is overlooked when trays are thrown out; ours

/** Everything a person can do in a made-up season: each takes its minutes and is counted. */
export function makeHands(plan: SeasonPlan, now: SeasonNow, books: Books, diary: Diary) {
  const worked = (work: Work, minutes: number) => {
    books.minutes[work] += minutes;
    return minutes;
  };
  const standing = (house: string) =>
    [...now.stands.values()].reduce(
      (trays, stand) => trays + (stand.house === house ? stand.trays : 0),
      0,
    );
  const room = (house: string) => (plan.houses[house]?.capacity ?? 0) - standing(house);
  const staysOpen = new Map<string, number>();
  const sowings = new Map<string, number>();

  return {
    room,
    /** @returns the minutes it took; 0 when it stood so already */
    vents(house: string, open: boolean): number {
      if ((now.open[house] ?? false) === open) return 0;
      now.open[house] = open;
      return worked('vents', MINUTES.vents);
    },
    /** Left open tonight: nobody shuts it at dusk. @returns the minutes it took */
    leaveOpen(house: string): number {
      staysOpen.set(house, now.t + EVENING);
      return this.vents(house, true);
    },
    /** Somebody said that it stays open this evening. */
    staysOpen: (house: string) => now.t < (staysOpen.get(house) ?? 0),
    covers(patch: string, on: boolean): number {
      if ((now.covered[patch] ?? false) === on) return 0;
      now.covered[patch] = on;
      return worked('covers', on ? MINUTES.cover : MINUTES.uncover);
    },
    /** null when there is no room for it. */
    carry(stand: Stand, to: string, told: boolean): number | null {
      if (stand.house === to) return 0;
      if (room(to) < stand.trays) return null;
      stand.house = to;
      const minutes = worked('carrying', MINUTES.walk + MINUTES.perTray * stand.trays);
      if (!told) diary.moved(stand, minutes);
      return minutes;
    },
    sow(crop: TrayCrop, trays: number, houses: readonly string[]): void {
      const house = houses.find((one) => room(one) >= trays);
      if (house === undefined) return; // full: nothing is sown this time
      const stem = `${crop}-${new Date(now.t).toISOString().slice(5, 10).replace('-', '')}`;
      const turn = (sowings.get(stem) ?? 0) + 1;
      sowings.set(stem, turn);
      const stand = { id: `${stem}-${turn}`, crop, sownAt: now.t, house, trays, plant: sownNow() };
      now.stands.set(stand.id, stand);
      books.batches += 1;
      diary.sown(stand);
    },
    /** Mouldy trays go out; what is left still carries what nobody saw. */
    throwOut(stand: Stand): void {
      const kind = trayKinds[stand.crop];
      const trays = Math.min(stand.trays, Math.max(1, Math.round(stand.trays * stand.plant.shown)));
      const { kg, lost } = cutOf({ ...stand.plant, progress: 1, shown: 0 }, kind);
      books.lostKg[stand.crop].mould += trays * kg;
      books.lostKg[stand.crop].scorch += trays * lost.scorch;
      books.lostKg[stand.crop].chill += trays * lost.chill;
      stand.trays -= trays;
      stand.plant.shown *= SCRAPS;
      diary.thrownOut(stand, trays);
      if (stand.trays === 0) now.stands.delete(stand.id);
    },
    cut(stand: Stand): void {
      const { kg, lost } = cutOf(stand.plant, trayKinds[stand.crop]);
      const own = books.lostKg[stand.crop];
      books.kg[stand.crop] += stand.trays * kg;
      for (const cause of ['mould', 'scorch', 'chill'] as const)
        own[cause] += stand.trays * lost[cause];
      now.stands.delete(stand.id);
      diary.cut(stand, stand.trays * kg);
    },
  };
}
export type Hands = ReturnType<typeof makeHands>;
