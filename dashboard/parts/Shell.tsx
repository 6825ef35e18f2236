import type { ComponentChildren } from 'preact';
import { now } from '../clock.ts';
import type { Page } from '../pages/index.ts';
import { signOut } from '../signOut.ts';
import { farm, who } from '../state.ts';
import { timeOfDay } from '../times.ts';
import { words } from '../words.ts';
import { Menu } from './Menu.tsx';
import { SchemeSwitch } from './SchemeSwitch.tsx';

/** What stands round every page: the farm's name, the menu, and who is signed in. */
export function Shell({
  pages,
  path,
  children,
}: {
  pages: readonly Page[];
  path: string;
  children: ComponentChildren;
}) {
  const facts = farm.value;
  return (
    <>
      <a class="skip" href="#main">
        {words.frame.skip}
      </a>
      <header class="top">
        <p class="farm-name">{facts?.name ?? words.product}</p>
        {facts && now.value !== null && (
          <p class="quiet farm-clock">{words.frame.clock(timeOfDay(now.value, facts.zone))}</p>
        )}
        {facts?.invented && (
          <p class="invented">
            {words.frame.invented} {facts.speed !== 1 && words.frame.faster(facts.speed)}
          </p>
        )}
      </header>
      {pages.length > 0 && <Menu pages={pages} path={path} />}
      <main id="main" tabIndex={-1}>
        {children}
      </main>
      <footer class="bottom">
        {who.value?.name != null && pages.length > 0 && (
          <p>
            {words.frame.signedInAs(who.value.name)}{' '}
            <button type="button" onClick={() => signOut()}>
              {words.frame.signOut}
            </button>
          </p>
        )}
        <SchemeSwitch />
      </footer>
    </>
  );
}
