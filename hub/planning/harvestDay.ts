/**
 * When a batch is cut for a delivery, in days from today: the day before, so that it is cold when it
 * leaves; on the day itself where it is ready only then. Never before today.
 *
 * @param ready days from today when it is expected to be ready; null where nobody can say
 */
export const harvestDay = (delivery: number, ready: number | null): number =>
  Math.max(0, Math.min(delivery, Math.max(delivery - 1, ready ?? 0)));
