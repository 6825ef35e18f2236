import { useState } from 'preact/hooks';
import type { Loss, LossHistory } from '../../hub/contract/index.ts';
import { useFacts } from '../coolRoom/useFacts.ts';
import { useSending } from '../coolRoom/useSending.ts';
import { Fault } from '../parts/Fault.tsx';
import { Photo } from '../photos/Photo.tsx';
import { shortDay, when } from '../times.ts';
import { words } from '../words.ts';
import { CorrectLoss } from './CorrectLoss.tsx';
import { changeLoss } from './commands.ts';
import { PhotoButton } from './PhotoButton.tsx';

export type Farm = { readonly zone: string; readonly money: string };

/** One loss: what it was, its photo, its history, and the ways to correct it. */
export function LossCard({
  loss,
  farm,
  now,
  today,
  onChanged,
}: {
  loss: Loss;
  farm: Farm;
  now: number;
  today: string;
  onChanged: (sentence: string, loss: LossHistory) => void;
}) {
  const text = words.losses;
  const entered = loss.origin === 'entered';
  const facts = [
    text.seenOn(shortDay(loss.day)),
    loss.share === null ? '' : text.share(loss.share),
    loss.kg === null || loss.unit === 'kg' ? '' : text.weight(loss.kg),
    loss.money === null ? '' : text.money(loss.money, farm.money),
    loss.batch === null ? '' : text.ofBatch(loss.batch),
    text.by(loss.by),
  ].filter((part) => part !== '');
  return (
    <article class="lot loss-card" id={loss.id}>
      <h3>
        {loss.placeName}: {loss.words}
      </h3>
      <p class="quiet">{facts.join(' · ')}</p>
      {loss.note && <p>{loss.note}</p>}
      {loss.state === 'same' && <p>{text.sameWords}</p>}
      {loss.state === 'withdrawn' && <p>{text.withdrawnWords}</p>}
      {entered ? (
        <Entered key={`${loss.id} ${loss.entries}`} {...{ loss, farm, now, today, onChanged }} />
      ) : (
        <p>
          {text.lotWords}{' '}
          <a href={`/cool-room?${new URLSearchParams({ room: loss.place })}`}>{text.toLot}</a>
        </p>
      )}
    </article>
  );
}

function Entered({
  loss,
  farm,
  now,
  today,
  onChanged,
}: {
  loss: Loss;
  farm: Farm;
  now: number;
  today: string;
  onChanged: (sentence: string, loss: LossHistory) => void;
}) {
  const text = words.losses;
  const [correcting, setCorrecting] = useState(false);
  const { sending, failed, send } = useSending();
  const past = useFacts<LossHistory>(`/api/losses/${encodeURIComponent(loss.id)}`);
  const change = async (sentence: string, command: Parameters<typeof changeLoss>[1]) => {
    const changed = await send(() => changeLoss(loss.id, command));
    if (changed) onChanged(sentence, changed);
  };
  return (
    <>
      {loss.photo === null ? (
        loss.state !== 'withdrawn' && (
          <PhotoButton loss={loss.id} onDone={(changed) => onChanged(text.photoSent, changed)} />
        )
      ) : (
        <>
          <Photo src={loss.photo} of={loss.words} />
          <p>
            <button
              type="button"
              aria-disabled={sending}
              onClick={() => change(text.photoWithdrawn, { photo: null })}
            >
              {text.withdrawPhoto}
            </button>
          </p>
        </>
      )}
      {loss.state !== 'withdrawn' && (
        <p>
          <button
            type="button"
            aria-expanded={correcting}
            onClick={() => setCorrecting(!correcting)}
          >
            {text.correct}
          </button>
        </p>
      )}
      {correcting && (
        <CorrectLoss
          loss={loss}
          today={today}
          onDone={(changed) => onChanged(text.corrected, changed)}
        />
      )}
      <h4>{text.history}</h4>
      {past.facts ? (
        <ol class="plain-list lot-past">
          {past.facts.history.map((entry) => (
            <li key={entry.entry}>
              {entry.undone ? (
                <span>
                  <s>{entry.words}</s> {text.takenBack}
                </span>
              ) : (
                <span>
                  {text.historyLine(
                    when(Date.parse(entry.t), farm.zone, now),
                    entry.who,
                    entry.words,
                  )}
                </span>
              )}{' '}
              {entry.mayUndo && (
                <button
                  type="button"
                  aria-label={`${text.takeBack}: ${entry.words}`}
                  aria-disabled={sending}
                  onClick={() => change(text.undone, { undo: entry.entry })}
                >
                  {text.takeBack}
                </button>
              )}
            </li>
          ))}
        </ol>
      ) : (
        <Fault sentence={past.fault} again={past.again} />
      )}
      <p role="status" class="failed-line">
        {failed}
      </p>
    </>
  );
}
