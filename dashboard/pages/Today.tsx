import { useEffect, useState } from 'preact/hooks';
import { StripStack } from '../charts/StripStack.tsx';
import { now as clock } from '../clock.ts';
import { alarmsFirst } from '../merge.ts';
import { Answered } from '../parts/Answered.tsx';
import { CoolRooms } from '../parts/CoolRooms.tsx';
import { EndedTasks } from '../parts/EndedTasks.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Heading } from '../parts/Heading.tsx';
import { NoFarm } from '../parts/NoFarm.tsx';
import { PutOffTasks } from '../parts/PutOffTasks.tsx';
import { TaskCard } from '../parts/TaskCard.tsx';
import { TonightLows } from '../parts/TonightLows.tsx';
import { ended, farm, faults, strips, today } from '../state.ts';
import { longDay, timeOfDay } from '../times.ts';
import { words } from '../words.ts';

const FIRST = 2; // tasks drawn before the rest: more than a phone shows at once; ours

/** Is anything wrong, and what comes first? Then how every place stands from dusk to dawn. */
export function Today() {
  const facts = today.value;
  const zone = farm.value?.zone;
  const ready = facts !== null && zone !== undefined;
  // First what is to be done first, and once that is on the screen the rest: on a slow phone the
  // pictures would hold up the first answer by half a second.
  const [whole, setWhole] = useState(false);
  useEffect(() => {
    if (ready) setWhole(true);
  }, [ready]);
  useEffect(() => {
    if (!whole || location.hash === '') return;
    const task = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    task?.scrollIntoView();
    task?.focus({ preventScroll: true });
  }, [whole]);
  if (!ready) {
    return (
      <>
        <Heading title={words.today.title} />
        {farm.value?.settled === false ? <NoFarm /> : <Fault sentence={faults.value.today} />}
      </>
    );
  }
  const asOf = Date.parse(facts.asOf);
  const now = Math.max(clock.value ?? asOf, asOf);
  const waits = ({ until }: { until: string | null }) => until !== null && Date.parse(until) > now;
  const open = alarmsFirst(facts.tasks.filter((task) => !waits(task)));
  return (
    <div class="today">
      <div class="today-say">
        <Heading title={words.today.title}>
          {words.today.title}, <span class="dateline">{longDay(now, zone)}</span>
        </Heading>
        <p class="sentence">{facts.sentence}</p>
        <p class="quiet">{words.today.asOf(timeOfDay(asOf, zone), now - asOf)}</p>
        {faults.value.today !== undefined && <Fault sentence={faults.value.today} />}
      </div>
      <div class="today-do">
        <section class="tasks">
          <h2 id="to-do" tabIndex={-1}>
            {words.today.tasks}
          </h2>
          <Answered zone={zone} now={now} />
          {open.length === 0 && <p class="quiet">{words.today.noTasks}</p>}
          {(whole ? open : open.slice(0, FIRST)).map((task) => (
            <TaskCard key={task.id} task={task} now={now} zone={zone} />
          ))}
        </section>
        {whole && (
          <>
            <PutOffTasks tasks={facts.tasks.filter(waits)} now={now} zone={zone} />
            <EndedTasks tasks={ended.value} now={now} zone={zone} />
          </>
        )}
      </div>
      <div class="today-see">
        <section>
          <h2>{words.today.strips}</h2>
          {whole && strips.value ? (
            <StripStack strips={strips.value} zone={zone} />
          ) : (
            <Fault sentence={faults.value.strips} />
          )}
        </section>
      </div>
      {whole && (
        <div class="today-also">
          <TonightLows
            frost={facts.frost}
            places={facts.places}
            strips={strips.value}
            zone={zone}
          />
          <CoolRooms rooms={facts.coolRooms} places={facts.places} />
        </div>
      )}
    </div>
  );
}
