export type Sample = { readonly labels?: Readonly<Record<string, string>>; readonly value: number };

const escaped = (value: string) =>
  value.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');

/** One metric with its samples; nothing when there are none. */
export function family(
  name: string,
  type: 'gauge' | 'counter',
  help: string,
  samples: readonly Sample[],
) {
  if (samples.length === 0) return '';
  const lines = samples.map(({ labels = {}, value }) => {
    const pairs = Object.entries(labels).map(([key, text]) => `${key}="${escaped(text)}"`);
    return `${name}${pairs.length > 0 ? `{${pairs.join(',')}}` : ''} ${value}`;
  });
  return `# HELP ${name} ${help}\n# TYPE ${name} ${type}\n${lines.join('\n')}\n`;
}

/** What is not known has no sample. */
export const known = (value: number | null): Sample[] => (value === null ? [] : [{ value }]);
