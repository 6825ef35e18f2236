/** The rank of each value from 1, equal values sharing the middle of their ranks. */
export function ranks(values: readonly number[]): number[] {
  const order = values.map((value, index) => ({ value, index }));
  order.sort((a, b) => a.value - b.value);
  const result = new Array<number>(values.length);
  let first = 0;
  while (first < order.length) {
    const value = order[first]?.value;
    let last = first;
    while (order[last + 1]?.value === value && last + 1 < order.length) last += 1;
    const shared = (first + last) / 2 + 1;
    for (const { index } of order.slice(first, last + 1)) result[index] = shared;
    first = last + 1;
  }
  return result;
}
