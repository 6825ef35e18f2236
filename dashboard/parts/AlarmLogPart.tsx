import type { AlarmCount, AlarmLog } from '../../hub/contract/index.ts';
import { refreshAlarmLog } from '../alarmState.ts';
import { words } from '../words.ts';
import { AlarmCard } from './AlarmCard.tsx';

/** What there was: who was told, who saw it, how often it was false. */
export function AlarmLogPart({ log, zone, now }: { log: AlarmLog; zone: string; now: number }) {
  const text = words.alarms.log;
  return (
    <section>
      <h2>{text.title}</h2>
      <p>
        <a class="how-link" href="/api/alarms/log.csv" download>
          {text.csv}
        </a>
      </p>
      <h3>{text.counts}</h3>
      {log.counts.length === 0 ? (
        <p class="quiet">{text.noCounts}</p>
      ) : (
        <ul class="values">
          {log.counts.map((count) => (
            <li key={`${count.month} ${count.kind}`}>
              <CountLine count={count} />
            </li>
          ))}
        </ul>
      )}
      <p class="quiet">{text.targets}</p>
      {log.entries.length === 0 && <p class="quiet">{text.none}</p>}
      {log.entries.map((alarm) => (
        <details key={`${alarm.id} ${alarm.since}`} class="log-entry">
          <summary>
            {text.entry(alarm.since.slice(0, 10), alarm.words, words.alarms.states[alarm.state])}
          </summary>
          <AlarmCard alarm={alarm} zone={zone} now={now} again={refreshAlarmLog} />
        </details>
      ))}
    </section>
  );
}

function CountLine({ count }: { count: AlarmCount }) {
  const text = words.alarms.log;
  const { month, kind, raised, seen, minutesToSeen, falseShare, falseOnes, answered } = count;
  return (
    <>
      <strong>
        {month}, {words.alarms.kind(kind)}
      </strong>{' '}
      {text.line(raised, seen, minutesToSeen)}{' '}
      {falseShare === null
        ? text.noShare
        : text.share(falseOnes, answered, falseShare.low, falseShare.high)}
    </>
  );
}
