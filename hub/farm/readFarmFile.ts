import { isNode, LineCounter, parseDocument, visit } from 'yaml';
import { storageOf, storageTable } from '../../rules/cooler/index.ts';
import { type FarmBegun, type FarmFile, farmBegun, farmFile } from '../contract/index.ts';
import {
  isLanguage,
  languageCodes,
  refusal,
  refusalBeside,
  saidBeside,
  shown,
} from '../words/index.ts';
import { stagesOf } from './damage.ts';
import { tooDeep } from './tooDeep.ts';

type Read<Kind> =
  | { readonly farm: Kind; readonly faults?: undefined }
  | { readonly farm?: undefined; readonly faults: readonly string[] };
export type FarmFileRead = Read<FarmFile>;

type Issue = {
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly code?: string;
};
/** A schema, as far as it is needed here. */
export type Checks<Kind> = {
  safeParse(
    plain: unknown,
  ): { success: true; data: Kind } | { success: false; error: { issues: readonly Issue[] } };
};

export type FarmFault = {
  /** As `places.0.limit`. */
  readonly field: string;
  readonly sentence: string;
  /** The same where the field is seen anyway: beside it, on a page. */
  readonly said: string;
};

/** What a schema of one field cannot see: that names agree with each other. */
function crossChecks(farm: FarmBegun): { path: (string | number)[]; wanted: string }[] {
  const faults: { path: (string | number)[]; wanted: string }[] = [];
  const fault = (path: (string | number)[], wanted: string) => faults.push({ path, wanted });
  const places = new Set<string>();
  const crops = new Set<string>();
  for (const [i, { id, band, keeps, days, young }] of farm.crops.entries()) {
    if (keeps?.like !== undefined && storageOf(keeps.like) === null)
      fault(
        ['crops', i, 'keeps', 'like'],
        `one of ${storageTable.map((row) => row.crop).join(', ')}`,
      );
    if (Array.isArray(keeps?.days) && keeps.days[0] > keeps.days[1])
      fault(['crops', i, 'keeps', 'days'], 'the fewer days first');
    if (crops.has(id)) fault(['crops', i, 'id'], 'an id that no other crop has');
    crops.add(id);
    if (band && band[0] >= band[1]) fault(['crops', i, 'band'], 'the lower temperature first');
    if (Array.isArray(days) && days[0] > days[1])
      fault(['crops', i, 'days'], 'the fewer days first');
    if (Array.isArray(young?.days) && young.days[0] > young.days[1])
      fault(['crops', i, 'young', 'days'], 'the fewer days first');
  }
  const { language } = farm.farm;
  if (language !== undefined && !isLanguage(language))
    fault(['farm', 'language'], `one of the languages ${languageCodes.join(', ')}`);
  const sold = new Set(crops);
  for (const [i, { id, parts }] of farm.mixes.entries()) {
    if (sold.has(id)) fault(['mixes', i, 'id'], 'an id that no crop and no other mix has');
    sold.add(id);
    for (const [k, { crop }] of parts.entries())
      if (!crops.has(crop))
        fault(['mixes', i, 'parts', k, 'crop'], `one of the crops ${[...crops].join(', ')}`);
  }
  for (const [i, { wants }] of farm.deliveries.entries())
    for (const [k, { of }] of wants.entries())
      if (!sold.has(of))
        fault(['deliveries', i, 'wants', k, 'of'], `one of ${[...sold].join(', ')}`);
  try {
    // Of a farm that has none yet nothing is refused here: the schema of a whole one asks for it.
    new Intl.DateTimeFormat('en', { timeZone: farm.farm.zone ?? 'UTC' });
  } catch {
    fault(['farm', 'zone'], 'a time zone such as Europe/Dublin');
  }
  for (const [i, place] of farm.places.entries()) {
    if (places.has(place.id)) fault(['places', i, 'id'], 'an id that no other place has');
    places.add(place.id);
    if (place.crop !== undefined && !crops.has(place.crop))
      fault(['places', i, 'crop'], `one of the crops ${[...crops].join(', ')}`);
    const stages = stagesOf(place.crop);
    if (place.stage !== undefined && !stages.includes(place.stage))
      fault(
        ['places', i, 'stage'],
        stages.length === 0
          ? 'no stage, because no frost limits are known for this crop'
          : `one of the stages ${stages.join(', ')}`,
      );
    if (place.cover && place.cover.damage === undefined && place.stage === undefined)
      fault(['places', i, 'cover', 'damage'], 'a temperature in °C, or a stage of the crop');
    if (place.picking && place.cover?.damage === undefined && !stages.includes('green-fruit'))
      fault(['places', i, 'picking'], 'a place with cover.damage, or a crop with a frost limit');
    if (place.kind === 'cool-room')
      for (const field of ['setPoint', 'limit'] as const)
        if (place[field] === undefined) fault(['places', i, field], 'a temperature in °C');
    if (place.setPoint !== undefined && place.limit !== undefined && place.limit <= place.setPoint)
      fault(['places', i, 'limit'], 'a temperature above setPoint');
  }
  const probes = new Set<string>();
  for (const [i, probe] of farm.probes.entries()) {
    if (probes.has(probe.id)) fault(['probes', i, 'id'], 'an id that no other probe has');
    probes.add(probe.id);
    if (!places.has(probe.place))
      fault(['probes', i, 'place'], `one of the places ${[...places].join(', ')}`);
  }
  for (const [i, { topic, probe }] of farm.mappings.entries()) {
    const levels = topic.split('/');
    const named = levels.filter((level) => level === '+probe').length;
    const misplaced = levels.some(
      (level, at) =>
        (level.includes('#') && (level !== '#' || at < levels.length - 1)) ||
        (level.includes('+') && level !== '+' && level !== '+probe'),
    );
    if (misplaced)
      fault(
        ['mappings', i, 'topic'],
        'an MQTT topic filter: +, +probe and a last # as whole levels',
      );
    if (named > 1) fault(['mappings', i, 'topic'], 'at most one level +probe');
    if (named === 0 && probe === undefined)
      fault(['mappings', i, 'probe'], 'a pointer, or a level +probe in the topic');
    if (/^(garden|dewpost|\$SYS)(\/|$)/.test(topic))
      fault(['mappings', i, 'topic'], 'a topic outside garden/ and dewpost/');
  }
  return faults;
}

/** Bytes; ours: a farm of a thousand places is a tenth of it. */
const LONGEST = 1024 * 1024;
/** Faults told in full; the rest are counted. */
const SHOWN = 50;

/** Reads a farm file; every fault is one sentence with its line, its field and what it held. */
export const readFarmFile = (text: string): FarmFileRead => readText(text, farmFile);

/** The same of a farm that is still being described: where it lies may be missing. */
export const readBegun = (text: string): Read<FarmBegun> => readText(text, farmBegun);

function readText<Kind extends FarmBegun>(text: string, schema: Checks<Kind>): Read<Kind> {
  if (text.length > LONGEST)
    return { faults: [`Expected a farm file of at most ${LONGEST} bytes, got ${text.length}`] };
  const deep = tooDeep(text);
  if (deep !== null)
    return {
      faults: [`Expected a farm file nested a few levels deep, got more on line ${deep}`],
    };
  const read = readWhole(text, schema);
  const more = (read.faults?.length ?? 0) - SHOWN;
  if (!read.faults || more <= 0) return read;
  return { faults: [...read.faults.slice(0, SHOWN), `Expected no more faults, got ${more} more`] };
}

/** A message of the reader, on one line. */
const oneLine = (message: string) => message.replace(/\s+/g, ' ').slice(0, 200);

function readWhole<Kind extends FarmBegun>(text: string, schema: Checks<Kind>): Read<Kind> {
  const lines = new LineCounter();
  // A warning would be printed past us; what matters of it is a fault below.
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
  });
  const lineAt = (at: number) => ` on line ${Math.max(1, lines.linePos(at).line)}`;
  if (document.errors.length > 0)
    return {
      faults: document.errors.map(
        ({ pos, message }) => `Expected YAML${lineAt(pos[0])}, got: ${oneLine(message)}`,
      ),
    };
  let alias: string | null = null;
  visit(document, {
    Alias(_, { source, range }) {
      alias = `Expected no alias${lineAt(range?.[0] ?? 0)}, got *${source.slice(0, 60)}`;
      return visit.BREAK;
    },
  });
  if (alias !== null) return { faults: [alias] };
  const lineOf = (path: readonly PropertyKey[]): string => {
    // The field itself, or the nearest thing around it that is there.
    for (let depth = path.length; depth >= 0; depth--) {
      const node = document.getIn(path.slice(0, depth), true);
      if (isNode(node) && node.range) return lineAt(node.range[0]);
    }
    return lineAt(0);
  };
  const plain: unknown = document.toJS({ maxAliasCount: 0 });
  const { farm, faults } = checkFarm(schema, plain, lineOf);
  return faults ? { faults: faults.map(({ sentence }) => sentence) } : { farm };
}

const valueAt = (root: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((value, key) => (value as Record<PropertyKey, unknown>)?.[key], root);

/**
 * A description held against the schema, and its names against each other.
 *
 * @param lineOf where a field stands, to be told with its fault; nothing for what is no file.
 */
export function checkFarm<Kind extends FarmBegun>(
  schema: Checks<Kind>,
  plain: unknown,
  lineOf: (path: readonly PropertyKey[]) => string = () => '',
):
  | { readonly farm: Kind; readonly faults?: undefined }
  | { readonly farm?: undefined; readonly faults: readonly FarmFault[] } {
  const checked = schema.safeParse(plain);
  if (!checked.success)
    return {
      faults: checked.error.issues.map((issue) => {
        const complaint = issue as typeof issue & { keys?: string[] };
        const path = complaint.keys?.[0] ? [...issue.path, complaint.keys[0]] : issue.path;
        const sentence = refusal(complaint, plain, lineOf(path));
        return { field: path.join('.'), sentence, said: refusalBeside(complaint, plain) };
      }),
    };
  const crossed = crossChecks(checked.data).map(({ path, wanted }) => {
    const field = path.map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`)).join('');
    const value = valueAt(plain, path);
    const sentence = `Expected ${wanted} in ${field.slice(1)}${lineOf(path)}, got ${shown(value)}`;
    return { field: path.join('.'), sentence, said: saidBeside(wanted, value) };
  });
  return crossed.length > 0 ? { faults: crossed } : { farm: checked.data };
}
