import type { PlacesCompared } from '../../hub/contract/index.ts';
import { useAnswer } from '../parts/useAnswer.ts';

/** Places compared for a crop; the first one that stands somewhere, when none is chosen. */
export function usePlaces(crop: string | null, days: number, when: unknown = null) {
  const query = new URLSearchParams({ ...(crop === null ? {} : { crop }), days: String(days) });
  return useAnswer<PlacesCompared>(`/api/learn/places?${query}`, when);
}
