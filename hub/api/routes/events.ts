import type { ServerResponse } from 'node:http';
import { told } from '../../alarms/index.ts';
import { type EventData, type EventName, quantity, spot } from '../../contract/index.ts';
import { storeTrouble } from '../../words/index.ts';
import type { App } from '../app.ts';
import type { ApiParts } from '../parts.ts';
import { iso, nameOf, shownTask } from '../present.ts';
import type { Sessions } from '../sessions.ts';
import { shownProbe } from '../shownProbe.ts';
import type { Streams } from '../streams.ts';
import { unplacedNews } from '../unplacedNews.ts';

const DAY = 86_400_000; // ms
/** A page that hears nothing for two and a half of these knows that the link is lost. */
const PULSE = 10_000; // ms of a wall clock

/** Server-sent events (HTML standard, section 9.2): one stream per page. */
export function eventRoutes(
  app: App,
  parts: ApiParts,
  { streams, sessions }: { readonly streams: Streams; readonly sessions: Sessions },
) {
  const send = <Name extends EventName>(
    name: Name,
    data: EventData[Name],
    only?: ServerResponse,
  ) => {
    if (streams.count() === 0) return;
    streams.send(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`, only);
  };
  const pulse = (only?: ServerResponse) => {
    const trouble = parts.store.trouble();
    const store = trouble && storeTrouble[trouble];
    send('pulse', { now: iso(parts.clock.now()), speed: parts.clock.speed, store }, only);
  };
  const timer = setInterval(() => {
    // A sign-in that has run out, or was ended by another program, ends its open pages too.
    streams.endIf(({ key }) => sessions.get(key) === null);
    pulse();
  }, PULSE);
  timer.unref();

  const unplaced = unplacedNews((id) => {
    const row = parts.store.probes.get(id);
    if (!row || streams.count() === 0) return;
    const refused = parts.store.refusals.since(parts.clock.now() - DAY);
    const own = refused.filter(({ source }) => source === id);
    send('probe', shownProbe(parts, row, own));
  });
  const off = [
    parts.feed.on('farm', () => send('farm', { t: iso(parts.clock.now()) })),
    parts.feed.on('readings', (readings) => {
      if (streams.count() === 0) return;
      for (const reading of readings) {
        const known = quantity.safeParse(reading.quantity);
        const here = parts.snapshots.spots.currentOf(reading.probe);
        if (!here) unplaced.spoke(reading.probe);
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
    parts.feed.on('alarms', ({ at }) => send('alarms', { t: iso(at) })),
    parts.feed.on('store', () => pulse()),
    parts.feed.on('looked', ({ at }) => send('looked', { evaluatedAt: iso(at) })),
  ];
  app.addHook('preClose', async () => {
    clearInterval(timer);
    for (const stop of off) stop();
    unplaced.stop();
    streams.endAll();
  });

  // No HEAD: an answer without a body that never ends would only hold a connection.
  app.get('/api/events', { exposeHeadRoute: false }, (request, reply) => {
    streams.mayOpen();
    reply.hijack();
    const page = reply.raw;
    page.writeHead(200, {
      ...(reply.getHeaders() as Record<string, string>),
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      'x-accel-buffering': 'no',
    });
    streams.open(page, request.session);
    page.write('retry: 2000\n\n');
    pulse(page);
  });
}
