import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { words } from '../words.ts';
import { Fault } from './Fault.tsx';

/** A part that is fetched when it is first shown: Today does without it. */
export function lazy<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
): ComponentType<Props> {
  return function Lazy(props: Props) {
    const [found, setFound] = useState<{ readonly Part: ComponentType<Props> } | null>(null);
    const [failed, setFailed] = useState(false);
    useEffect(() => {
      if (failed) return;
      let wanted = true;
      load().then(
        (Part) => wanted && setFound({ Part }),
        () => wanted && setFailed(true),
      );
      return () => {
        wanted = false;
      };
    }, [failed]);
    if (found) return <found.Part {...props} />;
    return (
      <Fault sentence={failed ? words.state.noAnswer : undefined} again={() => setFailed(false)} />
    );
  };
}
