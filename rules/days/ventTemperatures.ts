/** At which temperatures a crop under cover wants air, °C. */
export type VentTemperatures = {
  readonly optimum: readonly [number, number];
  readonly start: number;
  readonly limit: number;
  readonly source: string;
};

const JETT = 'Jett 2010, High Tunnel Temperature Management, West Virginia Univ. (from °F)';
const PRACTICE = 'common practice, no source';

/** By kind of crop. */
export const ventTemperatures = Object.freeze({
  'leafy-greens': { optimum: [16, 18], start: 13, limit: 24, source: JETT },
  strawberry: { optimum: [18, 24], start: 16, limit: 24, source: JETT },
  eggplant: { optimum: [21, 29], start: 27, limit: 35, source: JETT },
  tomato: { optimum: [21, 24], start: 18, limit: 29, source: JETT },
  cucurbits: { optimum: [21, 29], start: 27, limit: 32, source: JETT },
  basil: { optimum: [21, 29], start: 27, limit: 33, source: PRACTICE },
  shoots: { optimum: [15, 20], start: 20, limit: 26, source: PRACTICE },
} as const satisfies Readonly<Record<string, VentTemperatures>>);

export type VentCrop = keyof typeof ventTemperatures;

/** The crop a mixed house is vented for: the earliest to want air of those that can not be moved. */
export function cropToVentFor(
  crops: readonly { readonly crop: VentCrop; readonly movable: boolean }[],
): VentCrop | null {
  const fixed = crops.filter(({ movable }) => !movable).map(({ crop }) => crop);
  return fixed.reduce<VentCrop | null>((first, crop) => {
    if (first === null) return crop;
    const [a, b] = [ventTemperatures[crop], ventTemperatures[first]];
    return a.start < b.start || (a.start === b.start && a.limit < b.limit) ? crop : first;
  }, null);
}
