import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { type CalendarEvent, iCalendar } from '../../../hub/planning/index.ts';

// Read back by a reader that is not ours (ical.js), and held against RFC 5545 line by line.

const event = (wish: Partial<CalendarEvent> = {}): CalendarEvent => ({
  ...{ uid: 'sow.basil.2026-05-21@abc.dewpost', from: '2026-05-05', to: '2026-05-06' },
  ...{ summary: 'Sow 3 trays', description: 'For Thursday', changedAt: Date.UTC(2026, 4, 4, 7) },
  ...wish,
});
const written = (...events: readonly CalendarEvent[]) =>
  iCalendar({
    ...{ name: 'Garden', description: 'The plan', events },
    ...{ at: Date.UTC(2026, 4, 4, 8, 30, 5), refreshHours: 6 },
  });
const read = (text: string) => new ICAL.Component(ICAL.parse(text));

test('the reference reader finds what was written, as whole days with the end left out', () => {
  const calendar = read(written(event(), event({ uid: 'b@abc', to: '2026-05-09' })));
  expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
  expect(String(calendar.getFirstPropertyValue('refresh-interval'))).toBe('PT6H');
  expect(calendar.getFirstProperty('refresh-interval')?.type).toBe('duration');
  expect(calendar.getFirstPropertyValue('name')).toBe('Garden');
  const [first, second] = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
  expect(first?.startDate.isDate).toBe(true);
  expect(first?.startDate.toString()).toBe('2026-05-05');
  expect(first?.duration.toSeconds()).toBe(86_400);
  expect(second?.duration.toSeconds()).toBe(4 * 86_400);
  expect(first?.uid).toBe('sow.basil.2026-05-21@abc.dewpost');
  const stamp = first?.component.getFirstPropertyValue('dtstamp');
  expect(String(stamp)).toBe('2026-05-04T08:30:05Z');
  expect(String(first?.component.getFirstPropertyValue('last-modified'))).toBe(
    '2026-05-04T07:00:00Z',
  );
});

const anyText = fc.string({ unit: 'binary', maxLength: 200 });

test('any words come back as they were, and each line keeps to the grammar', () => {
  fc.assert(
    fc.property(anyText, anyText, (summary, description) => {
      const text = written(event({ summary, description }));
      // 3.1: lines end in CRLF and hold at most 75 octets; nothing else breaks them.
      expect(text.endsWith('\r\n')).toBe(true);
      for (const line of text.slice(0, -2).split('\r\n')) {
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(line).not.toMatch(/[\r\n]/);
        // 3.1: no control characters but a tab.
        // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
        expect(line).not.toMatch(/[\u0000-\u0008\u000a-\u001f\u007f]/);
      }
      // No character was cut in two: whole again as UTF-8.
      expect(Buffer.from(text, 'utf8').toString('utf8')).toBe(text);
      const [found] = read(text).getAllSubcomponents('vevent');
      const plain = (said: string) =>
        said
          .replaceAll(/\r\n?/g, '\n')
          // biome-ignore lint/suspicious/noControlCharactersInRegex: they are left out
          .replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');
      expect(found?.getFirstPropertyValue('summary') ?? '').toBe(plain(summary));
      if (description !== '')
        expect(found?.getFirstPropertyValue('description') ?? '').toBe(plain(description));
    }),
    { numRuns: 300 },
  );
});

// RFC 5545, 3.3.11: the example of escaped TEXT; 3.1: the example of folding says any place will do.
test('the example of RFC 5545, 3.3.11, is escaped as it is there', () => {
  const text = written(
    event({ summary: 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.' }),
  );
  expect(text.replaceAll('\r\n ', '')).toContain(
    'SUMMARY:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n',
  );
  const commas = written(event({ summary: 'a, b; c \\ d' }));
  expect(commas).toContain('SUMMARY:a\\, b\\; c \\\\ d\r\n');
});

test('what changed later has the higher sequence, and none is below zero', () => {
  const sequence = (changedAt: number) =>
    Number(/SEQUENCE:(\d+)/.exec(written(event({ changedAt })))?.[1]);
  const [before, after] = [Date.UTC(2026, 4, 4, 7), Date.UTC(2026, 4, 4, 7, 1)].map(sequence);
  expect(after).toBe((before ?? 0) + 1);
  expect(sequence(0)).toBe(0);
});
