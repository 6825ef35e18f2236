/**
 * What was typed as a number, with a comma or a point, and a minus of either kind; nothing for
 * nothing, and as it stands when it is no number: the hub says what is wrong with it.
 */
export function figure(text: string): number | string | undefined {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  const value = Number(trimmed.replace('−', '-').replace(',', '.'));
  return Number.isFinite(value) ? value : trimmed;
}

/** A short name made from a name: small letters, digits and hyphens, unlike all those taken. */
export function shortName(name: string, taken: readonly string[]): string {
  const plain = name
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replaceAll(/^-+|-+$/g, '');
  const stem = plain === '' ? 'place' : plain;
  let made = stem;
  for (let n = 2; taken.includes(made); n++) made = `${stem}-${n}`;
  return made;
}
