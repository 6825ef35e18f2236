/** How fast something goes at a temperature that rises to one peak and is nothing outside a range. */
export type PeakedRate = {
  readonly rate: (temperature: number) => number;
  readonly peak: number;
  readonly coldest: number;
  readonly hottest: number;
};

/** The rate at a temperature, 0 outside its range. */
export const rateAt = ({ rate, coldest, hottest }: PeakedRate, temperature: number) =>
  temperature < coldest || temperature > hottest ? 0 : rate(temperature);

/** Least and most the rate can be while the temperature lies between two values. */
export function rateBounds(
  shape: PeakedRate,
  coldest: number,
  warmest: number,
): readonly [least: number, most: number] {
  if (coldest === warmest) {
    const rate = rateAt(shape, coldest);
    return [rate, rate];
  }
  // One peak, so the least is at an end, and the most at the temperature nearest the peak.
  const least = Math.min(rateAt(shape, coldest), rateAt(shape, warmest));
  const nearest = Math.min(warmest, Math.max(coldest, shape.peak));
  const inRange = Math.min(shape.hottest, Math.max(shape.coldest, nearest));
  const most = inRange >= coldest && inRange <= warmest ? shape.rate(inRange) : 0;
  return [least, Math.max(least, most)];
}
