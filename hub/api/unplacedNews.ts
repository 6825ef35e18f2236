/** Looking where a probe seems to hang reads a day of all others: once in so many ms. Ours. */
const BETWEEN = 1000;

/** Tells of probes that hang nowhere yet, each at most once in a while, however often it speaks. */
export function unplacedNews(tell: (probe: string) => void) {
  const spoken = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  const say = () => {
    const all = [...spoken];
    spoken.clear();
    timer = undefined;
    for (const probe of all)
      try {
        tell(probe);
      } catch {
        // A store that cannot be read is told of elsewhere; the page asks again when it is back.
      }
  };
  return {
    spoke(probe: string) {
      spoken.add(probe);
      timer ??= setTimeout(say, BETWEEN);
    },
    stop: () => clearTimeout(timer),
  };
}
