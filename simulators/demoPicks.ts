import { type Bed, type Picked, pickings } from './fruit.ts';
import { type Scenario, scenario } from './scenario.ts';

// What was picked on the demonstration farm before its story begins: entered as a person would, over
// HTTP. Beds, weights and minutes are invented.

const DAY = 86_400_000;
const at = (day: string) => Date.parse(`${day}T00:00:00Z`);
const hump = (day: number, middle: number, width: number) =>
  Math.exp(-(((day - middle) / width) ** 2) / 2);

const strawberries: Omit<Bed, 'sets' | 'walk' | 'every'> = {
  ...{ base: 3, ripensIn: 330, warmer: 0.5, spoils: [0.02, 0.09], speed: 13, half: 4 },
};

type Plot = {
  readonly place: string;
  readonly crop: string;
  readonly bed: Bed;
  readonly from: string;
  readonly picksFrom: string;
  readonly to: string;
};

const plots: readonly Plot[] = [
  {
    ...{ place: 'south-patch', crop: 'strawberry', from: '2025-04-01' },
    ...{ picksFrom: '2025-06-02', to: '2025-10-31' },
    bed: {
      ...strawberries,
      sets: (day) => 2.6 * hump(day, 138, 11) + 1.5 * hump(day, 215, 26),
      ...{ walk: 12, every: [3, 4] },
    },
  },
  {
    ...{ place: 'far-patch', crop: 'strawberry', from: '2025-04-01' },
    ...{ picksFrom: '2025-06-12', to: '2025-09-30' },
    bed: {
      ...strawberries,
      sets: (day) => 0.8 * hump(day, 142, 10) + 0.25 * hump(day, 215, 20),
      ...{ walk: 25, every: [7, 7, 6] },
    },
  },
  // A border of overwintered leaves along the wall of the Sun House, which runs to seed in April.
  {
    ...{ place: 'sun-house', crop: 'salad-leaves', from: '2026-01-10' },
    ...{ picksFrom: '2026-02-24', to: '2026-04-22' },
    bed: {
      sets: (day) => 0.9 * hump(day, 62, 24),
      ...{ base: 3, ripensIn: 60, warmer: 4, spoils: [0.02, 0.04], speed: 9, half: 3 },
      ...{ walk: 4, every: [5, 5, 4] },
    },
  },
];

/** Now and then somebody forgets to write something down: then it is not known. */
const told = ({ at: t, kg, lostKg, minutes }: Picked, { bed }: Plot, index: number) => ({
  ...{ at: new Date(t).toISOString(), kg: Number(kg.toFixed(1)) },
  lostKg: index % 9 === 5 ? null : Number(lostKg.toFixed(1)),
  ...(index % 8 === 3 ? { minutes: null } : { minutes, walkMinutes: Math.min(minutes, bed.walk) }),
});

/** All pickings as they are sent, the oldest first. */
export function demoPicks(of: Scenario) {
  return plots
    .flatMap((plot) =>
      pickings(of, plot.bed, plot.place, {
        ...{ from: at(plot.from), picksFrom: at(plot.picksFrom) },
        to: Math.min(at(plot.to) + DAY, of.start - DAY),
      }).map((one, index) => ({ place: plot.place, crop: plot.crop, ...told(one, plot, index) })),
    )
    .sort((a, b) => (a.at < b.at ? -1 : 1));
}

/** Enters the pickings; `page` is the hub's address without a stroke at its end. */
export async function enterDemoPicks(page: string): Promise<void> {
  for (const pick of demoPicks(scenario)) {
    const response = await fetch(`${page}/api/picks`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(pick),
    });
    if (!response.ok)
      throw new Error(`/api/picks answered ${response.status}: ${await response.text()}`);
  }
}
