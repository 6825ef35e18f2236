import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Params } from '../router.ts';
import { words } from '../words.ts';
import { Fault } from './Fault.tsx';
import { Heading } from './Heading.tsx';

type Show = ComponentType<{ params: Params }>;

/** A page fetched when it is first opened, so that Today does without it. */
export function lazyPage(title: string, fetchPage: () => Promise<Show>): Show {
  let fetched: Show | null = null;
  return function LazyPage({ params }) {
    const [page, setPage] = useState<{ Show: Show } | null>(fetched && { Show: fetched });
    const [fault, setFault] = useState<string | undefined>();
    const [tries, setTries] = useState(0);
    useEffect(() => {
      if (page) return;
      let wanted = true;
      setFault(undefined);
      fetchPage().then(
        (Show) => {
          fetched = Show;
          if (wanted) setPage({ Show });
        },
        () => wanted && setFault(words.state.noAnswer),
      );
      return () => {
        wanted = false;
      };
    }, [tries]);
    if (page) return <page.Show params={params} />;
    return (
      <>
        <Heading title={title} />
        <Fault sentence={fault} again={() => setTries(tries + 1)} />
      </>
    );
  };
}
