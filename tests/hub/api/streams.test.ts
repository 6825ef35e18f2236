import { EventEmitter } from 'node:events';
import { expect, test } from 'vitest';
import { makeStreams } from '../../../hub/api/streams.ts';

/** Stands for a response that is written to: only what is kept of it here is real. */
function page(unread = 0) {
  const told: string[] = [];
  const emitter = new EventEmitter();
  const end = () => void emitter.emit('close');
  const response = Object.assign(emitter, {
    writableLength: unread,
    write: (text: string) => told.push(text),
    end,
    destroy: end,
  });
  return { told, response: response as unknown as Parameters<Streams['open']>[0] };
}
type Streams = ReturnType<typeof makeStreams>;
const session = (name: string) => ({ key: `key of ${name}`, name, role: 'helper' as const });

test('two hundred pages may listen; the next is told to wait', () => {
  const streams = makeStreams();
  for (let i = 0; i < 200; i++) {
    streams.mayOpen();
    streams.open(page().response, session(`person ${i}`));
  }
  expect(() => streams.mayOpen()).toThrow(/^Expected at most 200 pages that listen, got one more/);
  streams.endIf(({ name }) => name === 'person 7');
  expect(() => streams.mayOpen()).not.toThrow();
});

test('however many pages one person opens, thirty listen', () => {
  const streams = makeStreams();
  for (let i = 0; i < 300; i++) streams.open(page().response, session('Ann'));
  streams.open(page().response, session('Hal'));
  expect(streams.count()).toBe(31);
});

test('a page that does not read is let go; the others hear', () => {
  const streams = makeStreams();
  const [slow, quick] = [page(2 * 1024 * 1024), page()];
  streams.open(slow.response, null);
  streams.open(quick.response, null);
  streams.send('event: pulse\n\n');
  expect([slow.told.length, quick.told.length, streams.count()]).toEqual([0, 1, 1]);
});

test('without a sign-in no session ends a page', () => {
  const streams = makeStreams();
  streams.open(page().response, null);
  streams.endIf(() => true);
  expect(streams.count()).toBe(1);
});
