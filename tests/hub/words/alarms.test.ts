import { expect, test } from 'vitest';
import { type AlarmNews, alarmMessage } from '../../../hub/words/index.ts';

const MINUTE = 60_000;
const T = Date.UTC(2026, 4, 10, 2);
const news = (more: Partial<AlarmNews> = {}): AlarmNews => ({
  ...{ what: 'raised', urgent: true, farm: 'Test Garden (invented)', zone: 'Europe/Dublin' },
  ...{ now: T + 10 * MINUTE, words: 'Shut the door. It is 7.1\u00a0°C.', place: 'Cool room' },
  ...{ since: T, clearedAt: null, seenBy: null, putOffUntil: null, count: 1, folded: [] },
  ...{ doBy: T + 40 * MINUTE, minutes: 5, caution: null, others: [], held: [], link: null },
  ...more,
});

test('a message says what, since when, by when, who else was told, and what to do about it', () => {
  const { subject, text } = alarmMessage(
    news({
      folded: ['The air is warm.'],
      caution: 'Run it outdoors.',
      others: [{ name: 'Ann', at: T + MINUTE }],
      link: 'http://192.168.1.20:8470/alarms',
    }),
  );
  expect(subject).toBe('Alarm: Shut the door (Cool room)');
  expect(text.split('\n')).toEqual([
    'Shut the door. It is 7.1 °C.',
    'Since Sun 03:00, 10 minutes ago.',
    'Do it by Sun 03:40 (in 30 min).',
    'About 5 min of work.',
    'With it: The air is warm.',
    'Care: Run it outdoors.',
    'Also told: Ann at Sun 03:01.',
    'Say “seen” on the page, so that nobody else is woken.',
    'http://192.168.1.20:8470/alarms',
    '',
    'Test Garden (invented)',
    '',
  ]);
});

test('an end says whether somebody saw it, and what was put off is not called over', () => {
  const over = { what: 'over', clearedAt: T + 5 * MINUTE } as const;
  expect(alarmMessage(news(over)).text).toContain('nobody has said “seen” yet');
  expect(alarmMessage(news({ ...over, seenBy: 'Ben' })).text).toContain('seen by Ben');
  const put = alarmMessage(news({ ...over, seenBy: 'Ben', putOffUntil: T + 60 * MINUTE }));
  expect(put.subject).toMatch(/^Put off: /);
  expect(put.text).toContain('Put off until Sun 04:00 by Ben.');
  expect(put.text).not.toContain('ended');
});

test('what is not urgent is a notice, and a test says that nothing is wrong', () => {
  expect(alarmMessage(news({ urgent: false })).subject).toMatch(/^Notice: /);
  expect(alarmMessage(news({ what: 'test' })).text).toContain('Nothing is wrong');
});

test('a summary tells each of those that were held back', () => {
  const held = ['One thing.', 'Another thing.'];
  const { subject, text } = alarmMessage(news({ what: 'summary', held }));
  expect(subject).toBe('2 messages held back');
  for (const words of held) expect(text).toContain(words);
});
