/**
 * A bucket that fills with time: what is taken faster than it fills has to wait. By monotonic time,
 * so that a jump of the clock neither opens nor shuts it.
 *
 * @param perSecond how fast it fills.
 * @param most how much it holds.
 */
export function allowance(perSecond: number, most: number, now = () => performance.now()) {
  let left = most;
  let at = now();
  return {
    /** Takes `cost`, or tells after how many ms it may be asked again (then nothing is taken). */
    take(cost: number): number {
      const t = now();
      left = Math.min(most, left + ((t - at) * perSecond) / 1000);
      at = t;
      // What costs more than it ever holds goes through when it is full, and is paid off afterwards.
      if (left >= Math.min(cost, most)) {
        left -= cost;
        return 0;
      }
      return Math.max(1, Math.ceil(((Math.min(cost, most) - left) * 1000) / perSecond));
    },
    full: () => left + ((now() - at) * perSecond) / 1000 >= most,
  };
}
