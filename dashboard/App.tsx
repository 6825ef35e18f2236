import { Fragment } from 'preact';
import { pages, SignIn } from './pages/index.ts';
import { AlarmNotice } from './parts/AlarmNotice.tsx';
import { Heading } from './parts/Heading.tsx';
import { LinkBanner } from './parts/LinkBanner.tsx';
import { Shell } from './parts/Shell.tsx';
import { StoreBanner } from './parts/StoreBanner.tsx';
import { cameToWait } from './queue/index.ts';
import { OthersWait } from './queue/OthersWait.tsx';
import { WaitingNotice } from './queue/WaitingNotice.tsx';
import { find, path } from './router.ts';
import { signInNeeded } from './state.ts';
import { words } from './words.ts';

/** The page that the address asks for, or the way in. */
export function App() {
  const here = path.value;
  if (signInNeeded.value) {
    return (
      <Shell pages={[]} path={here}>
        <OthersWait />
        <SignIn />
      </Shell>
    );
  }
  const found = find(pages, here);
  return (
    <Shell pages={pages} path={here}>
      <LinkBanner />
      <StoreBanner />
      <WaitingNotice />
      {/* Drawn anew when something came to wait: its form is done with, as if it were stored. */}
      <Fragment key={cameToWait.value}>
        <AlarmNotice path={here} />
        {found ? <found.route.Show key={here} params={found.params} /> : <NoPage />}
      </Fragment>
    </Shell>
  );
}

function NoPage() {
  return (
    <>
      <Heading title={words.frame.noPage} />
      <p>{words.frame.noPageWhy}</p>
      <p>
        <a href="/">{words.frame.toToday}</a>
      </p>
    </>
  );
}
