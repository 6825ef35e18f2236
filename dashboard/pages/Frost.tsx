import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { farm, faults, today } from '../state.ts';
import { words } from '../words.ts';

type Parts = {
  readonly CutBack: ComponentType<{ place?: string }>;
  readonly SeasonOdds: ComponentType<{ place?: string }>;
  readonly FrostNight: ComponentType<{ zone: string }>;
  readonly Scores: ComponentType<{ night: string }>;
};

/** Tonight, the season ahead, and how good the forecasts have been. */
export function Frost() {
  const zone = farm.value?.zone;
  const [parts, setParts] = useState<Parts | null>(null);
  const [fault, setFault] = useState<string | undefined>();
  const [tries, setTries] = useState(0);
  // Fetched when first looked at: Today does without these drawings.
  useEffect(() => {
    let wanted = true;
    Promise.all([
      import('../parts/FrostNight.tsx'),
      import('../parts/Scores.tsx'),
      import('../parts/SeasonOdds.tsx'),
      import('../parts/CutBack.tsx'),
    ]).then(
      ([{ FrostNight }, { Scores }, { SeasonOdds }, { CutBack }]) =>
        wanted && setParts({ FrostNight, Scores, SeasonOdds, CutBack }),
      () => wanted && setFault(words.state.noAnswer),
    );
    return () => {
      wanted = false;
    };
  }, [tries]);
  const night = today.value?.frost[0]?.night ?? '';
  return (
    <>
      <Heading title={words.frost.title} />
      {zone === undefined || parts === null ? (
        <Fault
          sentence={fault ?? faults.value.today}
          again={() => setTries((before) => before + 1)}
        />
      ) : (
        <>
          <section>
            <h2>{words.frost.tonight}</h2>
            <parts.FrostNight zone={zone} />
          </section>
          <parts.SeasonOdds />
          <parts.CutBack />
          <section>
            <h2>{words.frost.scores}</h2>
            <parts.Scores night={night} />
          </section>
        </>
      )}
    </>
  );
}
