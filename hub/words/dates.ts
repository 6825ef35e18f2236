import { HARD } from './figures.ts';
import { units } from './units.ts';

// Times of day and days as a language writes them, by Intl, on the farm's clock of 24 or 12 hours.

/** What dates need to know of a language. */
export type DateManner = {
  /** `Thursday, 21 May` loses its first comma, or keeps it: a language that writes it with the day. */
  readonly commas: 'first dropped' | 'kept';
};

export function datesIn(locale: string, { commas }: DateManner) {
  const formats = new Map<string, Intl.DateTimeFormat>();
  const format = (zone: string, name: string, options: Intl.DateTimeFormatOptions) => {
    const twelve = units().clock === 12;
    const key = `${name} ${zone} ${twelve}`;
    let made = formats.get(key);
    if (!made) {
      const hours =
        options.hour === undefined
          ? {}
          : twelve
            ? ({ hourCycle: 'h12', hour: 'numeric' } as const)
            : ({ hourCycle: 'h23' } as const);
      made = new Intl.DateTimeFormat(locale, { timeZone: zone, ...options, ...hours });
      formats.set(key, made);
    }
    const plain = (text: string) => (commas === 'kept' ? text : text.replace(',', ''));
    // No break before am and pm.
    return (t: number) => plain(made.format(t)).replace(/\s(?=[ap]\.?m)/i, HARD);
  };
  const time = { hour: '2-digit', minute: '2-digit' } as const;
  const day = (text: string) => Date.parse(`${text}T00:00:00Z`);
  const shortDate = { day: 'numeric', month: 'short' } as const;
  const short = { weekday: 'short', ...shortDate } as const;
  const long = { weekday: 'long', day: 'numeric', month: 'long' } as const;

  const clock = (t: number, zone: string) => format(zone, 'time', time)(t);

  return {
    /** `19:40`, `7:40 pm` */
    clock,
    /** An hour on an axis: `06`, `6 am`. */
    hour: (t: number, zone: string) => format(zone, 'hour', { hour: '2-digit' })(t),
    /** A time on the wall `15:00` as it is said. */
    wallTime: (text: string) =>
      clock(Date.parse(`2000-01-01T${text.replace('24:', '00:')}Z`), 'UTC'),
    /** `Mon 19:40` */
    dayAndTime: (t: number, zone: string) =>
      format(zone, 'day time', { weekday: 'short', ...time })(t),
    /** `Mon 3 Nov 14:05` */
    eventTime: (t: number, zone: string) => format(zone, 'event', { ...short, ...time })(t),
    /** `Mon 3 Nov` */
    dayName: (t: number, zone: string) => format(zone, 'short', short)(t),
    /** `Monday 3 November` */
    longDay: (t: number, zone: string) => format(zone, 'long', long)(t),
    /** `3 November` */
    dateAt: (t: number, zone: string) => format(zone, 'date', { day: 'numeric', month: 'long' })(t),
    /** `Mon` */
    weekday: (t: number, zone: string) => format(zone, 'weekday', { weekday: 'short' })(t),
    /** A calendar day `2026-05-21` as `Thursday 21 May`; anything else as it stands. */
    dayInText: (text: string) =>
      Number.isNaN(day(text)) ? text : format('UTC', 'long', long)(day(text)),
    /** As `Thu 21 May`. */
    shortDayInText: (text: string) => format('UTC', 'short', short)(day(text)),
    /** As `21 May`. */
    shortDay: (text: string) => format('UTC', 'date short', shortDate)(day(text)),
    /** As `21 May 2026`. */
    dayAndYear: (text: string) =>
      format('UTC', 'year', { ...shortDate, year: 'numeric' })(Date.parse(text)),
    /** A month `2026-05-…` as `May`. */
    month: (text: string) => format('UTC', 'month', { month: 'short' })(day(text)),
  };
}
