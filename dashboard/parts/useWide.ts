import { useEffect, useState } from 'preact/hooks';

/** Where the menu has one row for all pages; frame.css has the same. */
const WIDE = '(min-width: 44rem)';

/** Whether the window is wide enough for the whole menu; follows its size. */
export function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia(WIDE).matches);
  useEffect(() => {
    const media = matchMedia(WIDE);
    const follow = () => setWide(media.matches);
    media.addEventListener('change', follow);
    return () => media.removeEventListener('change', follow);
  }, []);
  return wide;
}
