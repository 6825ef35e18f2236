import { probes } from '../state.ts';
import type { Description } from './description.ts';

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
    alarms: false,
    first: settled && has(description?.places) && hangs,
  };
  if (done[step]) return 'done';
  return step === 'crops' || step === 'deliveries' || step === 'alarms' ? 'optional' : 'open';
}
