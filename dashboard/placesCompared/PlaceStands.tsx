import { Fault } from '../parts/Fault.tsx';
import { words } from '../words.ts';
import { usePlaces } from './usePlaces.ts';
import './placesCompared.css';

/** What stands at one place, and how its crop does there. */
export function PlaceStands({ place, crop }: { place: string; crop: string | null }) {
  const text = words.placesCompared;
  const { answer, fault, again } = usePlaces(crop, 10);
  const here = answer?.places.find((one) => one.place === place);
  if (answer !== null && here === undefined) return null;
  const standing = answer?.standing.filter((one) => one.place === place) ?? [];
  return (
    <section class="place-stands">
      <h2>{text.standing}</h2>
      {answer === null || here === undefined ? (
        <Fault sentence={fault} again={again} />
      ) : (
        <>
          {standing.length === 0 && <p>{text.standingNone}</p>}
          {standing.map((one) => (
            <p key={one.batch ?? one.place}>{one.words}</p>
          ))}
          <h3>{text.here(answer.name)}</h3>
          {here.words.map((line) => (
            <p key={line} class="quiet">
              {line}
            </p>
          ))}
          <p>
            <a href="/places#best-place">{text.compare}</a>
          </p>
        </>
      )}
    </section>
  );
}
