import type { Logger } from 'pino';
import type { Sent } from '../../alarms/index.ts';
import type { Trouble } from '../../api/index.ts';
import type { Clock } from '../../clock.ts';
import type { Farm } from '../../farm/index.ts';
import type { AlarmsKept } from './alarmsKept.ts';

const MINUTE = 60_000; // ms
/** A look is due every five minutes; a hub that has not looked for this long does not live. Ours. */
const LOOKED_WITHIN = 12 * MINUTE;

export type AliveParts = {
  readonly clock: Clock;
  readonly log: Logger;
  readonly kept: AlarmsKept;
  readonly farm: () => Farm;
  readonly lastLook: () => { readonly at: number; readonly failure: string | null } | null;
  readonly post: (url: string, id: string, json: unknown) => Promise<Sent>;
};

/**
 * Tells something outside every so many minutes that the hub lives and looks at the farm, so that
 * its silence is noticed there. A hub that runs and cannot look keeps quiet as one that is gone.
 */
export function makeAlive({ clock, log, kept, farm, lastLook, post }: AliveParts) {
  let lastAt = Number.NEGATIVE_INFINITY;
  let trouble: Trouble | null = null;
  let over = false;
  return {
    due(now: number) {
      const { alive } = kept.settings();
      if (alive === null) {
        trouble = null;
        return;
      }
      const look = lastLook();
      if (now - lastAt < alive.everyMinutes * MINUTE) return;
      if (look === null || look.failure !== null || now - look.at > LOOKED_WITHIN) return;
      lastAt = now;
      const t = new Date(now).toISOString();
      const evaluatedAt = new Date(look.at).toISOString();
      const json = { schema: 'dewpost-alive/1', farm: farm().file.farm.name, t, evaluatedAt };
      post(alive.url, `alive|${t}`, json).then(
        ({ outcome, words }) => {
          if (over) return;
          const since = trouble?.since ?? clock.now();
          trouble = outcome === 'delivered' ? null : { person: '', channel: 'alive', since, words };
        },
        (error) => log.error(error, 'the "I am alive" message failed'),
      );
    },
    trouble: () => trouble,
    stop() {
      over = true;
    },
  };
}
