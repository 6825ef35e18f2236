import { Heading } from '../parts/Heading.tsx';
import { PeopleSection } from '../parts/PeopleSection.tsx';
import { YourSignIn } from '../parts/YourSignIn.tsx';
import { StepList } from '../setUp/lazyParts.tsx';
import { mayChange, who } from '../state.ts';
import { words } from '../words.ts';

/** What a grower sets up; a helper finds the own sign-in here. */
export function SetUp() {
  const text = words.setUp;
  const asked = who.value;
  if (asked?.open) {
    return (
      <>
        <Heading title={text.title} />
        <StepList />
        <section>
          <h2>{text.people}</h2>
          <p>{text.open}</p>
        </section>
      </>
    );
  }
  return (
    <>
      <Heading title={text.title} />
      {mayChange.value && <StepList />}
      {mayChange.value ? <PeopleSection /> : <p class="quiet">{text.helper}</p>}
      {asked?.name != null && asked.role !== null && (
        <YourSignIn name={asked.name} role={asked.role} />
      )}
    </>
  );
}
