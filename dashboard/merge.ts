import type { EventData, PlaceNow, Probe, Spot, Task } from '../hub/contract/index.ts';

// How one thing the hub says changes lists it said before.

/** The list with that task in its place; an ended one leaves a list of open tasks. */
export function withOpenTask(tasks: readonly Task[], task: Task): Task[] {
  if (task.state === 'ended') return tasks.filter(({ id }) => id !== task.id);
  const known = tasks.some(({ id }) => id === task.id);
  // The hub ranks; until it is asked again a new one stands last, an alarm first.
  if (!known) return task.alarm ? [task, ...tasks] : [...tasks, task];
  return tasks.map((old) => (old.id === task.id ? task : old));
}

/** Whatever its saving, an alarm comes before all that can wait; else the hub's order stays. */
export const alarmsFirst = (tasks: readonly Task[]): Task[] => [
  ...tasks.filter(({ alarm }) => alarm),
  ...tasks.filter(({ alarm }) => !alarm),
];

/** Ended tasks, the latest first; a task opened again leaves the list. */
export function withEndedTask(tasks: readonly Task[], task: Task): Task[] {
  const others = tasks.filter(({ id }) => id !== task.id);
  return task.state === 'ended' ? [task, ...others] : others;
}

const speaking: readonly Spot[] = ['canopy', 'air'];

/** The spot whose readings speak for the place: canopy, else air, else the first there is. */
export function speakingSpot({ spots }: Pick<PlaceNow, 'spots'>): Spot | null {
  const there = spots.map(({ spot }) => spot);
  return speaking.find((spot) => there.includes(spot)) ?? there[0] ?? null;
}

/** A newer temperature or humidity shown at once; what follows from it waits for the hub's next look. */
export function withReading(
  places: readonly PlaceNow[],
  { place, probe, quantity, t, value }: EventData['reading'],
): PlaceNow[] {
  if (quantity !== 'temperature' && quantity !== 'humidity') return [...places];
  const news = { [quantity]: value, readAt: t, stale: false };
  return places.map((old) => {
    if (old.id !== place) return old;
    const spots = old.spots.map((at) => (at.probe === probe ? { ...at, ...news } : at));
    // Of two probes at the spot that speaks for the place, the first does.
    const speaks = old.spots.find((at) => at.spot === speakingSpot(old))?.probe === probe;
    return speaks ? { ...old, ...news, spots } : { ...old, spots };
  });
}

/** The list with that probe as it is now; a new one stands last. */
export const withProbe = (probes: readonly Probe[], probe: Probe): Probe[] =>
  probes.some(({ id }) => id === probe.id)
    ? probes.map((old) => (old.id === probe.id ? probe : old))
    : [...probes, probe];

/** A newer value of a probe that is known, shown at once; a quantity it never sent waits for the hub. */
export const withProbeReading = (
  probes: readonly Probe[],
  { probe, quantity, t, value }: EventData['reading'],
): Probe[] =>
  probes.map((old) => {
    if (old.id !== probe) return old;
    const latest = old.latest.map((one) =>
      one.quantity === quantity && one.readAt <= t ? { ...one, value, readAt: t, flag: null } : one,
    );
    const later = old.heardAt === null || old.heardAt < t;
    return { ...old, latest, heardAt: later ? t : old.heardAt };
  });
