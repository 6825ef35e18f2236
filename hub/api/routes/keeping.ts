import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso, isoOrNull } from '../present.ts';

export function keepingRoutes(app: App, parts: ApiParts) {
  app.get('/api/keeping', { schema: { response: { 200: contract.keeping } } }, () => {
    const facts = parts.keeping?.();
    if (!facts) throw new Refused(503, 'Expected a hub that looks after its store, got none');
    const { rawFrom, backup, mended } = facts;
    return {
      ...facts,
      rawFrom: isoOrNull(rawFrom),
      backup: { ...backup, at: isoOrNull(backup.at) },
      mended: mended && { ...mended, damaged: [...mended.damaged], at: iso(mended.at) },
    };
  });
}
