import type { Constant } from './findConstants.ts';

/** What tells a number from another, whatever line it has moved to. */
export const labelOf = ({ file, within, text, nth }: Constant) =>
  `${file} ${within} ${text}${nth === 1 ? '' : ` #${nth}`}`;

/** Reasons by label, from lines of the form ``- `label`: reason``. */
export function readExplanations(text: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, label = '', reason = ''] of text.matchAll(/^- `([^`]+)`: *(\S.*)$/gm))
    found.set(label, reason.trim());
  return found;
}
