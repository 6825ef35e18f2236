import type { Health } from '../contract/index.ts';
import { placeFacts } from '../snapshot/index.ts';
import type { Counts } from './counts.ts';
import { family, known, type Sample } from './metricFamily.ts';
import type { ApiParts } from './parts.ts';
import { processMetrics } from './processMetrics.ts';

const DAY = 86_400_000; // ms

const seconds = (time: string | null) =>
  time === null ? [] : [{ value: Date.parse(time) / 1000 }];

/** Prometheus text format, version 0.0.4. What is not known has no sample. */
export function metricsText(parts: ApiParts, health: Health, counts: Counts): string {
  const looked = parts.lastLook();
  const spots =
    looked?.snapshot.places.flatMap((place) =>
      placeFacts(looked.snapshot, place)
        .spots.filter(({ stale }) => !stale)
        .map((facts) => ({
          labels: { place: place.id, spot: facts.spot, probe: facts.probe },
          facts,
        })),
    ) ?? [];
  const of = (quantity: 'temperature' | 'humidity') =>
    spots.flatMap(({ labels, facts }) => {
      const value = facts[quantity];
      return value === null ? [] : [{ labels, value }];
    });
  const kinds = new Map<string, number>();
  for (const { kind } of looked?.open ?? []) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  // Of a store that cannot be read nothing is known; the rest still is.
  const stored = <Told>(read: () => readonly Told[]): readonly Told[] => {
    try {
      return health.store.bytes === null || health.store.trouble === 'gone' ? [] : read();
    } catch {
      return [];
    }
  };
  return [
    family('dewpost_up', 'gauge', '1 while the hub works as it should.', [
      { value: health.status === 'failing' ? 0 : 1 },
    ]),
    family(
      'dewpost_temperature_celsius',
      'gauge',
      'Newest temperature of a spot.',
      of('temperature'),
    ),
    family(
      'dewpost_humidity_ratio',
      'gauge',
      'Newest relative humidity of a spot, 0 to 1.',
      of('humidity').map(({ labels, value }) => ({ labels, value: value / 100 })),
    ),
    family(
      'dewpost_last_reading_timestamp_seconds',
      'gauge',
      'When the newest reading was taken.',
      seconds(health.lastReadingAt),
    ),
    family(
      'dewpost_last_look_timestamp_seconds',
      'gauge',
      'When the hub last looked at everything.',
      seconds(health.evaluatedAt),
    ),
    family(
      'dewpost_open_tasks',
      'gauge',
      'Open tasks by kind.',
      [...kinds].map(([kind, value]) => ({ labels: { kind }, value })),
    ),
    family(
      'dewpost_alarms_raised',
      'gauge',
      'Alarms that stand raised.',
      stored(() => [{ value: parts.store.alarms.raised().length }]),
    ),
    ...stored(() => alarmFamilies(parts)),
    family(
      'dewpost_refused_in_a_day',
      'gauge',
      'Messages and readings refused or doubted in the last 24 hours, by reason.',
      stored(() => refusedOfADay(parts)),
    ),
    family('dewpost_store_bytes', 'gauge', 'Size of the store.', known(health.store.bytes)),
    family(
      'dewpost_store_free_bytes',
      'gauge',
      'Room left where the store is.',
      known(health.store.freeBytes),
    ),
    family('dewpost_broker_connected', 'gauge', '1 while the broker can be reached.', [
      { value: parts.brokerConnected() ? 1 : 0 },
    ]),
    family('dewpost_store_keeps', 'gauge', '1 while the store keeps what it is given.', [
      { value: health.store.trouble === null && health.store.bytes !== null ? 1 : 0 },
    ]),
    family(
      'dewpost_last_backup_timestamp_seconds',
      'gauge',
      'When the newest good backup was made.',
      seconds(health.backupAt),
    ),
    family('dewpost_build_info', 'gauge', 'Which version this is; always 1.', [
      { labels: { version: counts.version }, value: 1 },
    ]),
    family(
      'dewpost_http_requests_total',
      'counter',
      'Requests answered, by method and status.',
      [...counts.requests].map(([key, value]) => {
        const [method = '', code = ''] = key.split(' ');
        return { labels: { method, code }, value };
      }),
    ),
    family('dewpost_http_request_seconds_total', 'counter', 'Time spent on answering.', [
      { value: counts.seconds() },
    ]),
    family('dewpost_open_pages', 'gauge', 'Pages that listen to what happens.', [
      { value: counts.openPages() },
    ]),
    family('dewpost_sign_in_failures_total', 'counter', 'Tries to get in that failed.', [
      { value: counts.failedSignIns() },
    ]),
    ...processMetrics(),
  ].join('');
}

function refusedOfADay(parts: ApiParts): Sample[] {
  const sums = new Map<string, number>();
  for (const { reason, count } of parts.store.refusals.since(parts.clock.now() - DAY))
    sums.set(reason, (sums.get(reason) ?? 0) + count);
  return [...sums].map(([reason, value]) => ({ labels: { reason }, value }));
}

function alarmFamilies({ alarms }: ApiParts): string[] {
  const { events, messages } = alarms.now();
  const count = (state: string) => messages.filter((one) => one.state === state).length;
  return [
    family('dewpost_alarms_unseen', 'gauge', 'Alarms, standing or over, that nobody has seen.', [
      { value: events.filter(({ head }) => head.seenAt === null).length },
    ]),
    family('dewpost_alarm_messages_waiting', 'gauge', 'Messages about alarms not sent yet.', [
      { value: count('waiting') + count('held') },
    ]),
    family('dewpost_alarm_ways_failing', 'gauge', 'Ways to people that do not work now.', [
      { value: alarms.troubles().length },
    ]),
  ];
}
