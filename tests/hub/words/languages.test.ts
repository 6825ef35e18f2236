import { readFileSync } from 'node:fs';
import ts from 'typescript';
import { afterEach, describe, expect, test } from 'vitest';
import type { SowingPlanShown, WeekSheet } from '../../../hub/contract/index.ts';
import * as en from '../../../hub/words/en.ts';
import * as spoken from '../../../hub/words/index.ts';
import { type Language, languageCodes, speak } from '../../../hub/words/index.ts';
import { wholeLanguages } from '../../../hub/words/wholeLanguages.ts';
import { DAY } from '../growing/growingFarm.ts';
import { NOW, planningHub, SIX } from '../planning/planningHub.ts';
import { partsOf } from './partsOf.ts';

// A language has all of English: its names, the keys of its tables (which the type check does not see
// where they are any text), the figures of its sentences; and nothing of it is left in English.

const source = (code: string) => {
  const path = new URL(`../../../hub/words/${code}.ts`, import.meta.url);
  return partsOf(
    ts.createSourceFile(code, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true),
  );
};
const english = source('en');
const others = languageCodes.filter((code) => code !== 'en');
afterEach(() => speak(en));

/** Texts that are the same in both: names, units, codes, what programs read, words both tongues have. */
const SAME: Readonly<Record<string, readonly string[]>> = {
  de: [
    // Words both tongues have.
    ...['Alarm', 'Dewpost', 'Frost', 'Name', 'Port', 'Server'],
    ...['Celsius (°C)', 'Fahrenheit (°F)', 'kWh', 'min', '{}{}kWh/{}'],
    ...[', {}{}min', '{}{}min', '{}{}min{}'],
    // Fields and units that code compares.
    ...['money', 'parts', 'wants'],
  ],
};
/** A term or a field by its code name, which nobody reads: `wet-hours`, `keeps.at`. */
const CODE = /^[a-z{}]+([-.][a-zA-Z0-9{}]+)+$/;
/** Figures that English is given for its grammar alone. */
const GRAMMAR: Readonly<Record<string, readonly string[]>> = {
  de: ['title(name)'], // as `place`
};
/** Tables and keys of a grammar that only English has. */
const OWN: Readonly<Record<string, readonly string[]>> = { de: [] };

test('there is another language than English', () => expect(others).toContain('de'));

describe.for(others)('%s', (code) => {
  const other = source(code);

  test('has the names of English and no others', async () => {
    const language = await wholeLanguages[code as 'de']();
    expect(Object.keys(language).sort()).toEqual(Object.keys(en).sort());
  });

  test('has every key of every table', () => {
    expect(english.keys.size).toBeGreaterThan(2000); // else the tables were not found
    const lacks = [...english.keys].filter((key) => !other.keys.has(key));
    expect(lacks.filter((key) => !OWN[code]?.includes(key))).toEqual([]);
  });

  test('has no key that English lacks, in a table that both have', () => {
    const table = (key: string) => key.slice(0, key.lastIndexOf('.'));
    const shared = new Set([...english.keys].map(table));
    const over = [...other.keys].filter(
      (key) => shared.has(table(key)) && table(key) !== '' && !english.keys.has(key),
    );
    expect(over.filter((key) => !OWN[code]?.includes(key))).toEqual([]);
  });

  test('uses every figure that English uses', () => {
    const lost = [...english.used].flatMap(([path, names]) => {
      const here = other.used.get(path);
      if (here === undefined) return [];
      return [...names].filter((name) => !here.has(name)).map((name) => `${path}(${name})`);
    });
    expect(lost.filter((one) => !GRAMMAR[code]?.includes(one))).toEqual([]);
  });

  test('is not left in English', () => {
    const left = [...english.texts].flatMap(([path, texts]) =>
      texts.filter(
        (text) =>
          /\p{L}{3}/u.test(text) && !CODE.test(text) && other.texts.get(path)?.includes(text),
      ),
    );
    expect([...new Set(left)].filter((text) => !SAME[code]?.includes(text)).sort()).toEqual([]);
  });
});

/** Every text of a language in ⟦⟧: what is shown without them is not said by the language. */
function marked<T>(value: T): T {
  if (typeof value === 'string') return `⟦${value}⟧` as T;
  if (typeof value === 'function')
    return ((...told: unknown[]) =>
      marked((value as (...told: unknown[]) => unknown)(...told))) as T;
  if (value === null || typeof value !== 'object' || value instanceof RegExp) return value;
  if (Array.isArray(value)) return value.map(marked) as T;
  return new Proxy(value, { get: (target, name) => marked(Reflect.get(target, name)) });
}
const pseudo = Object.fromEntries(
  Object.entries(en).map(([name, value]) => [name, marked(value)]),
) as unknown as Language;

test('speaking another language replaces every name that English has', () => {
  speak(pseudo);
  const now = spoken as unknown as Record<string, unknown>;
  for (const [name, said] of Object.entries(pseudo))
    if (name in now) expect(now[name] === said, name).toBe(true);
  const named = Object.keys(en).filter((name) => !(name in now));
  expect(named).toEqual([]);
});

test('tasks, the sentence of the day, the plan and the week sheet come from the language alone', async () => {
  const { past, tell, get, core } = await planningHub();
  past(SIX);
  tell('now-1', { sownAt: NOW - 8 * DAY, trays: 20, meantFor: '2026-05-14' });
  speak(pseudo);
  core.look();
  const said: string[] = [];
  const week = await get<WeekSheet>('/api/week');
  for (const { sow, harvest, deliver, short, frost } of week.days)
    said.push(...sow, ...harvest, ...deliver, ...short, ...frost);
  const plan = await get<SowingPlanShown>('/api/sowing-plan');
  said.push(...plan.sowings.map(({ words }) => words), ...plan.rooms.map(({ words }) => words));
  const today = await get<{ sentence: string }>('/api/today');
  said.push(today.sentence, ...week.notes);
  expect(said.length).toBeGreaterThan(6);
  for (const text of said) expect(text).toMatch(/^⟦.*⟧$/s);
  const alarm = spoken.alarmMessage({ ...ALARM });
  for (const text of [alarm.subject, alarm.text]) expect(text).toMatch(/^⟦.*⟧$/s);
});

const ALARM = {
  what: 'test',
  ...{ farm: 'Test Garden (invented)', zone: 'Etc/UTC', now: NOW, link: null },
} as unknown as Parameters<typeof spoken.alarmMessage>[0];

test('a refusal is framed by the language, and in English stands as it always stood', async () => {
  const complaint = {
    path: ['places', 0, 'limit'],
    message: 'Invalid input: expected number, received string',
  };
  const root = { places: [{ limit: 'cold' }] };
  expect(spoken.refusal(complaint, root)).toBe('Expected number in places[0].limit, got "cold"');
  const unknown = { path: [], message: '', code: 'unrecognized_keys', keys: ['colour'] };
  expect(spoken.refusal(unknown, { colour: 1 })).toBe('Expected no field colour, got 1');
  speak(await wholeLanguages.de());
  expect(spoken.refusal(complaint, root)).toBe(
    'Erwartet: eine Zahl in places[0].limit, erhalten: "cold"',
  );
  expect(spoken.refusal(unknown, { colour: 1 })).toBe('Erwartet: kein Feld colour, erhalten: 1');
});

// Days as the German style of DIN 5008 writes them, from memory: a comma after the weekday.
test('a day is written as the language writes it', async () => {
  expect(spoken.screens.dayInText('2026-05-21')).toBe('Thursday 21 May');
  speak(await wholeLanguages.de());
  expect(spoken.screens.dayInText('2026-05-21')).toBe('Donnerstag, 21. Mai');
});
