import * as contract from '../../contract/index.ts';
import type { App } from '../app.ts';
import { frostTonightOf } from '../frostTonight.ts';
import type { ApiParts } from '../parts.ts';
import { scorecardOf } from '../scorecard.ts';

export function frostNightRoutes(app: App, parts: ApiParts) {
  app.get('/api/frost/curves', { schema: { response: { 200: contract.frostTonight } } }, () =>
    frostTonightOf(parts),
  );
  app.get('/api/learn/scorecard', { schema: { response: { 200: contract.scorecard } } }, () =>
    scorecardOf(parts),
  );
}
