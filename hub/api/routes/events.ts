import type { ServerResponse } from 'node:http';
import { told } from '../../alarms/index.ts';
import { type EventData, type EventName, quantity, spot } from '../../contract/index.ts';
import { storeTrouble } from '../../words/index.ts';
import type { App } from '../app.ts';
import type { ApiParts } from '../parts.ts';
import { iso, nameOf, shownTask } from '../present.ts';

/** A page that hears nothing for two and a half of these knows that the link is lost. */
const PULSE = 10_000; // ms of a wall clock
/** A page that does not read is let go before it fills the memory. Ours. */
const MOST_UNREAD = 1024 * 1024; // bytes

/** Server-sent events (HTML standard, section 9.2): one stream per page. */
export function eventRoutes(app: App, parts: ApiParts) {
  const pages = new Set<ServerResponse>();

  const send = <Name extends EventName>(
    name: Name,
    data: EventData[Name],
    only?: ServerResponse,
  ) => {
    if (pages.size === 0) return;
    const text = `event: ${name}\ndata: ${JSON.stringify(data)}\n\n`;
    for (const page of only ? [only] : pages) {
      if (page.writableLength > MOST_UNREAD) {
        page.destroy();
        continue;
      }
      page.write(text);
    }
  };
  const pulse = (only?: ServerResponse) => {
    const trouble = parts.store.trouble();
    const store = trouble && storeTrouble[trouble];
    send('pulse', { now: iso(parts.clock.now()), speed: parts.clock.speed, store }, only);
  };
  const timer = setInterval(() => pulse(), PULSE);
  timer.unref();

  const off = [
    parts.feed.on('readings', (readings) => {
      if (pages.size === 0) return;
      for (const reading of readings) {
        const known = quantity.safeParse(reading.quantity);
        const here = parts.snapshots.spots.currentOf(reading.probe);
        if (reading.flag !== null || !known.success || !here) continue;
        send('reading', {
          place: here.place,
          spot: spot.parse(here.spot),
          probe: reading.probe,
          quantity: known.data,
          t: iso(reading.t),
          value: reading.value,
        });
      }
    }),
    parts.feed.on('task', (task) => send('task', shownTask(task, nameOf(parts, task.place)))),
    parts.feed.on('alarm', (alarm) => send('alarm', told(alarm) as EventData['alarm'])),
    parts.feed.on('store', () => pulse()),
    parts.feed.on('looked', ({ at }) => send('looked', { evaluatedAt: iso(at) })),
  ];
  app.addHook('preClose', async () => {
    clearInterval(timer);
    for (const stop of off) stop();
    for (const page of pages) page.end();
  });

  app.get('/api/events', (request, reply) => {
    reply.hijack();
    const page = reply.raw;
    page.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-accel-buffering': 'no',
    });
    pages.add(page);
    request.raw.on('close', () => pages.delete(page));
    page.write('retry: 2000\n\n');
    pulse(page);
  });
}
