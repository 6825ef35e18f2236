import type { AlarmSettings, Channel, Hours, Person } from './types.ts';

/** Whether a minute of the farm's day lies in these hours. The same twice is all day. */
export const within = (minute: number, hours: Hours | null): boolean =>
  hours !== null &&
  (hours.from === hours.to
    ? true
    : hours.from < hours.to
      ? minute >= hours.from && minute < hours.to
      : minute >= hours.from || minute < hours.to);

/** Whether somebody may be told of this rank at this minute of the farm's day. */
export const mayTell = (
  { hours }: Person,
  rank: 'urgent' | 'today',
  { quiet }: Pick<AlarmSettings, 'quiet'>,
  minute: number,
): boolean => within(minute, hours[rank]) && (rank === 'urgent' || !within(minute, quiet));

export const channelsOf = ({ email, webhook }: Person): Channel[] => [
  ...(email === null ? [] : (['email'] as const)),
  ...(webhook === null ? [] : (['webhook'] as const)),
];
