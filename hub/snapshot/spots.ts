import type { Placement, Point, Store } from '../store/index.ts';

/** Which spot speaks for a place when only one can: at the crop first. */
export const SPOT_ORDER = ['canopy', 'air', 'under-cover', 'grass', 'product', 'unit'] as const;

/** Where probes hung, kept at hand; read again when somebody moves one. */
export function makeSpots(store: Store) {
  let placements = store.probes.placements();

  /** Placements at a place (and spot) that overlap a stretch of time, oldest first. */
  const overlapping = (place: string, spot: string | null, from: number, to: number): Placement[] =>
    placements
      .filter(
        (p) =>
          p.place === place &&
          (spot === null || p.spot === spot) &&
          p.from < to &&
          (p.to === null || p.to > from),
      )
      .sort((a, b) => a.from - b.from);

  return {
    refresh() {
      placements = store.probes.placements();
    },
    all: () => placements,
    /** Where each probe hangs now. */
    current: () => placements.filter(({ to }) => to === null),
    currentOf: (probe: string) => placements.find((p) => p.probe === probe && p.to === null),
    overlapping,
    /** Places where a probe hung during a stretch of time. */
    placesOf: (probe: string, from: number, to: number) =>
      new Set(
        placements
          .filter((p) => p.probe === probe && p.from < to && (p.to === null || p.to > from))
          .map(({ place }) => place),
      ),
    /** Good readings of a spot, whichever probe hung there when. */
    points(place: string, spot: string, quantity: string, from: number, to: number): Point[] {
      const parts = overlapping(place, spot, from, to).map((p) =>
        store.readings.between(
          p.probe,
          quantity,
          Math.max(from, p.from),
          Math.min(to, p.to ?? Number.POSITIVE_INFINITY),
        ),
      );
      if (parts.length === 1) return parts[0] ?? [];
      return parts.flat().sort((a, b) => a.t - b.t);
    },
    /** Spots of a place in the order in which they speak for it. */
    ordered(place: string, from: number, to: number): string[] {
      const here = new Set(overlapping(place, null, from, to).map(({ spot }) => spot));
      return SPOT_ORDER.filter((spot) => here.has(spot));
    },
  };
}
export type Spots = ReturnType<typeof makeSpots>;

/** Temperature and humidity that belong together: each temperature with the nearest humidity. */
export function pair(
  temperature: { readonly t: readonly number[]; readonly value: readonly number[] },
  humidity: { readonly t: readonly number[]; readonly value: readonly number[] },
  within: number,
): { t: number; temperature: number; humidity: number | null }[] {
  const out = new Array<{ t: number; temperature: number; humidity: number | null }>(
    temperature.t.length,
  );
  let j = 0;
  for (let i = 0; i < temperature.t.length; i++) {
    const t = temperature.t[i] ?? 0;
    while (
      j + 1 < humidity.t.length &&
      Math.abs((humidity.t[j + 1] ?? 0) - t) <= Math.abs((humidity.t[j] ?? 0) - t)
    )
      j++;
    const near = humidity.t[j];
    const value =
      near !== undefined && Math.abs(near - t) <= within ? humidity.value[j] : undefined;
    out[i] = { t, temperature: temperature.value[i] ?? 0, humidity: value ?? null };
  }
  return out;
}

/** Rows as columns. */
export const columnsOf = (points: readonly Point[]) => ({
  t: points.map(({ t }) => t),
  value: points.map(({ value }) => value),
});
