import ts from 'typescript';
import { plain } from './docOf.ts';

// The top level of one source file: what each statement names, says of itself and leans on.

export type Named = {
  readonly name: string;
  readonly exported: boolean;
  /** A function, or a const that holds one. */
  readonly formula: boolean;
  /** Text of a const's number, list or table; null for a formula. */
  readonly value: string | null;
  /** The docstring with its stars; null where there is none. */
  readonly docstring: string | null;
  /** Other comments before it and at its end, as plain text. */
  readonly comments: readonly string[];
  /** Of those, the ones without an empty line between. */
  readonly beside: readonly string[];
  readonly line: number;
  /** Identifiers used inside. */
  readonly mentions: ReadonlySet<string>;
};
export type SourceFile = {
  /** Path from the folder that holds rules/. */
  readonly path: string;
  readonly named: ReadonlyMap<string, Named>;
  /** Names brought in from other files of ours. */
  readonly imported: ReadonlySet<string>;
};

const LONGEST = 240; // characters of a table worth showing. Ours

export function readFile(path: string, text: string): SourceFile {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
  const named = new Map<string, Named>();
  const imported = new Set<string>();
  for (const statement of file.statements) {
    if (ts.isImportDeclaration(statement)) {
      const names = statement.importClause?.namedBindings;
      if (names && ts.isNamedImports(names))
        for (const { name } of names.elements) imported.add(name.text);
    } else if (ts.isFunctionDeclaration(statement) && statement.name) {
      add(statement.name.text, statement, null, true);
    } else if (ts.isVariableStatement(statement)) {
      for (const { name, initializer } of statement.declarationList.declarations)
        if (ts.isIdentifier(name) && initializer)
          add(name.text, statement, initializer, holdsFunction(initializer));
    }
  }
  return { path, named, imported };

  function add(
    name: string,
    statement: ts.FunctionDeclaration | ts.VariableStatement,
    initializer: ts.Expression | null,
    formula: boolean,
  ) {
    const before = named.get(name); // of an overloaded function the first has the docstring
    const { all: comments, beside } = commentsOf(statement, file);
    const docstrings = comments.filter((comment) => comment.startsWith('/**'));
    named.set(name, {
      name,
      exported: isExported(statement),
      formula,
      value: formula || initializer === null ? null : textOf(initializer, file),
      docstring: before?.docstring ?? docstrings.at(-1) ?? null,
      comments: [
        ...(before?.comments ?? []),
        ...comments.filter((comment) => !comment.startsWith('/**')).map(plain),
      ],
      beside: beside.filter((comment) => !comment.startsWith('/**')).map(plain),
      line: before?.line ?? file.getLineAndCharacterOfPosition(statement.getStart(file)).line + 1,
      mentions: new Set([...(before?.mentions ?? []), ...identifiersIn(statement)]),
    });
  }
}

const isExported = (statement: ts.FunctionDeclaration | ts.VariableStatement) =>
  statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false;

function holdsFunction(node: ts.Node): boolean {
  if (ts.isArrowFunction(node) || ts.isFunctionExpression(node)) return true;
  return ts.forEachChild(node, holdsFunction) ?? false;
}

function identifiersIn(node: ts.Node, found = new Set<string>()): Set<string> {
  if (ts.isIdentifier(node)) found.add(node.text);
  ts.forEachChild(node, (child) => void identifiersIn(child, found));
  return found;
}

/** A unit's maker (`celsius(5)`) adds nothing for a reader, nor does freezing. */
function textOf(node: ts.Expression, file: ts.SourceFile): string {
  if (ts.isCallExpression(node) && node.arguments.length === 1 && node.arguments[0])
    return textOf(node.arguments[0], file);
  if (ts.isAsExpression(node) || ts.isSatisfiesExpression(node))
    return textOf(node.expression, file);
  const text = node.getText(file).replace(/\s+/g, ' ');
  return text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;
}

/** Comments before a statement, a run of `//` lines as one, and the one at the end of its line. */
function commentsOf(statement: ts.Statement, file: ts.SourceFile) {
  const text = file.text;
  const runs: { from: number; to: number; lines: boolean }[] = [];
  for (const { pos, end, kind } of ts.getLeadingCommentRanges(text, statement.pos) ?? []) {
    // What ends the line of the statement before is not about this one.
    if (statement.pos > 0 && !text.slice(statement.pos, pos).includes('\n')) continue;
    const lines = kind === ts.SyntaxKind.SingleLineCommentTrivia;
    const last = runs.at(-1);
    const next = last?.lines && lines && !/\n\s*\n/.test(text.slice(last.to, pos));
    if (last && next) last.to = end;
    else runs.push({ from: pos, to: end, lines });
  }
  const ends = (ts.getTrailingCommentRanges(text, statement.end) ?? []).map(({ pos, end }) =>
    text.slice(pos, end),
  );
  const last = runs.at(-1);
  const close = last && !/\n\s*\n/.test(text.slice(last.to, statement.getStart(file)));
  const before = runs.map(({ from, to }) => text.slice(from, to));
  return { all: [...before, ...ends], beside: [...(close ? before.slice(-1) : []), ...ends] };
}
