import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { lazy } from '../parts/lazy.tsx';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';

const FrostNight = lazy<{ zone: string }>(
  async () => (await import('../parts/FrostNight.tsx')).FrostNight,
);
const SeasonOdds = lazy<{ place?: string }>(
  async () => (await import('../parts/SeasonOdds.tsx')).SeasonOdds,
);
const CutBack = lazy<{ place?: string }>(
  async () => (await import('../parts/CutBack.tsx')).CutBack,
);
const Scores = lazy<{ night: string }>(async () => (await import('../parts/Scores.tsx')).Scores);

/** Tonight, the season ahead, when to clear a patch, and how good the forecasts have been. */
export function Frost() {
  const zone = farm.value?.zone;
  const night = today.value?.frost[0]?.night ?? '';
  return (
    <>
      <Heading title={words.frost.title} />
      {zone === undefined ? (
        <Fault sentence={faults.value.today} />
      ) : (
        <>
          <section>
            <h2>{words.frost.tonight}</h2>
            <FrostNight zone={zone} />
          </section>
          <SeasonOdds />
          <CutBack />
          <section>
            <h2>{words.frost.scores}</h2>
            <Scores night={night} />
          </section>
        </>
      )}
    </>
  );
}
