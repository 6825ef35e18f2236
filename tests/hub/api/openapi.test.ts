import { expect, test } from 'vitest';
import { servedHub } from '../smallFarm.ts';

type Schema = Record<string, unknown>;
type Operation = {
  parameters?: { name: string; in: string; required?: boolean; schema?: Schema; $ref?: string }[];
  requestBody?: { content: Record<string, { schema: Schema }> };
  responses: Record<string, { description?: string }>;
};
type Document = {
  openapi: string;
  info: { title: string; version: string };
  paths: Record<string, Record<string, Operation>>;
};

const openapi = async (): Promise<Document> => {
  const { app } = await servedHub();
  const reply = await app.inject({ url: '/api/openapi.json' });
  expect(reply.statusCode).toBe(200);
  expect(reply.headers['content-type']).toMatch(/^application\/json/);
  return reply.json();
};

// Source: OpenAPI Specification 3.1.0 (2021): 4.8.1 root, 4.8.2 info, 4.8.8 paths, 4.8.10 operation,
// 4.8.12 parameter ("path": required must be true), 4.8.16 responses (at least one, described).
test('the description is OpenAPI 3.1 by the rules of its specification', async () => {
  const document = await openapi();
  expect(document.openapi).toMatch(/^3\.1\.\d+$/);
  expect(document.info).toMatchObject({ title: 'Dewpost', version: expect.any(String) });
  for (const [path, item] of Object.entries(document.paths)) {
    expect(path).toMatch(/^\//);
    const inPath = [...path.matchAll(/\{([^}]+)\}/g)].map(([, name]) => name);
    expect(path).not.toContain(':');
    for (const [method, operation] of Object.entries(item)) {
      const where = `${method} ${path}`;
      expect(['get', 'put', 'post', 'delete', 'options', 'head', 'patch', 'trace']).toContain(
        method,
      );
      expect(Object.keys(operation.responses).length, where).toBeGreaterThan(0);
      for (const response of Object.values(operation.responses))
        expect(typeof response.description, where).toBe('string');
      const declared = (operation.parameters ?? []).filter((one) => one.in === 'path');
      expect(declared.map(({ name }) => name).sort(), where).toEqual(inPath.sort());
      for (const parameter of operation.parameters ?? []) {
        expect(parameter.schema, where).toBeDefined();
        if (parameter.in === 'path') expect(parameter.required, where).toBe(true);
      }
      const names = (operation.parameters ?? []).map(({ name, in: place }) => `${place} ${name}`);
      expect(new Set(names).size, where).toBe(names.length);
      if (method === 'get') expect(operation.requestBody, where).toBeUndefined();
    }
  }
});

test('every reference leads somewhere, and no word of OpenAPI 3.0 is left', async () => {
  const document = await openapi();
  const text = JSON.stringify(document);
  for (const [, ref = ''] of text.matchAll(/"\$ref":"([^"]+)"/g)) {
    expect(ref).toMatch(/^#\//);
    const target = ref
      .slice(2)
      .split('/')
      .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], document);
    expect(target, ref).toBeDefined();
  }
  expect(text).not.toContain('"nullable":');
});

test('what may be unknown may be null', async () => {
  const { paths } = await openapi();
  const today = JSON.stringify(paths['/api/places/{id}']?.get?.responses);
  expect(today).toMatch(
    /"temperature":\{("anyOf":\[\{"type":"number"\},\{"type":"null"\}\]|"type":\["number","null"\])/,
  );
});

const listed = async () => {
  const { paths } = await openapi();
  return Object.entries(paths).flatMap(([path, item]) =>
    Object.keys(item).map((method) => `${method.toUpperCase()} ${path}`),
  );
};

test('the routes for today, places, tasks, probes and the cool room are described', async () => {
  expect(await listed()).toEqual(
    expect.arrayContaining([
      'GET /api/health',
      'GET /api/today',
      'GET /api/tasks',
      'POST /api/tasks/{id}/answer',
      'GET /api/places',
      'GET /api/places/{id}',
      'GET /api/places/{id}/days',
      'GET /api/series',
      'GET /api/frost/tonight',
      'GET /api/cool-rooms/{id}',
      'GET /api/probes',
      'POST /api/probes/{id}/place',
      'GET /api/events',
      'GET /metrics',
    ]),
  );
});

test('the routes for lots, the record and probe checks are described', async () => {
  expect(await listed()).toEqual(
    expect.arrayContaining([
      'GET /api/lots',
      'POST /api/lots',
      'PATCH /api/lots/{id}',
      'GET /api/cool-rooms/{id}/log',
      'POST /api/cool-rooms/{id}/actions',
      'GET /api/food-clocks',
      'POST /api/probes/{id}/checks',
    ]),
  );
});

test('the routes for losses and photos are described', async () => {
  expect(await listed()).toEqual(
    expect.arrayContaining([
      'GET /api/losses',
      'POST /api/losses',
      'PATCH /api/losses/{id}',
      'GET /api/losses/{id}',
      'POST /api/losses/quiet-weeks',
      'GET /api/learn/losses',
      'POST /api/photos',
    ]),
  );
});
