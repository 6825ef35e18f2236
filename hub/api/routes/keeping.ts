import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import { type ApiParts, Refused } from '../parts.ts';
import { iso, isoOrNull } from '../present.ts';

export function keepingRoutes(app: App, parts: ApiParts) {
  const facts = () => {
    const found = parts.keeping?.();
    if (!found) throw new Refused(503, 'Expected a hub that looks after its store, got none');
    return found;
  };
  const shown = (): contract.Keeping => {
    const found = facts();
    const { rawFrom, backup, mended } = found;
    return {
      ...found,
      rawFrom: isoOrNull(rawFrom),
      backup: { ...backup, at: isoOrNull(backup.at) },
      mended: mended && { ...mended, damaged: [...mended.damaged], at: iso(mended.at) },
    };
  };

  app.get('/api/keeping', { schema: { response: { 200: contract.keeping } } }, shown);

  app.post('/api/keeping/backup', { schema: { response: { 200: contract.keeping } } }, () => {
    const { wanted, absent } = facts().backup;
    if (!wanted)
      throw new Refused(409, 'Expected a hub started with --backup FOLDER, got one without');
    if (absent)
      throw new Refused(409, 'Expected the folder for backups, got none: is the stick in?');
    parts.backUpNow?.();
    return shown();
  });
}
