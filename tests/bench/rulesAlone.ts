// The rules by themselves, without store or wires: a year of readings every five minutes through
// wet spells, the facts of 365 days, every way of judging a disease and heat units, and one decision round over twenty places with
// the snapshot the hub itself takes. Tells whether time goes into the rules or around them.

import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { dayFacts } from '../../rules/days/index.ts';
import { decide } from '../../rules/decide/index.ts';
import {
  type Circumstances,
  type Disease,
  diseases,
  diseasesOf,
} from '../../rules/disease/index.ts';
import { degreeDays } from '../../rules/heat/index.ts';
import { celsius, hours, instant, percent } from '../../rules/units.ts';
import {
  type AirRead,
  leafWetRule,
  signsByHumidity,
  wetPieces,
  wetSpells,
} from '../../rules/wetness/index.ts';
import { valueAt } from './benchFarm.ts';
import { END, folder, historyFile, openCore } from './history.ts';
import { figure, middle, timed } from './report.ts';

const STEP = 300_000; // ms
const DAY = 86_400_000;
const PER_DAY = DAY / STEP;
const ROUNDS = 7;
const rounds = (work: () => unknown, count = ROUNDS) =>
  middle(Array.from({ length: count }, () => timed(work)));

export async function rulesAlone() {
  const from = END - 365 * DAY;
  const year = Array.from({ length: 365 * PER_DAY }, (_, i) => {
    const t = from + i * STEP;
    return {
      t: instant(t),
      temperature: celsius(valueAt(2, 'temperature', t)),
      humidity: percent(valueAt(2, 'humidity', t)),
    };
  });
  const warmth = year.map(({ t, temperature }) => ({ t, value: temperature }));
  // As the hub gives them: the day itself, the day before and two hours after.
  const days = Array.from({ length: 365 }, (_, i) => ({
    readings: year.slice(Math.max(0, (i - 1) * PER_DAY), (i + 1) * PER_DAY + 24),
    rule: {
      from: instant(from + i * DAY),
      to: instant(from + (i + 1) * DAY),
      base: celsius(8),
      wet: { at: percent(90), below: percent(87) },
    },
  }));
  const wet = { at: percent(90), below: percent(87), mergeGapHours: hours(4) };
  figure(
    'rules-year-wet-spells',
    rounds(() => wetSpells(year, wet)),
    'ms',
  );
  figure(
    'rules-year-degree-days',
    rounds(() => degreeDays(warmth, { lower: 8 })),
    'ms',
  );
  figure(
    'rules-year-day-facts',
    rounds(() => {
      for (const { readings, rule } of days) dayFacts(readings, rule);
    }),
    'ms',
  );
  const basil = diseasesOf(['grey-mould', 'basil-downy-mildew'], []);
  figure(
    'rules-year-every-disease',
    rounds(() => judgeYear(year, from, diseases), 3),
    'ms',
  );
  figure(
    'rules-year-wetness-disease-heat',
    rounds(() => {
      wetSpells(year, wet);
      judgeYear(year, from, basil);
      degreeDays(warmth, { lower: 8 });
    }),
    'ms',
  );

  const file = join(folder, 'rules.db');
  copyFileSync(historyFile('month'), file);
  const { core } = openCore(file, END);
  core.look();
  const snapshot = core.lastLook()?.snapshot;
  if (snapshot?.places.length !== 20) throw new Error('Expected a snapshot of 20 places, got none');
  figure(
    'rules-decide-20-places',
    rounds(() => decide(snapshot), 30),
    'ms',
  );
  core.close();
}

const HOUR = 3_600_000;

/** Each disease day of the year, from what was read in it and the day before. */
function judgeYear(year: readonly AirRead[], from: number, asked: readonly Disease[]): number {
  let events = 0;
  for (let i = 1; i < 365; i++) {
    const begins = from + i * DAY;
    const day = { from: instant(begins), to: instant(begins + DAY) };
    const air = year.slice((i - 1) * PER_DAY, (i + 1) * PER_DAY);
    const known: Circumstances = {
      day,
      wetness: wetPieces(signsByHumidity(air, leafWetRule), {
        from: instant(begins - DAY),
        to: day.to,
      }),
      air,
      outdoors: true,
      dark: { from: instant(begins + 8 * HOUR), to: instant(begins + 18 * HOUR) },
      sunrise: instant(begins + 18 * HOUR),
      calendarDays: [
        { from: instant(begins - DAY), to: day.from },
        { from: day.from, to: day.to },
      ],
      week: [],
      flowering: true,
      confirmed: [],
    };
    for (const { judge } of asked) if (judge(known).verdict === 'yes') events += 1;
  }
  return events;
}
