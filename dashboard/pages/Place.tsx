import { now } from '../clock.ts';
import { DayTable } from '../parts/DayTable.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { LazyYear } from '../parts/LazyYear.tsx';
import { lazy } from '../parts/lazy.tsx';
import { PlaceFacts } from '../parts/PlaceFacts.tsx';
import { StandsHere } from '../parts/StandsHere.tsx';
import { useDays } from '../parts/useDays.ts';
import { Vents } from '../parts/Vents.tsx';
import { LazyPlaceStands } from '../placesCompared/lazyParts.tsx';
import type { Params } from '../router.ts';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';

const TABLE = 30; // days

const CutBack = lazy<{ place?: string }>(
  async () => (await import('../parts/CutBack.tsx')).CutBack,
);
const SeasonOdds = lazy<{ place?: string }>(
  async () => (await import('../parts/SeasonOdds.tsx')).SeasonOdds,
);

/** One place: now, the last thirty days as a table, and a year as a chart. */
export function Place({ params }: { params: Params }) {
  const id = params.id ?? '';
  const zone = farm.value?.zone;
  const place = today.value?.places.find((found) => found.id === id);
  const { days, fault, again } = useDays(id, place && zone);
  const back = (
    <p>
      <a class="back" href="/places">
        {words.places.all}
      </a>
    </p>
  );
  if (today.value === null || zone === undefined) {
    return (
      <>
        <Heading title={words.places.title} />
        <Fault sentence={faults.value.today} />
      </>
    );
  }
  if (!place) {
    return (
      <>
        {back}
        <Heading title={words.places.unknownPlace} />
      </>
    );
  }
  return (
    <>
      {back}
      <Heading title={place.name} />
      <PlaceFacts place={place} zone={zone} />
      <Vents place={place} zone={zone} now={now.value ?? Date.parse(place.asOf)} />
      <StandsHere place={place} />
      {place.kind === 'tunnel' && <LazyPlaceStands place={place.id} crop={place.crop ?? null} />}
      {place.kind === 'patch' && place.crop === 'strawberry' && (
        <CutBack key={`clear ${place.id}`} place={place.id} />
      )}
      {(place.kind === 'patch' || place.kind === 'outdoor') && (
        <SeasonOdds key={`odds ${place.id}`} place={place.id} />
      )}
      <section>
        <h2>{words.places.year}</h2>
        {days ? <LazyYear days={days} /> : <Fault sentence={fault} again={again} />}
      </section>
      <section>
        <h2>{words.places.days}</h2>
        {days ? (
          <DayTable days={days.slice(-TABLE).reverse()} />
        ) : (
          <Fault sentence={fault} again={again} />
        )}
      </section>
    </>
  );
}
