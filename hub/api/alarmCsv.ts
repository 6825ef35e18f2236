import type { ShownAlarm } from '../contract/index.ts';

const columns = [
  'raised',
  'cleared',
  'place',
  'kind',
  'rank',
  'count',
  'seen_by',
  'seen_at',
  'was',
  'told',
  'words',
] as const;

/** One field (RFC 4180, section 2). What a spreadsheet would take for a formula stays text. */
function field(value: string | number | null): string {
  if (typeof value === 'number') return String(value);
  const text = value ?? '';
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The log as CSV (RFC 4180); times in ISO 8601, empty where not known. */
export function alarmCsv(entries: readonly ShownAlarm[]): string {
  const rows = entries.map((alarm) => {
    const told = alarm.told
      .filter(({ what }) => what !== 'over')
      .map((one) => `${one.person} ${one.channel} ${one.endedAt ?? one.madeAt} ${one.state}`)
      .join('; ');
    return [
      alarm.since,
      alarm.clearedAt,
      alarm.placeName,
      alarm.kind,
      alarm.rank,
      alarm.count,
      alarm.seenBy,
      alarm.seenAt,
      alarm.was,
      told,
      alarm.words,
    ];
  });
  return [columns, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}
