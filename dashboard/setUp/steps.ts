import { alarmsNow } from '../alarmState.ts';
import { probes } from '../state.ts';
import type { Description } from './description.ts';

// The steps in their order. Units are a page of their own making: `UnitsStep.tsx` is its slot.

export const STEPS = [
  'name',
  'position',
  'units',
  'places',
  'crops',
  'deliveries',
  'probes',
  'alarms',
  'first',
] as const;
export type Step = (typeof STEPS)[number];
export type StepState = 'done' | 'open' | 'optional';

/** Without these nothing is decided, or nobody knows what of. */
const NEEDED: readonly Step[] = ['name', 'position', 'places', 'probes', 'first'];

/** How far each step is, by what the hub has. */
export function stateOf(step: Step, { description, settled }: Description): StepState {
  const has = (list: readonly unknown[] | undefined) => (list?.length ?? 0) > 0;
  const hangs = probes.value?.some(({ place }) => place !== null) ?? false;
  const done: Readonly<Record<Step, boolean>> = {
    name: description !== null,
    position: settled,
    units: true,
    places: has(description?.places),
    crops: has(description?.crops),
    deliveries: has(description?.deliveries),
    probes: hangs,
    alarms: alarmsNow.value?.anybody ?? false,
    first: settled && has(description?.places) && hangs,
  };
  if (done[step]) return 'done';
  return NEEDED.includes(step) ? 'open' : 'optional';
}
