import { alarms, today } from '../state.ts';
import { words } from '../words.ts';
import { Mark } from './Mark.tsx';

/** Alarms that the page below does not show by itself. On Today the tasks do. */
export function AlarmNotice({ onToday }: { onToday: boolean }) {
  const tasks = (today.value?.tasks ?? []).filter(({ alarm }) => alarm);
  const shown = onToday
    ? []
    : tasks.map(({ id, title }) => ({ id, words: title, href: `/#${encodeURIComponent(id)}` }));
  // An alarm without a task, such as a hub that cannot see a place any more.
  const others = [...alarms.value.values()]
    .filter(({ kind }) => kind !== 'store') // the banner says it
    .filter(({ place }) => !tasks.some((task) => task.place === place))
    .map(({ id, words: said }) => ({ id, words: said, href: '/' }));
  return (
    <div role="alert">
      {[...shown, ...others].map((alarm) => (
        <p key={alarm.id} class="alarm-notice">
          <Mark shape="alarm" />
          <span>
            <strong>{words.frame.alarm}.</strong> {alarm.words}{' '}
            {!onToday && <a href={alarm.href}>{words.frame.seeTasks}</a>}
          </span>
        </p>
      ))}
    </div>
  );
}
