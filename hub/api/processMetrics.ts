import { readdirSync, readFileSync } from 'node:fs';
import { family, known } from './metricFamily.ts';

/** Files below /proc are there on Linux only; elsewhere these figures are not known. */
function read<Shape>(work: () => Shape): Shape | null {
  try {
    return work();
  } catch {
    return null;
  }
}

const BOOKED = /^VmSize:\s+(\d+) kB$/m;
const MOST_FILES = /^Max open files\s+(\d+)/m;
const number = (text: string, pattern: RegExp) => {
  const found = pattern.exec(text)?.[1];
  return found === undefined ? null : Number(found);
};

/**
 * The standard figures of a process, by the names of the Prometheus documentation, "Writing client
 * libraries", section "Process metrics".
 */
export function processMetrics(): string[] {
  const { user, system } = process.cpuUsage();
  const status = read(() => readFileSync('/proc/self/status', 'utf8')) ?? '';
  const limits = read(() => readFileSync('/proc/self/limits', 'utf8')) ?? '';
  const booked = number(status, BOOKED);
  const started = Math.round(performance.timeOrigin / 10) / 100; // s since 1970
  const { heapUsed } = process.memoryUsage();
  const gauge = (name: string, help: string, value: number | null) =>
    family(`process_${name}`, 'gauge', help, known(value));
  return [
    family('process_cpu_seconds_total', 'counter', 'Processor time used, user and system.', [
      { value: (user + system) / 1e6 },
    ]),
    gauge(
      'open_fds',
      'Open files and sockets.',
      read(() => readdirSync('/proc/self/fd').length),
    ),
    gauge('max_fds', 'Files and sockets that may be open.', number(limits, MOST_FILES)),
    gauge(
      'virtual_memory_bytes',
      'Virtual memory of the hub.',
      booked === null ? null : booked * 1024,
    ),
    gauge('resident_memory_bytes', 'Resident memory of the hub.', process.memoryUsage.rss()),
    gauge('heap_bytes', 'Heap of the hub in use.', heapUsed),
    gauge('start_time_seconds', 'When the hub was started, since 1970.', started),
  ];
}
