import { pages, SignIn } from './pages/index.ts';
import { AlarmNotice } from './parts/AlarmNotice.tsx';
import { Heading } from './parts/Heading.tsx';
import { LinkBanner } from './parts/LinkBanner.tsx';
import { Shell } from './parts/Shell.tsx';
import { StoreBanner } from './parts/StoreBanner.tsx';
import { find, path } from './router.ts';
import { signInNeeded } from './state.ts';
import { words } from './words.ts';

/** The page that the address asks for, or the way in. */
export function App() {
  const here = path.value;
  if (signInNeeded.value) {
    return (
      <Shell pages={[]} path={here}>
        <SignIn />
      </Shell>
    );
  }
  const found = find(pages, here);
  return (
    <Shell pages={pages} path={here}>
      <LinkBanner />
      <StoreBanner />
      <AlarmNotice path={here} />
      {found ? <found.route.Show key={here} params={found.params} /> : <NoPage />}
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
