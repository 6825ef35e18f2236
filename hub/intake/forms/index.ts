import { type Mapping, probeName, type Quantity, quantities } from '../../contract/index.ts';
import { shown } from '../../words/index.ts';
import { type Message, type Parsed, type Reason, Refusal } from '../message.ts';
import { readForetold } from './foretold.ts';
import { mappingOf, readMapped } from './mapped.ts';
import { readSenml } from './senml.ts';
import { readSingle } from './single.ts';

export { filterOf, mappingOf } from './mapped.ts';

const LARGEST = 256 * 1024; // bytes of one message; ours: 2,000 SenML records are about 100 kB
const decoder = new TextDecoder('utf-8', { fatal: true });

function json(payload: Uint8Array): unknown {
  if (payload.length > LARGEST)
    throw new Refusal('too-long', `Expected at most ${LARGEST} bytes, got ${payload.length}`);
  let text: string;
  try {
    text = decoder.decode(payload);
  } catch {
    throw new Refusal('not-json', 'Expected UTF-8 text, got other bytes');
  }
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal('not-json', `Expected JSON, got ${shown(text)}`);
  }
}

/** Which form a topic has: the one place to add a message form. */
function formOf(
  topic: string,
  mappings: readonly Mapping[],
): { source: string; read: (message: Message) => Parsed } {
  const [root, probe = '', quantity, ...more] = topic.split('/');
  if (root === 'garden') {
    if (probe === 'forecast') return foretoldForm(topic, quantity, more.length);
    if (!probeName.safeParse(probe).success)
      return refuse(
        topic,
        'bad-name',
        `Expected garden/PROBE with a probe's name, got ${shown(topic)}`,
      );
    if (quantity === undefined)
      return { source: probe, read: (message) => readSenml(json(message.payload), probe, message) };
    if (more.length === 0 && (quantities as readonly string[]).includes(quantity))
      return {
        source: probe,
        read: (message) => readSingle(json(message.payload), probe, quantity as Quantity),
      };
    return refuse(
      probe,
      'unknown-quantity',
      `Expected garden/${probe}/QUANTITY with one of ${quantities.join(', ')}, got ${shown(topic)}`,
    );
  }
  const found = mappingOf(mappings, topic);
  if (found)
    return {
      source: found.probe ?? topic,
      read: (message) =>
        readMapped(json(message.payload), found.mapping, found.probe, message.from ?? null),
    };
  return refuse(
    topic,
    'unknown-form',
    `Expected garden/… or a topic of the farm file's mappings, got ${shown(topic)}`,
  );
}

function foretoldForm(topic: string, quantity: string | undefined, more: number) {
  const known = (quantities as readonly string[]).includes(quantity ?? '');
  if (more > 0 || (quantity !== undefined && !known))
    return refuse(
      topic,
      'unknown-quantity',
      `Expected garden/forecast/QUANTITY with one of ${quantities.join(', ')}, got ${shown(topic)}`,
    );
  const named = (quantity as Quantity | undefined) ?? null;
  return {
    source: topic,
    read: (message: Message) => readForetold(json(message.payload), named, message),
  };
}

const refuse = (source: string, reason: Reason, sentence: string) => ({
  source,
  read: (): Parsed => {
    throw new Refusal(reason, sentence);
  },
});

/** Reads a message of any form. Never throws: what cannot be read is counted with its reason. */
export function readMessage(message: Message, mappings: readonly Mapping[]): Parsed {
  const { source, read } = formOf(message.topic, mappings);
  try {
    return read(message);
  } catch (error) {
    const reason = error instanceof Refusal ? error.reason : 'unknown-form';
    const sentence = error instanceof Error ? error.message : String(error);
    return { readings: [], refused: [{ source: source.slice(0, 128), reason, sentence }] };
  }
}
