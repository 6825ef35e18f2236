import { lazy } from '../parts/lazy.tsx';

// Fetched when first shown: Today does without them.

export const LazyPlacesCompared = lazy<object>(
  async () => (await import('./PlacesCompared.tsx')).PlacesCompared,
);
export const LazyPlaceStands = lazy<{ place: string; crop: string | null }>(
  async () => (await import('./PlaceStands.tsx')).PlaceStands,
);
