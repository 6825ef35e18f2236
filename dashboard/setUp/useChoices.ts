import { signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { FarmChoices } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';

const NONE: FarmChoices = { diseases: [], stages: {}, keepsLike: [] };
const choices = signal<FarmChoices | null>(null);

/** The names that the rules know; empty lists until the hub has told them. */
export function useChoices(): FarmChoices {
  useEffect(() => {
    if (choices.peek() !== null) return;
    ask<FarmChoices>('/api/farm/choices').then(
      (found) => {
        choices.value = found;
      },
      () => {}, // its few fields offer nothing until the page is opened again
    );
  }, []);
  return choices.value ?? NONE;
}
