import { parseArgs } from 'node:util';
import { z } from 'zod';
import { refusal } from './words/index.ts';

// What is given on the command line, checked; every fault is one sentence.

/** The command was used wrongly: exit code 2. */
export class WrongUse extends Error {}

const LOOPBACK = new Set(['127.0.0.1', '::1', 'localhost']);

const address = z
  .string()
  .regex(/^(\[[0-9a-fA-F:]+\]|[^:[\]]+):\d{1,5}$/, 'expected HOST:PORT')
  .transform((text) => {
    const at = text.lastIndexOf(':');
    return { host: text.slice(0, at).replace(/^\[|\]$/g, ''), port: Number(text.slice(at + 1)) };
  })
  .refine(({ port }) => port <= 65535, 'expected a port up to 65535');

const brokerUrl = z
  .string()
  .regex(/^mqtts?:\/\/.+/, 'expected mqtt://HOST[:PORT] or mqtts://HOST[:PORT]');

/** Without the name and password an address may hold: what is refused is shown, and logged. */
const unnamed = (value: unknown) =>
  typeof value === 'string' ? value.replace(/:\/\/.*@/, '://…@') : value;

/** START/REAL/SPEED: it was START when the wall clock said REAL (ms since 1970). */
const clock = z
  .string()
  .regex(/^[^/]+\/\d+\/\d+(\.\d+)?$/, 'expected START/REAL/SPEED')
  .transform((text, context) => {
    const [start = '', real = '', speed = ''] = text.split('/');
    const t = Date.parse(start);
    if (!Number.isFinite(t) || !(Number(speed) > 0)) {
      context.addIssue({ code: 'custom', message: 'expected START/REAL/SPEED, START in ISO 8601' });
      return z.NEVER;
    }
    return { start: t, real: Number(real), speed: Number(speed) };
  });

const time = z.iso.datetime({ offset: true }).transform((text) => Date.parse(text));

/** RFC 1123, section 2.1. */
const HOST_NAME =
  /^(?=.{1,253}$)[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?(\.[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?)*$/;

const start = z
  .strictObject({
    data: z.string().default('./dewpost-data'),
    http: address.default({ host: '127.0.0.1', port: 8470 }),
    mqtt: address.default({ host: '127.0.0.1', port: 1883 }),
    broker: brokerUrl.optional(),
    farm: z.string().optional(),
    open: z.boolean().default(false),
    clock: clock.optional(),
    cert: z.string().optional(),
    key: z.string().optional(),
    host: z.array(z.string().regex(HOST_NAME, 'expected a name such as hub.example')).optional(),
    mqtts: address.optional(),
    ca: z.string().optional(),
    share: z
      .string()
      .regex(/^[^/+#\s]+$/, 'expected a name without / + # and spaces')
      .optional(),
    backup: z.string().optional(),
    'keep-raw': z.coerce.number('expected days').int().min(60).max(36_600).optional(),
    gather: z.coerce.number('expected seconds').min(0).max(60).optional(),
  })
  .superRefine(({ mqtts, cert, key, broker, ca, share }, context) => {
    const needs = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const together = 'expected a file, because a certificate and its key go together,';
    if (cert === undefined && key !== undefined) needs('cert', together);
    if (key === undefined && cert !== undefined) needs('key', together);
    if (mqtts && (cert === undefined || key === undefined))
      needs('mqtts', 'expected --cert FILE and --key FILE together with --mqtts');
    if (mqtts && broker !== undefined) needs('mqtts', 'expected no --mqtts together with --broker');
    if (ca !== undefined && !broker?.startsWith('mqtts:'))
      needs('ca', 'expected --broker mqtts://… together with --ca');
    if (share !== undefined && broker === undefined)
      needs('share', 'expected --broker together with --share');
  })
  .superRefine(({ open, http, mqtt, mqtts, broker }, context) => {
    if (!open) return;
    const listeners =
      broker === undefined ? { http, mqtt, ...(mqtts ? { mqtts } : {}) } : ({ http } as const);
    for (const [name, { host }] of Object.entries(listeners))
      if (!LOOPBACK.has(host))
        context.addIssue({
          code: 'custom',
          path: [name],
          message: `expected an address of this machine only (127.0.0.1) in --${name} together with --open`,
        });
  });

const replay = z.strictObject({
  farm: z.string(),
  readings: z.string(),
  from: time.optional(),
  to: time.optional(),
  limits: z.string().optional(),
  json: z.boolean().default(false),
});
const within = (from: number, to: number, what: string) =>
  z
    .string()
    .regex(/^[+-]?\d+(\.\d+)?$/, `expected ${what} from ${from} to ${to}`)
    .transform(Number)
    .refine((value) => value >= from && value <= to, `expected ${what} from ${from} to ${to}`);

const importing = z.strictObject({
  data: z.string().default('./dewpost-data'),
  farm: z.string().optional(),
  clock: clock.optional(),
  // Of a weather station, where its file does not say them.
  station: z.string().min(1).max(80).optional(),
  lat: within(-90, 90, 'degrees').optional(),
  lon: within(-180, 180, 'degrees').optional(),
  altitude: within(-430, 6000, 'metres').optional(),
  'observed-at': within(0, 23, 'an hour').optional(),
  /** Says nothing of how far it is. */
  quiet: z.boolean().optional(),
});
const farm = z.strictObject({ data: z.string().default('./dewpost-data') });
const probe = z.strictObject({
  data: z.string().default('./dewpost-data'),
  listen: z.boolean().default(false),
});
const person = z.strictObject({ data: z.string().default('./dewpost-data') });
const copy = z.strictObject({ data: z.string().default('./dewpost-data') });

const schemas = {
  start,
  replay,
  import: importing,
  farm,
  probe,
  person,
  backup: copy,
  restore: copy,
};
export type Verb = keyof typeof schemas;
export type Settings<V extends Verb> = z.output<(typeof schemas)[V]>;

/** @throws WrongUse with every fault of the options given. */
export function readSettings<V extends Verb>(
  verb: V,
  args: readonly string[],
): { settings: Settings<V>; rest: readonly string[] } {
  const schema = schemas[verb];
  const shape = schema.shape as Record<string, z.ZodType>;
  const innerOf = (name: string) => {
    let inner: unknown = shape[name];
    while (inner instanceof z.ZodDefault || inner instanceof z.ZodOptional) inner = inner.unwrap();
    return inner;
  };
  const isFlag = (name: string) => innerOf(name) instanceof z.ZodBoolean;
  const isMany = (name: string) => innerOf(name) instanceof z.ZodArray;
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: Object.fromEntries(
        Object.keys(shape).map((name) => [
          name,
          { type: isFlag(name) ? 'boolean' : 'string', multiple: isMany(name) },
        ]),
      ) as Record<string, { type: 'boolean' | 'string'; multiple: boolean }>,
    });
  } catch (error) {
    const known = Object.keys(shape).map((name) => `--${name}`);
    const said = error instanceof Error ? error.message.split('. ')[0] : String(error);
    throw new WrongUse(`Expected ${known.join(', ') || 'no options'}, got: ${said}`);
  }
  const checked = schema.safeParse({ ...parsed.values });
  if (!checked.success) {
    const sentences = checked.error.issues.map((issue) =>
      refusal(
        { ...issue, path: issue.path.length > 0 ? [`--${String(issue.path[0])}`] : [] },
        {
          ...Object.fromEntries(
            Object.entries(parsed.values).map(([name, value]) => [`--${name}`, unnamed(value)]),
          ),
        },
      ),
    );
    throw new WrongUse(sentences.join('\n'));
  }
  return { settings: checked.data as Settings<V>, rest: parsed.positionals };
}
