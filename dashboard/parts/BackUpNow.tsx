import { useEffect, useState } from 'preact/hooks';
import type { Keeping } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { words } from '../words.ts';

const EVERY = 1_000; // ms; ours: a small board takes some seconds to minutes for a copy

/** A copy of everything now, into the folder of the nightly ones: how far it is, and what became of it. */
export function BackUpNow({
  backup,
  onFacts,
}: {
  backup: Keeping['backup'];
  onFacts: (facts: Keeping) => void;
}) {
  const say = words.keeping;
  const [said, setSaid] = useState('');
  const [asked, setAsked] = useState(false);
  const { running, fault } = backup;
  const take = (facts: Keeping) => {
    onFacts(facts);
    if (asked && facts.backup.running === null) {
      setAsked(false);
      setSaid(facts.backup.fault === null ? say.backedUp : say.backUpFailed(facts.backup.fault));
    }
  };
  const goesOn = running !== null || asked;
  useEffect(() => {
    if (!goesOn) return;
    const timer = setInterval(() => {
      ask<Keeping>('/api/keeping').then(take, () => {}); // the page above says when there is no link
    }, EVERY);
    return () => clearInterval(timer);
  });
  const begin = async () => {
    setSaid('');
    try {
      onFacts(await ask<Keeping>('/api/keeping/backup', {}));
      setAsked(true);
    } catch (error) {
      setSaid(say.backUpFailed(error instanceof Error ? error.message : String(error)));
    }
  };
  const share = running ?? 0;
  return (
    <div>
      {goesOn ? (
        <progress max={1} value={share} aria-label={say.backUpNow} />
      ) : (
        <button type="button" onClick={begin}>
          {say.backUpNow}
        </button>
      )}
      <p role="status" class={said !== '' && fault !== null ? 'failed' : ''}>
        {goesOn ? say.backingUp(share) : said}
      </p>
    </div>
  );
}
