// What may wait for the hub: what somebody did, saw or decided. What changes the farm's description,
// people, limits or alarms may not: it has to be seen what it does. Nor may a silence, which would begin late.

const rules = [
  ['answer', 'POST', /^\/api\/tasks\/[^/]+\/answer$/],
  ['undoMove', 'POST', /^\/api\/tasks\/[^/]+\/undo-move$/],
  ['putAway', 'POST', /^\/api\/lots$/],
  ['lot', 'PATCH', /^\/api\/lots\/[^/]+$/],
  ['sow', 'POST', /^\/api\/batches$/],
  ['repeat', 'POST', /^\/api\/batches\/repeat$/],
  ['batch', 'PATCH', /^\/api\/batches\/[^/]+$/],
  ['loss', 'POST', /^\/api\/losses$/],
  ['lossChange', 'PATCH', /^\/api\/losses\/[^/]+$/],
  ['quietWeek', 'POST', /^\/api\/losses\/quiet-weeks$/],
  ['pick', 'POST', /^\/api\/picks$/],
  ['pickChange', 'PATCH', /^\/api\/picks\/[^/]+$/],
  ['action', 'POST', /^\/api\/cool-rooms\/[^/]+\/actions$/],
  ['check', 'POST', /^\/api\/probes\/[^/]+\/checks$/],
  ['fruit', 'POST', /^\/api\/patches\/[^/]+\/fruit$/],
  ['seen', 'POST', /^\/api\/alarms\/[^/]+\/seen$/],
  ['vents', 'POST', /^\/api\/places\/[^/]+\/vents$/],
  ['ventsBack', 'POST', /^\/api\/places\/[^/]+\/vents\/undo$/],
  ['want', 'POST', /^\/api\/wants$/],
] as const;

export type SaidKind = (typeof rules)[number][0];

/** What a command is, when it is one that may wait; null for all others. */
export const kindOf = (method: string, path: string): SaidKind | null =>
  rules.find(([, verb, pattern]) => verb === method && pattern.test(path))?.[0] ?? null;
