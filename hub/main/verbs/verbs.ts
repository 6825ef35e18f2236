import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { wallClock } from '../../clock.ts';
import { probeName } from '../../contract/index.ts';
import { readFarmFile } from '../../farm/index.ts';
import { hashPassword, newSecret } from '../../passwords.ts';
import { readSettings, WrongUse } from '../../settings.ts';
import { backUpStore, openStore, restoreStore } from '../../store/index.ts';
import { shown } from '../../words/index.ts';
import { listenerSecret } from '../broker/admission.ts';
import { Faults, importFarm } from '../farm/farmKept.ts';
import { importReadings } from '../imports/importReadings.ts';
import { importRecord } from '../imports/importRecord.ts';
import { progressLine } from '../imports/progressLine.ts';
import { formOf } from '../imports/stationForms.ts';
import { startHub } from '../start.ts';
import { help } from './help.ts';
import { version } from './package.ts';
import { codeForPerson } from './personVerb.ts';
import { readText } from './readText.ts';
import { replay } from './replay.ts';

type Verb = (args: readonly string[]) => Promise<void>;

const say = (line: string) => process.stdout.write(`${line}\n`);
const DEFAULT_EVERY = 300_000; // ms

const file = (rest: readonly string[], what: string): string => {
  const [name, ...more] = rest;
  if (name === undefined || more.length > 0)
    throw new WrongUse(`Expected one ${what}, got ${rest.length === 0 ? 'none' : rest.join(' ')}`);
  return name;
};
const start: Verb = async (args) => {
  const { settings, rest } = readSettings('start', args);
  if (rest.length > 0) throw new WrongUse(`Expected no further words, got ${rest.join(' ')}`);
  const hub = await startHub(settings);
  // Before it says that it runs: who reads that may ask it to end in the same moment.
  const asked = new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  say(`Dewpost ${version} runs. Open ${hub.http} in a browser; probes speak to ${hub.mqtt}.`);
  if (hub.claimCode)
    say(`Nobody has claimed this hub. Open it and type this code, once: ${hub.claimCode}`);
  await asked;
  await hub.close();
  // Something that still holds on does not keep the hub from having stopped.
  setTimeout(() => process.exit(), 200).unref();
};

const replaying: Verb = async (args) => {
  const { settings } = readSettings('replay', args);
  const result = await replay(settings);
  if (settings.json) say(JSON.stringify(result));
  else
    say(
      `${result.tasks.filter(({ event }) => event === 'opened').length} tasks, ${result.alarms.filter(({ event }) => event === 'raised').length} alarms, ${result.frost.length} forecasts. Add --json for all of it.`,
    );
};

const importing: Verb = async (args) => {
  const { settings, rest } = readSettings('import', args);
  const name = file(rest, 'file of readings');
  const form = await formOf(name);
  const line = progressLine(process.stderr, settings.quiet === true, wallClock.steady);
  if (form !== 'readings') {
    const { taken, faults } = await importRecord(name, form, settings, line.tell).finally(line.end);
    say(taken);
    for (const sentence of faults) process.stderr.write(`${sentence}\n`);
    return;
  }
  const { readings, refused, sentences } = await importReadings(
    ...([name, settings, line.tell] as const),
  ).finally(line.end);
  say(`${readings} readings taken in, ${refused} lines refused.`);
  for (const sentence of sentences) process.stderr.write(`${sentence}\n`);
  if (readings === 0) throw new Error('Expected at least one reading, got none');
};

const farm: Verb = async (args) => {
  const { settings, rest } = readSettings('farm', args);
  const [action, ...names] = rest;
  const db = join(settings.data, 'dewpost.db');
  if (action === 'check') {
    const { faults } = readFarmFile(readText(file(names, 'farm file')));
    if (faults) throw new Faults(faults);
    say('The farm file is in order.');
  } else if (action === 'import') {
    const text = readText(file(names, 'farm file'));
    const store = openStore(db);
    try {
      importFarm(store, text, wallClock.now());
    } finally {
      store.close();
    }
    say('The farm file is taken in. A hub that runs reads it at its next look.');
  } else if (action === 'export') {
    const name = file(names, 'file to write');
    if (!existsSync(db)) throw new Error(`Expected a store in ${settings.data}, got none`);
    const store = openStore(db);
    const text = store.farm();
    store.close();
    if (text === undefined) throw new Error('Expected a farm in the store, got none');
    writeFileSync(name, text);
    say(`The farm file is in ${name}.`);
  } else throw new WrongUse(`Expected check, import or export, got ${action ?? 'nothing'}`);
};

const probe: Verb = async (args) => {
  const { settings, rest } = readSettings('probe', args);
  const [action, ...names] = rest;
  if (action !== 'add') throw new WrongUse(`Expected add, got ${action ?? 'nothing'}`);
  const name = file(names, "probe's name");
  if (!probeName.safeParse(name).success)
    throw new WrongUse(`Expected a name of letters, digits, - : . _, got ${shown(name)}`);
  const password = newSecret(5);
  const hash = await hashPassword(password);
  const store = openStore(join(settings.data, 'dewpost.db'));
  try {
    const listener = listenerSecret(name);
    const other = settings.listen ? store.probes.get(name) : store.people.secret(listener);
    if (other !== undefined)
      throw new Error(
        `Expected a name that no ${settings.listen ? 'probe' : 'listener'} has, got ${name}`,
      );
    if (settings.listen) store.people.putSecret(listener, hash);
    else store.probes.setPassword(name, store.probes.get(name)?.everyMs ?? DEFAULT_EVERY, hash);
  } finally {
    store.close();
  }
  say(`MQTT user ${name}, password ${password}`);
  if (settings.listen) say('It hears alarms, tasks and the heartbeat, and may send nothing.');
  say('It is shown this once. Running this again makes a new one.');
};

const person: Verb = async (args) => {
  const { settings, rest } = readSettings('person', args);
  const [action, ...names] = rest;
  if (action !== 'code') throw new WrongUse(`Expected code, got ${action ?? 'nothing'}`);
  const { code } = codeForPerson(settings.data, file(names, "person's name"));
  say(`Code for a new password, once, within the hour: ${code}`);
  say('Type it in the browser: "I have a code" on the page to sign in.');
};

const backup: Verb = async (args) => {
  const { settings, rest } = readSettings('backup', args);
  const to = file(rest, 'file to write');
  await backUpStore(join(settings.data, 'dewpost.db'), to);
  say(`A checked copy of everything is in ${to}.`);
};

const restore: Verb = async (args) => {
  const { settings, rest } = readSettings('restore', args);
  const store = join(settings.data, 'dewpost.db');
  const kept = restoreStore(file(rest, 'backup'), store);
  say(`The backup is in place.${kept === null ? '' : ` What was there before is in ${kept}.`}`);
};

const verbs: Readonly<Record<string, Verb>> = {
  start,
  replay: replaying,
  import: importing,
  farm,
  probe,
  person,
  backup,
  restore,
};

/** Runs one verb. @returns the exit code: 0 done, 1 it failed, 2 wrong use. */
export async function runVerb([name, ...args]: readonly string[]): Promise<number> {
  if (name === '--version') {
    say(version);
    return 0;
  }
  const verb = name !== undefined && Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (name === undefined || name === '--help' || (verb && args.includes('--help'))) {
    say(help(verb ? name : undefined));
    return name === undefined ? 2 : 0;
  }
  try {
    if (!verb) throw new WrongUse(`Expected ${Object.keys(verbs).join(', ')}, got ${shown(name)}`);
    await verb(args);
    return 0;
  } catch (error) {
    const sentences = error instanceof Faults ? error.sentences : [(error as Error).message];
    for (const sentence of sentences) process.stderr.write(`${sentence}\n`);
    return error instanceof WrongUse ? 2 : 1;
  }
}
