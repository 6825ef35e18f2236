import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { keptSettings, shownSettings } from '../shownSettings.ts';

// Where people have roles, these routes are the grower's: all of this file.
// GET and POST /api/alarms/settings, POST /api/alarms/test, POST /api/alarms/rehearsal.

/** Tests by hand, per address and minute. Ours: enough to set a server up, too few to pester. */
const few = { rateLimit: { max: 12, timeWindow: 60_000 } };

/** Who is woken, in which order and by what; and tests of it. */
export function alarmSettingsRoutes(app: App, parts: ApiParts) {
  const { alarms } = parts;
  const shown = () =>
    shownSettings(alarms.settings(), {
      mailPassword: alarms.hasSecret('mailPassword'),
      webhookSecret: alarms.hasSecret('webhookSecret'),
    });

  app.get('/api/alarms/settings', { schema: { response: { 200: contract.alarmSettings } } }, shown);

  app.post(
    '/api/alarms/settings',
    {
      schema: { body: contract.changeAlarmSettings, response: { 200: contract.alarmSettings } },
    },
    (request) => {
      const { mail, webhookSecret } = request.body;
      const mailPassword = mail === null ? null : mail?.password;
      let next: ReturnType<typeof keptSettings>;
      try {
        next = keptSettings(alarms.settings(), request.body);
      } catch (error) {
        if (error instanceof RangeError) throw new Refused(400, error.message);
        throw error;
      }
      alarms.change(next, { mailPassword, webhookSecret }, whoIs(request));
      return shown();
    },
  );

  app.post(
    '/api/alarms/test',
    { config: few, schema: { body: contract.testChannel, response: { 200: contract.tested } } },
    async (request) => {
      const { person, channel } = request.body;
      const sent = await alarms.test(person, channel, whoIs(request));
      if (!sent)
        throw new Refused(404, `Expected somebody with a ${channel} in person, got "${person}"`);
      return sent;
    },
  );

  app.post(
    '/api/alarms/rehearsal',
    { config: few, schema: { response: { 200: z.object({}) } } },
    (request) => {
      alarms.rehearse(whoIs(request));
      return {};
    },
  );
}
