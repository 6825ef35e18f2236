import ts from 'typescript';

/** One number written in a formula file. */
export type Constant = {
  readonly file: string;
  readonly line: number;
  /** As it is written. */
  readonly text: string;
  readonly value: number;
  /** Name of the constant or function it stands in; with the text it tells one from another. */
  readonly within: string;
  /** 1 for the first of that text there, 2 for the second … */
  readonly nth: number;
  /** Where it begins and ends in the file. */
  readonly from: number;
  readonly to: number;
};

// Two per cent of these is no change anybody would make: signs, halves, squares, first and second.
const PLAIN = new Set([0, 1, 2]);

/** The numbers of a file that a slip of the hand could change, types and places in a list left out. */
export function findConstants(file: string, text: string): Constant[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2023, true);
  const found: Constant[] = [];
  const look = (node: ts.Node, within: string) => {
    if (ts.isTypeNode(node) || ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node))
      return;
    if (ts.isNumericLiteral(node)) {
      const value = Number(node.text);
      if (PLAIN.has(value) || isPlace(node)) return;
      const from = node.getStart(source);
      const written = text.slice(from, node.end);
      found.push({
        file,
        line: source.getLineAndCharacterOfPosition(from).line + 1,
        text: written,
        value,
        within,
        nth: found.filter((one) => one.within === within && one.text === written).length + 1,
        from,
        to: node.end,
      });
    }
    const name = nameOf(node);
    ts.forEachChild(node, (child) => look(child, within || name));
  };
  look(source, '');
  return found;
}

function nameOf(node: ts.Node): string {
  const named =
    ts.isFunctionDeclaration(node) || ts.isClassDeclaration(node) || ts.isVariableDeclaration(node);
  return named && node.name && ts.isIdentifier(node.name) ? node.name.text : '';
}

/** A place in a list, or the name of a field. */
const isPlace = (node: ts.NumericLiteral) =>
  (ts.isElementAccessExpression(node.parent) && node.parent.argumentExpression === node) ||
  (ts.isPropertyAssignment(node.parent) && node.parent.name === node);

/** The file with each of its numbers read from a list, so that one may be changed without a build. */
export function withNumbersFrom(
  list: string,
  text: string,
  constants: readonly Constant[],
  first: number,
) {
  let out = '';
  let at = 0;
  for (const [i, { from, to }] of constants.entries()) {
    out += `${text.slice(at, from)}${list}[${first + i}]`;
    at = to;
  }
  return out + text.slice(at);
}
