import './photos.css';
import { useState } from 'preact/hooks';
import { words } from '../words.ts';

/** A photo that the hub keeps, or a sentence where it has it no more. */
export function Photo({ src, of }: { src: string; of: string }) {
  const [broken, setBroken] = useState(false);
  if (broken) return <p class="quiet">{words.photos.gone}</p>;
  return (
    <img
      class="kept-photo"
      src={src}
      alt={words.photos.of(of)}
      loading="lazy"
      onError={() => setBroken(true)}
    />
  );
}
