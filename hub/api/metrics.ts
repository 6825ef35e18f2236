import type { Health } from '../contract/index.ts';
import { placeFacts } from '../snapshot/index.ts';
import type { ApiParts } from './parts.ts';

const DAY = 86_400_000; // ms

type Sample = { readonly labels?: Readonly<Record<string, string>>; readonly value: number };

const escaped = (value: string) =>
  value.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');

function family(name: string, type: 'gauge' | 'counter', help: string, samples: readonly Sample[]) {
  if (samples.length === 0) return '';
  const lines = samples.map(({ labels = {}, value }) => {
    const pairs = Object.entries(labels).map(([key, text]) => `${key}="${escaped(text)}"`);
    return `${name}${pairs.length > 0 ? `{${pairs.join(',')}}` : ''} ${value}`;
  });
  return `# HELP ${name} ${help}\n# TYPE ${name} ${type}\n${lines.join('\n')}\n`;
}

const seconds = (time: string | null) =>
  time === null ? [] : [{ value: Date.parse(time) / 1000 }];

/** Prometheus text format, version 0.0.4. What is not known has no sample. */
export function metricsText(parts: ApiParts, health: Health): string {
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
  const counts = new Map<string, number>();
  for (const { kind } of looked?.open ?? []) counts.set(kind, (counts.get(kind) ?? 0) + 1);
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
      'dewpost_humidity_percent',
      'gauge',
      'Newest relative humidity of a spot.',
      of('humidity'),
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
      [...counts].map(([kind, value]) => ({ labels: { kind }, value })),
    ),
    family('dewpost_alarms_raised', 'gauge', 'Alarms that stand raised.', [
      { value: parts.store.alarms.raised().length },
    ]),
    family(
      'dewpost_refused_in_a_day',
      'gauge',
      'Messages and readings refused or doubted in the last 24 hours, by reason.',
      refusedOfADay(parts),
    ),
    family('dewpost_store_bytes', 'gauge', 'Size of the store.', [{ value: health.store.bytes }]),
    family('dewpost_store_free_bytes', 'gauge', 'Room left where the store is.', [
      { value: health.store.freeBytes },
    ]),
    family('dewpost_store_keeps', 'gauge', '1 while the store keeps what it is given.', [
      { value: health.store.trouble === null ? 1 : 0 },
    ]),
    family(
      'dewpost_last_backup_timestamp_seconds',
      'gauge',
      'When the newest good backup was made.',
      seconds(health.backupAt),
    ),
    family('process_resident_memory_bytes', 'gauge', 'Resident memory of the hub.', [
      { value: process.memoryUsage.rss() },
    ]),
  ].join('');
}

function refusedOfADay(parts: ApiParts): Sample[] {
  const sums = new Map<string, number>();
  for (const { reason, count } of parts.store.refusals.since(parts.clock.now() - DAY))
    sums.set(reason, (sums.get(reason) ?? 0) + count);
  return [...sums].map(([reason, value]) => ({ labels: { reason }, value }));
}
