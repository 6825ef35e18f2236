import { useEffect, useState } from 'preact/hooks';
import type { Keeping as Facts } from '../../hub/contract/index.ts';
import { ask } from '../ask.ts';
import { farm, looks, mayChange, returns } from '../state.ts';
import { longDay } from '../times.ts';
import { words } from '../words.ts';
import { BackUpNow } from './BackUpNow.tsx';
import { Mark } from './Mark.tsx';

const LATE = 2 * 86_400_000; // ms; ours: one night may fail, two are too many

/** How what the hub keeps is looked after: room, age, backups, repairs. */
export function Keeping({ now }: { now: number }) {
  const [facts, setFacts] = useState<Facts | null>(null);
  const seen = looks.value + returns.value;
  useEffect(() => {
    let wanted = true;
    ask<Facts>('/api/keeping').then(
      (got) => wanted && setFacts(got),
      () => {}, // the page above says when the hub does not answer
    );
    return () => {
      wanted = false;
    };
  }, [seen]);
  const zone = farm.value?.zone;
  if (facts === null || zone === undefined) return null;
  return (
    <section class="keeping">
      <h2>{words.keeping.title}</h2>
      <ul>
        {sentences(facts, now, zone).map(({ text, care }) => (
          <li key={text}>
            {care && <Mark shape="care" />} {text}
          </li>
        ))}
      </ul>
      {mayChange.value && facts.backup.wanted && !facts.backup.absent && (
        <BackUpNow backup={facts.backup} onFacts={setFacts} />
      )}
      <p class="quiet">{words.queue.keptHere}</p>
    </section>
  );
}

type Sentence = { readonly text: string; readonly care: boolean };

/** What there is to say, in order; `care` marks what somebody should do something about. */
export function sentences(facts: Facts, now: number, zone: string): Sentence[] {
  const say = words.keeping;
  const { backup, mended, rawFrom } = facts;
  const plain = (text: string): Sentence => ({ text, care: false });
  const care = (text: string): Sentence => ({ text, care: true });
  const out = [
    plain(say.size(facts.bytes, facts.freeBytes)),
    plain(say.raw(facts.rawDays, rawFrom && longDay(Date.parse(rawFrom), zone))),
  ];
  if (!backup.wanted) out.push(care(say.noBackup));
  else {
    const old = backup.at === null ? null : now - Date.parse(backup.at);
    if (backup.absent) out.push(care(say.backupAbsent));
    else if (backup.fault !== null) out.push(care(say.backupFault(backup.fault)));
    if (old === null) out.push(care(say.backupNone));
    else if (old > LATE) out.push(care(`${say.backup(old)} ${say.old}`));
    else out.push(plain(say.backup(old)));
    if (backup.sameCard) out.push(care(say.backupHere));
  }
  if (mended !== null) {
    const aside = fileName(mended.aside);
    out.push(care(say.mended(now - Date.parse(mended.at), mended.readings, aside)));
    if (mended.backup !== null) out.push(plain(say.mendedFrom(fileName(mended.backup))));
    else if (mended.damaged.length > 0) out.push(care(say.mendedLost));
  }
  return out;
}

const fileName = (path: string) => path.split('/').at(-1) ?? path;
