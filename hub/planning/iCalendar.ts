// One calendar as text, by RFC 5545 (iCalendar) and RFC 7986 (its newer properties). All events are
// whole days, so that no time zone has to be described.

export type CalendarEvent = {
  /** The same for the same thing from one reading of the feed to the next (RFC 5545, 3.8.4.7). */
  readonly uid: string;
  /** First day, `2026-05-21`. */
  readonly from: string;
  /** The day after the last one (3.6.1: the end is not part of the event). */
  readonly to: string;
  readonly summary: string;
  readonly description: string;
  /** When what is said here last changed, ms since 1970. */
  readonly changedAt: number;
};

const LONGEST = 75; // octets of a line, its end not counted (3.1)
const MINUTE = 60_000; // ms
/** Sequence numbers count minutes from here: they grow with each change, also over a restart. */
const FIRST_MINUTE = Date.UTC(2026, 0, 1) / MINUTE;

/** Content lines joined by CRLF, each folded to 75 octets without cutting a character in two (3.1). */
function folded(line: string): string {
  let out = '';
  let octets = 0;
  for (const character of line) {
    const size = Buffer.byteLength(character);
    if (octets + size > LONGEST) {
      out += '\r\n ';
      octets = 1; // the space counts
    }
    out += character;
    octets += size;
  }
  return `${out}\r\n`;
}

/** TEXT (3.3.11): what has a meaning of its own is escaped, other control characters are left out. */
const text = (value: string) =>
  value
    .replaceAll(/\r\n?/g, '\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
    .replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')
    .replaceAll(/[\\;,]/g, (character) => `\\${character}`)
    .replaceAll('\n', '\\n');

const day = (name: string) => name.replaceAll('-', '');
const utc = (t: number) => `${new Date(t).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;

function eventLines(event: CalendarEvent, at: number): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${text(event.uid)}`,
    `DTSTAMP:${utc(at)}`,
    `DTSTART;VALUE=DATE:${day(event.from)}`,
    `DTEND;VALUE=DATE:${day(event.to)}`,
    `SUMMARY:${text(event.summary)}`,
    ...(event.description === '' ? [] : [`DESCRIPTION:${text(event.description)}`]),
    `LAST-MODIFIED:${utc(event.changedAt)}`,
    `SEQUENCE:${Math.max(0, Math.floor(event.changedAt / MINUTE - FIRST_MINUTE))}`,
    'TRANSP:TRANSPARENT', // a day with trays to sow is not a day without time for anything else
    'END:VEVENT',
  ];
}

/**
 * A calendar to be read again and again.
 *
 * @param at when it is written, ms since 1970
 * @param refreshHours how often a program may come back for it
 */
export function iCalendar(calendar: {
  readonly name: string;
  readonly description: string;
  readonly events: readonly CalendarEvent[];
  readonly at: number;
  readonly refreshHours: number;
}): string {
  const { name, description, events, at, refreshHours } = calendar;
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Dewpost//Sowing and harvest//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    `NAME:${text(name)}`,
    `DESCRIPTION:${text(description)}`,
    `REFRESH-INTERVAL;VALUE=DURATION:PT${refreshHours}H`,
    ...events.flatMap((event) => eventLines(event, at)),
    'END:VCALENDAR',
  ]
    .map(folded)
    .join('');
}
