import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openStore } from '../../../hub/store/index.ts';
import { first } from '../../../hub/store/steps/first.ts';
import { tempFolder } from '../tempStore.ts';

test('a store of before has no alarm that waits to be seen, but those that stand', () => {
  const path = `${tempFolder()}/dewpost.db`;
  const before = new Database(path);
  before.pragma(`application_id = ${0x44_65_77_70}`);
  before.exec(first);
  before.pragma('user_version = 1');
  const add = before.prepare('INSERT INTO alarms VALUES (?, ?, ?, ?, ?, ?)');
  add.run('old', 'cool-room', 'warm', 1000, 'It was warm.', 2000);
  add.run('stands', 'cool-room', 'door', 3000, 'The door is open.', null);
  before.close();
  const store = openStore(path);
  expect(store.alarmsOut.current(5000).map(({ id, seenBy }) => [id, seenBy])).toEqual([
    ['stands', null],
  ]);
  expect(store.alarmsOut.newest('old')).toMatchObject({ seenBy: 'hub', seenAt: 2000 });
  store.close();
});

test('a message is made once under one name, and changed by it', () => {
  const store = openStore(':memory:');
  const row = {
    ...{ id: 'raised|a', what: 'raised', alarm: 'a', since: 1, person: 'ann', channel: 'email' },
    ...{ state: 'waiting', madeAt: 1, nextAt: 1, tries: 0, endedAt: null, words: '' },
  };
  store.alarmsOut.addMessage(row);
  store.alarmsOut.changeMessage({ ...row, state: 'delivered', endedAt: 2 });
  store.alarmsOut.addMessage(row);
  expect(store.alarmsOut.messages(0)).toEqual([{ ...row, state: 'delivered', endedAt: 2 }]);
  expect(store.alarmsOut.due(9)).toEqual([]);
  store.close();
});
