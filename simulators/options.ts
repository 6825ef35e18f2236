import { parseArgs } from 'node:util';

/** Command-line options by name, each with a value; anything else is refused in one sentence. */
export function readOptions<Name extends string>(
  names: readonly Name[],
  args: readonly string[],
): Partial<Record<Name, string>> {
  const options = Object.fromEntries(names.map((name) => [name, { type: 'string' as const }]));
  const known = names.map((name) => `--${name}`).join(', ');
  try {
    const { values } = parseArgs({ args: [...args], options, strict: true });
    return values as Partial<Record<Name, string>>;
  } catch {
    throw new Error(`Expected only ${known}, each with a value, got "${args.join(' ')}"`);
  }
}

export function readInstant(name: string, text: string | undefined): number {
  const t = Date.parse(text ?? '');
  if (Number.isNaN(t) || !/(?:Z|[+-]\d\d:?\d\d)$/.test(text ?? '')) {
    throw new Error(`Expected --${name} in ISO 8601 with zone, got ${text ?? 'nothing'}`);
  }
  return t;
}

export function readNumber(name: string, text: string, from: number, to: number): number {
  const value = Number(text);
  if (text.trim() !== '' && value >= from && value <= to) return value;
  throw new Error(`Expected --${name} from ${from} to ${to}, got ${text}`);
}

/** Minutes from a time such as 10m or 1h. */
export function readMinutes(name: string, text: string): number {
  const found = /^([1-9]\d{0,3})(m|h)$/.exec(text);
  if (!found) throw new Error(`Expected --${name} as minutes or hours such as 10m, got ${text}`);
  return Number(found[1]) * (found[2] === 'h' ? 60 : 1);
}

/** Runs a command; a refusal is one line on standard error and exit code 2. */
export async function runCommand(command: () => void | Promise<void>): Promise<void> {
  try {
    await command();
  } catch (error) {
    // Whoever read our output has seen enough (`| head`).
    if ((error as NodeJS.ErrnoException).code === 'EPIPE') return;
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exitCode = error instanceof Error && error.message.startsWith('Expected') ? 2 : 1;
  }
}
