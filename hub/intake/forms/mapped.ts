import { type Mapping, probeName } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { type Parsed, type RawReading, Refusal, type Refused } from '../message.ts';
import { readTime } from '../readTime.ts';
import { inKeptUnit, numberIn } from '../units.ts';

/** The MQTT topic filter of a mapping: `+probe` is a plain `+` to a broker. */
export const filterOf = ({ topic }: Mapping) => topic.replaceAll('+probe', '+');

/** Whether a topic passes the mapping's filter, and which level names the probe. */
export function matchTopic(mapping: Mapping, topic: string): { probe: string | null } | null {
  const wanted = mapping.topic.split('/');
  const levels = topic.split('/');
  let probe: string | null = null;
  for (const [i, level] of wanted.entries()) {
    if (level === '#') return { probe };
    const got = levels[i];
    if (got === undefined) return null;
    if (level === '+probe') probe = got;
    else if (level !== '+' && level !== got) return null;
  }
  return levels.length === wanted.length ? { probe } : null;
}

/** The first mapping a topic passes, and the probe it names. */
export function mappingOf(
  mappings: readonly Mapping[],
  topic: string,
): { mapping: Mapping; probe: string | null } | null {
  for (const mapping of mappings) {
    const match = matchTopic(mapping, topic);
    if (match) return { mapping, probe: match.probe };
  }
  return null;
}

/** What a JSON pointer (RFC 6901) points at; undefined when there is nothing. */
export function pointed(document: unknown, pointer: string): unknown {
  if (pointer === '') return document;
  let here: unknown = document;
  for (const token of pointer.slice(1).split('/')) {
    // Section 4: ~1 first, then ~0, so that ~01 becomes ~1 and not /.
    const key = token.replaceAll('~1', '/').replaceAll('~0', '~');
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    if (Array.isArray(here) && !/^(0|[1-9]\d*)$/.test(key)) return undefined;
    here = (here as Record<string, unknown>)[key];
  }
  return here;
}

/**
 * JSON of any shape, by the farm file's mapping.
 *
 * @param from who signed in to send it, if anybody: speaks for others only as the mapping's sender.
 * @throws Refusal when no probe or time can be read.
 */
export function readMapped(
  body: unknown,
  mapping: Mapping,
  topicProbe: string | null,
  from: string | null = null,
): Parsed {
  const named = topicProbe ?? pointed(body, mapping.probe ?? '');
  const name = probeName.safeParse(typeof named === 'number' ? String(named) : named);
  if (!name.success)
    throw new Refusal(
      'bad-name',
      `Expected a probe's name in ${mapping.probe ?? 'the topic'}, got ${shown(named)}`,
    );
  const probe = name.data;
  if (from !== null && from !== probe && from !== mapping.sender)
    throw new Refusal(
      'not-its-own',
      `Expected ${from} in ${mapping.probe ?? 'the topic'} of what ${from} sends, got ${probe}`,
    );
  const time = mapping.time === undefined ? undefined : pointed(body, mapping.time);
  if (mapping.time !== undefined && time === undefined)
    throw new Refusal('missing-field', `Expected a time in ${mapping.time}, got nothing`);
  const t = time === undefined ? null : readTime(time, mapping.time ?? '');
  const readings: RawReading[] = [];
  const refused: Refused[] = [];
  for (const { quantity, pointer, unit } of mapping.fields) {
    const value = pointed(body, pointer);
    // One of several fields may be absent (a probe that sends humidity every other time).
    if (value === undefined && mapping.fields.length > 1) continue;
    try {
      const number = numberIn(value, quantity, pointer);
      readings.push({ probe, t, ...inKeptUnit(quantity, number, unit) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refused.push({ source: probe, reason: error.reason, sentence: error.message });
    }
  }
  if (readings.length === 0 && refused.length === 0)
    throw new Refusal(
      'missing-field',
      `Expected a number in one of ${mapping.fields.map(({ pointer }) => pointer).join(', ')}, got ${shown(body)}`,
    );
  return { readings, refused };
}
