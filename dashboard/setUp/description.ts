import { signal } from '@preact/signals';
import type {
  FarmBegun,
  FarmChange,
  FarmChanged,
  FarmDescription,
  FarmFacts,
  FarmPreview,
  ProbeSecret,
} from '../../hub/contract/index.ts';
import { ask, askNow, Refusal } from '../ask.ts';
import { refresh } from '../live.ts';
import { heedReading } from '../reading.ts';
import { farm } from '../state.ts';

/** As a page sends it: what somebody typed, right or wrong. */
export type Draft = Record<string, unknown>;
export type Description = {
  readonly version: string;
  readonly settled: boolean;
  readonly description: FarmBegun | null;
};

/** The farm as the hub has it; null until it has answered. */
export const described = signal<Description | null>(null);
export const describedFault = signal<string | undefined>(undefined);
/** What the hub did last, and the address at which it is said. */
export const stored = signal<{ readonly at: string; readonly said: string } | null>(null);
export const changes = signal<readonly FarmChange[]>([]);

/**
 * Asks the hub itself, also while its events are lost: who changes the farm must see what it is now.
 * Only where no answer comes, what was known before.
 */
async function newest<Shape>(path: string): Promise<Shape> {
  try {
    return await askNow<Shape>(path);
  } catch (error) {
    if (error instanceof Refusal && error.status === null) return ask<Shape>(path);
    throw error;
  }
}

export async function refreshDescription(): Promise<void> {
  try {
    described.value = (await newest<FarmDescription>('/api/farm/description')) as Description;
    changes.value = await newest<FarmChange[]>('/api/farm/changes');
    describedFault.value = undefined;
  } catch (error) {
    describedFault.value = error instanceof Error ? error.message : String(error);
  }
}

async function taken(): Promise<void> {
  await refreshDescription();
  farm.value = heedReading(await newest<FarmFacts>('/api/farm'));
  if (farm.value.settled) await refresh();
}

/** @throws Refusal with a sentence for the screen; of status 409 when somebody was quicker. */
export async function changeFarm(based: string, description: Draft): Promise<void> {
  await ask<FarmChanged>('/api/farm', { based, description });
  await taken();
}

/** @throws Refusal with a sentence for the screen */
export async function undoChange(id: number, based: string): Promise<void> {
  await ask<FarmChanged>(`/api/farm/changes/${id}/undo`, { based });
  await taken();
}

export const previewFarm = (description: Draft) =>
  ask<FarmPreview>('/api/farm/preview', { description });

/** @throws Refusal with a sentence for the screen */
export const probePassword = (id: string) =>
  ask<ProbeSecret>(`/api/probes/${encodeURIComponent(id)}/password`, {});
