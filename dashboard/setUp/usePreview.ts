import { useEffect, useRef, useState } from 'preact/hooks';
import type { FarmPreview } from '../../hub/contract/index.ts';
import { type Draft, described, previewFarm } from './description.ts';

const SETTLE = 400; // ms without a keystroke; ours

/** What the hub says a description would change; null while nothing is tried or it has not answered. */
export function usePreview(next: Draft | null): FarmPreview | null {
  const [seen, setSeen] = useState<FarmPreview | null>(null);
  const newest = useRef('');
  const asked = next === null ? '' : JSON.stringify(next);
  newest.current = asked;
  const version = described.value?.version;
  useEffect(() => {
    if (asked === '') return setSeen(null);
    const timer = setTimeout(() => {
      previewFarm(JSON.parse(asked)).then(
        (found) => newest.current === asked && setSeen(found),
        () => {}, // storing it says what is wrong
      );
    }, SETTLE);
    return () => clearTimeout(timer);
  }, [asked, version]);
  return asked === '' ? null : seen;
}
