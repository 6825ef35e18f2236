import type { AlarmMessage, ShownAlarm } from '../../hub/contract/index.ts';
import { when } from '../times.ts';
import { words } from '../words.ts';
import { Mark, type Shape } from './Mark.tsx';
import { SeenButtons } from './SeenButtons.tsx';

const shapes: Record<ShownAlarm['state'], Shape> = {
  'active-unacknowledged': 'alarm',
  'active-acknowledged': 'care',
  'cleared-unacknowledged': 'later',
  over: 'lapsed',
};

/** One alarm: what, since when, who was told by what and when, who saw it. */
export function AlarmCard({
  alarm,
  zone,
  now,
  again,
}: {
  alarm: ShownAlarm;
  zone: string;
  now: number;
  again?: () => void;
}) {
  const text = words.alarms;
  const at = (time: string) => when(Date.parse(time), zone, now);
  const isTest = alarm.kind === 'test';
  return (
    <article class={alarm.state === 'active-unacknowledged' ? 'task task-alarm' : 'task'}>
      <p class="alarm-word">
        <Mark shape={shapes[alarm.state]} /> {text.states[alarm.state]}
      </p>
      <h3>{isTest ? text.testTitle : alarm.words}</h3>
      <p class="task-when">
        {!isTest && <span>{alarm.placeName}</span>}
        <span>{text.kind(alarm.kind)}</span>
        <span>{text.ranks[alarm.rank]}</span>
        <span>{text.sinceTime(at(alarm.since), now - Date.parse(alarm.since))}</span>
        {alarm.clearedAt !== null && !isTest && <span>{text.overAt(at(alarm.clearedAt))}</span>}
        {alarm.count > 1 && <span>{text.count(alarm.count)}</span>}
      </p>
      {alarm.folded.map(({ id, words: said }) => (
        <p key={id}>{text.folded(said)}</p>
      ))}
      {isTest ? (
        <p>
          {alarm.seenBy !== null && alarm.seenAt !== null
            ? text.testAnswered(alarm.seenBy, at(alarm.seenAt))
            : text.testOpen}
        </p>
      ) : (
        alarm.seenBy !== null &&
        alarm.seenAt !== null && <p>{text.seenLine(alarm.seenBy, at(alarm.seenAt))}</p>
      )}
      {alarm.was !== null && <p>{text.was[alarm.was]}</p>}
      <Told told={alarm.told} at={at} />
      <SeenButtons alarm={alarm} {...(again ? { again } : {})} />
    </article>
  );
}

function Told({ told, at }: { told: readonly AlarmMessage[]; at: (time: string) => string }) {
  const text = words.alarms;
  if (told.length === 0) return <p class="quiet">{text.toldNobody}</p>;
  return (
    <ul class="values">
      {told.map((one) => (
        <li key={`${one.person} ${one.channel} ${one.what} ${one.madeAt}`}>
          {text.told(one.person, one.channel, at(one.endedAt ?? one.madeAt))}{' '}
          <span class="quiet">{text.toldState(one.state, one.words)}</span>
        </li>
      ))}
    </ul>
  );
}
