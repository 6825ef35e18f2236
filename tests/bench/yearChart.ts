// A year of one place, as its page asks for it: the facts of 365 days, and one quantity in at most
// 400 points. Asked of the real server (Fastify inject, no port) on a store of five years. The
// first time a day is asked for it is worked out and kept; after that it is only read, all but today.

import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildServer } from '../../hub/api/index.ts';
import { placeName } from './benchFarm.ts';
import { END, folder, historyFile, openCore } from './history.ts';
import { figure, middle } from './report.ts';

const DAY = 86_400_000;
const ROUNDS = 25;
const day = (t: number) => new Date(t).toISOString().slice(0, 10);

export async function yearChart() {
  const file = join(folder, 'year-chart.db');
  copyFileSync(historyFile('5-years'), file);
  const { core } = openCore(file, END);
  core.look();
  const parts = { ...core, brokerConnected: () => true, open: true };
  const app = await buildServer(parts, {
    cookieSecret: 'for measuring only, kept nowhere',
    pages: null,
    version: '0',
    onFault: (error) => {
      throw error;
    },
  });
  const ask = async (url: string, rows: (body: unknown) => number) => {
    const begin = performance.now();
    const { statusCode, payload } = await app.inject({ url });
    const took = performance.now() - begin;
    const got = statusCode === 200 ? rows(JSON.parse(payload)) : 0;
    if (got < 365) throw new Error(`Expected 365 days from ${url}, got ${got}: ${payload}`);
    return took;
  };
  const days = (place: string) =>
    ask(
      `/api/places/${place}/days?from=${day(END - 364 * DAY)}&to=${day(END)}`,
      (body) => (body as unknown[]).length,
    );
  const from = new Date(END - 365 * DAY).toISOString();
  const series = (place: string) =>
    ask(
      `/api/series?place=${place}&quantity=temperature&from=${from}&to=${new Date(END).toISOString()}&points=400`,
      (body) => (body as { t: unknown[] }).t.length,
    );

  const first: number[] = [];
  for (let place = 2; place < 7; place++) first.push(await days(placeName(place)));
  const again: number[] = [];
  const points: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const place = placeName(2 + (round % 5));
    again.push(await days(place));
    points.push(await series(place));
  }
  figure('year-chart-5-years-days-first-time', middle(first), 'ms');
  figure('year-chart-5-years-days', middle(again), 'ms');
  figure('year-chart-5-years-series', middle(points), 'ms');
  await app.close();
  core.close();
}
