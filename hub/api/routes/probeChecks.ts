import { z } from 'zod';
import * as contract from '../../contract/index.ts';
import { makeChecks } from '../../record/index.ts';
import { shown } from '../../words/index.ts';
import { whoIs } from '../access.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { openTasks } from '../present.ts';
import { shownCheck } from '../roomLog.ts';
import { saidAt } from '../saidAt.ts';

/** Probes held against melting ice: kept with their date, and their correction where it is wanted. */
export function probeCheckRoutes(app: App, parts: ApiParts) {
  const checks = makeChecks(parts.store);
  const known = (id: string) => {
    if (parts.store.probes.get(id)) return id;
    throw new Refused(404, `Expected a probe that was heard, got ${shown(id)}`);
  };
  const params = z.object({ id: contract.probeName });
  const shown = (id: string) =>
    checks
      .of([id])
      .map((check) => shownCheck(check, parts.clock.now()))
      .reverse();

  app.get(
    '/api/probes/:id/checks',
    { schema: { params, response: { 200: contract.probeCheck.array() } } },
    (request) => shown(known(request.params.id)),
  );

  /** What a check adds, on top of what earlier ones do. @throws Refused for a reading no probe makes. */
  const corrected = (...check: Parameters<typeof parts.corrections.by>) => {
    try {
      return parts.corrections.by(...check);
    } catch (error) {
      if (error instanceof RangeError) throw new Refused(400, `${error.message}, in points`);
      throw error;
    }
  };

  app.post(
    '/api/probes/:id/checks',
    {
      schema: {
        params,
        body: contract.enterCheck,
        response: { 200: contract.probeCheck.array() },
      },
    },
    (request) => {
      const probe = known(request.params.id);
      const { at: told, points, by: name, apply } = request.body;
      const now = saidAt(request, parts.clock);
      const at = told === undefined ? now : Date.parse(told);
      if (at > now) throw new Refused(400, `Expected a time that is past in at, got ${told}`);
      const by = name ?? request.session?.name ?? null;
      if (by === null)
        throw new Refused(400, 'Expected the name of who checked it in by, got nothing');
      if (points.length === 2 && points[0]?.reading === points[1]?.reading)
        throw new Refused(400, 'Expected two readings that differ in points, got the same twice');
      const { correction, doubts } = corrected(probe, points, at);
      if (apply && doubts.length > 0)
        throw new Refused(
          409,
          `Expected a second point 15 °C or more away and a slope from 0.97 to 1.03 to correct by, got ${doubts.join(' and ')}: store it without apply, or leave the second point out`,
        );
      const place = parts.snapshots.spots.currentOf(probe)?.place ?? null;
      const who = whoIs(request);
      parts.store.transaction(() => {
        checks.add({ probe, at, by, points, applied: apply, doubts }, place, who, now);
        if (apply)
          parts.corrections.begin(
            { ...correction, probe, quantity: 'temperature', from: at },
            who,
            now,
          );
      });
      remindersDone(probe, who);
      return shown(probe);
    },
  );

  /** A reminder to check it is done with the check, if nothing else is asked of the probe. */
  function remindersDone(probe: string, who: string) {
    const given = { answer: 'done', until: null, note: null } as const;
    for (const { id, kind, subject, because } of openTasks(parts))
      if (kind === 'see-to-probe' && subject === probe && because.every(isReminder))
        parts.answer(id, given, who);
  }
}

const isReminder = ({ what }: { readonly what: string }) =>
  what === 'never-checked-days' || what === 'days-since-check';
