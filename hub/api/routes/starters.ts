import { sunTimes } from '../../../rules/heat/index.ts';
import { instant } from '../../../rules/units.ts';
import * as contract from '../../contract/index.ts';
import { farmChoices, starterCrops } from '../../farm/index.ts';
import { hashPassword, newSecret } from '../../passwords.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { isoOrNull } from '../present.ts';

/** Until a probe or the farm tells how often it speaks, ms. */
const USUAL_EVERY = 300_000;

type Span = readonly [number, number];
const spanOf = ({ value, source }: { readonly value: Span; readonly source: string }) => ({
  value: [...value] as [number, number],
  source,
});

/** What helps to describe a farm from nothing: crops to begin with, the sun, passwords for probes. */
export function starterRoutes(app: App, parts: ApiParts) {
  const { store, clock } = parts;

  app.get(
    '/api/starter-crops',
    { schema: { response: { 200: contract.starterCrop.array() } } },
    () =>
      starterCrops.map(({ band, days, disease, ...crop }) => ({
        ...crop,
        band: spanOf(band),
        ...(days && { days: spanOf(days) }),
        disease: [...disease],
      })),
  );

  app.get(
    '/api/farm/choices',
    { schema: { response: { 200: contract.farmChoices } } },
    farmChoices,
  );

  // What a person can hold against the window: whether a position is the farm's own.
  app.get(
    '/api/sun',
    { schema: { querystring: contract.sunAsked, response: { 200: contract.sunToday } } },
    ({ query }) => {
      const { rise, set } = sunTimes(instant(clock.now()), query.lat, query.lon);
      return { rise: isoOrNull(rise), set: isoOrNull(set) };
    },
  );

  app.post(
    '/api/probes/:id/password',
    {
      config: { secret: true },
      schema: { params: contract.probeParam, response: { 200: contract.probeSecret } },
    },
    async (request) => {
      const { id } = request.params;
      if (store.people.secret(`listener:${id}`) !== undefined)
        throw new Refused(409, `Expected a name that no listener has, got ${id}`);
      const password = newSecret(5);
      const hash = await hashPassword(password);
      store.transaction(() => {
        store.probes.setPassword(id, store.probes.get(id)?.everyMs ?? USUAL_EVERY, hash);
        store.journal.add({
          ...{ t: clock.now(), who: whoIs(request), what: 'probe-password', place: null },
          ...{ subject: id, body: {} },
        });
      });
      return { user: id, password };
    },
  );
}
