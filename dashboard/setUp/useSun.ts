import { useEffect, useState } from 'preact/hooks';
import type { SunToday } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import type { Point } from './Globe.tsx';

const SETTLE = 300; // ms; ours: a point that is dragged asks once it rests

/** Today's sun at a point; null while nobody has said. */
export function useSun(point: Point | null): SunToday | null {
  const [sun, setSun] = useState<SunToday | null>(null);
  const lat = point?.lat;
  const lon = point?.lon;
  useEffect(() => {
    setSun(null);
    if (lat === undefined || lon === undefined) return;
    if (Math.abs(lat) > 90 || Math.abs(lon) > 180) return; // the preview says so
    let wanted = true;
    const timer = setTimeout(() => {
      ask<SunToday>(`/api/sun?lat=${lat}&lon=${lon}`).then(
        (found) => wanted && setSun(found),
        () => {},
      );
    }, SETTLE);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [lat, lon]);
  return sun;
}
