import * as contract from '../../contract/index.ts';
import { stripsFacts } from '../../snapshot/index.ts';
import { shown, stripWords } from '../../words/index.ts';
import type { App } from '../app.ts';
import { newest } from '../newest.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { openTasks, shownNight, shownPlace } from '../present.ts';
import { shownCoolRoom } from '../presentRoom.ts';
import { shownFarm } from '../shownFarm.ts';
import { shownToday } from '../shownToday.ts';
import { shownWho } from '../shownWho.ts';
import { solarOf } from '../solarOf.ts';

export function todayRoutes(app: App, parts: ApiParts) {
  app.get('/api/today', { schema: { response: { 200: contract.today } } }, () => shownToday(parts));

  app.get('/api/first', { schema: { response: { 200: contract.first } } }, ({ session }) => {
    const may = parts.open || session !== null;
    return {
      who: shownWho(parts, session),
      farm: may ? shownFarm(parts) : null,
      // Before the first look there is none, and why is what /api/today says.
      today: may && parts.lastLook() ? shownToday(parts) : null,
    };
  });

  app.get('/api/strips', { schema: { response: { 200: contract.strips } } }, () => {
    const looked = newest(parts);
    const facts = stripsFacts(looked.snapshot, looked.outlook);
    const tasks = openTasks(parts);
    return {
      ...facts,
      now: parts.clock.now(),
      strips: facts.strips.map((strip) => {
        const place = parts.farm().place(strip.place);
        const now = shownPlace(parts, looked, strip.place);
        return {
          ...strip,
          spot: strip.spot as contract.Spot | null,
          name: place?.name ?? strip.place,
          kind: place?.kind ?? ('outdoor' as const),
          pins: tasks
            .filter((task) => task.place === strip.place && task.doBy !== null)
            .map(({ id, title, doBy }) => ({ task: id, t: Date.parse(doBy ?? ''), title })),
          words: stripWords(strip, now, parts.calendar().zone),
        };
      }),
    };
  });

  app.get(
    '/api/frost/tonight',
    { schema: { response: { 200: contract.nightForecast.array() } } },
    () => newest(parts).outlook.frost.map(shownNight),
  );

  const roomNow = (id: string) => {
    const room = newest(parts).outlook.coolRooms.find((one) => one.id === id);
    if (room) return room;
    throw new Refused(404, `Expected the id of a cool room, got ${shown(id)}`);
  };

  app.get(
    '/api/cool-rooms/:id',
    { schema: { params: contract.idParam, response: { 200: contract.coolRoom } } },
    ({ params }) => shownCoolRoom(roomNow(params.id)),
  );

  app.get(
    '/api/cool-rooms/:id/solar',
    {
      schema: {
        params: contract.idParam,
        querystring: contract.solarAsked,
        response: { 200: contract.solarSheet },
      },
    },
    ({ params, query }) => solarOf(roomNow(params.id), query),
  );
}
